#pragma once
/// Lines of a log's file in the data folder: "device sequence line", and how they are read.

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <tuple>

namespace bentbook::desktop {

/// Device, sequence, its line with the line break. Unlike lines under one number are two records.
using Record = std::tuple<std::string, std::int64_t, std::string>;

/// A record's line as Storage::append() takes it; `bytes` without a line break.
void put_record(std::string& lines, std::string_view device, std::int64_t sequence, std::string_view bytes);

/// Every record of whole lines; what is none is passed over, as is a last line without its line break. No number: 0.
[[nodiscard]] std::set<Record> records_of(std::string_view bytes);

}  // namespace bentbook::desktop
