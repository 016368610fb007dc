#pragma once
/// A list as a file for a spreadsheet.

#include <string>

#include "printed/printed.h"

namespace bentbook {

/// One list as comma-separated values, inches to 1/64 as the other lists have them; lines end in CR LF.
///   cut        mark,kind,breadth,depth,species,length,count,alike,weight_lb,stock: a line for timbers that are cut
///   alike order, plan, hardware: stock/stock_csv.h, frame/list/hardware.h settings
///   workplace,table_deg,tilt_deg,stop,mark,step: a line a step
/// Errors: the frame's own; kConflict ("--list") where the list is not one of these or there is more than one.
[[nodiscard]] Result<std::string> list_csv(const Book& book, const BookModel& model, const PrintOptions& options,
                                           const Voice& voice);

}  // namespace bentbook
