#pragma once
/// A list as a file for a spreadsheet.

#include <string>

#include "printed/printed.h"

namespace bentbook {

/// One list as comma-separated values, inches to 1/64 as the other lists have them; lines end in CR LF. The cut list
/// (mark,kind,breadth,depth,species,length,count,alike,weight_lb,stock) has a line for timbers that are cut alike, the
/// settings (workplace,table_deg,tilt_deg,stop,mark,step) a line a step; order and plan are as in stock/stock_csv.h,
/// hardware as in frame/list/hardware.h. No list named: the cut list.
/// Errors: the frame's own; kConflict ("list") where there is more than one.
[[nodiscard]] Result<std::string> list_csv(const Book& book, const BookModel& model, const PrintOptions& options,
                                           const Voice& voice);

}  // namespace bentbook
