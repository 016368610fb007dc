#pragma once
/// Two files of the shop in one input, parted by a line of two hyphens; a log whatever its checksums say.

#include <string>
#include <string_view>
#include <utility>

#include "shop/log/log_file.h"
#include "shop/log/record.h"
#include "text/crc32.h"
#include "text/hex.h"

namespace fuzz {

inline std::pair<std::string_view, std::string_view> two_of(std::string_view bytes) {
  constexpr std::string_view kBetween = "\n--\n";
  const std::size_t at = bytes.find(kBetween);
  if (at == std::string_view::npos) return {bytes, bytes};
  return {bytes.substr(0, at + 1), bytes.substr(at + kBetween.size())};
}

/// The same text with every checksum made right, so that what stands behind them is reached.
inline std::string mended(std::string_view bytes) {
  using namespace bentbook;
  std::string out;
  std::uint64_t lines = 0;
  std::string_view rest = bytes;
  for (auto line = take_line(rest); line && !line->starts_with("end\t"); line = take_line(rest), ++lines) {
    if (line->starts_with("e\t")) {
      const std::string_view body = line->substr(0, line->rfind('\t'));
      out += body;
      out += '\t';
      put_hex(out, crc32(body), 8);
    } else {
      out += *line;
    }
    out += '\n';
  }
  put_end(out, lines > 0 ? lines - 1 : 0);
  return out;
}

/// What is good of a log.
inline bentbook::Log log_of(std::string_view bytes) { return bentbook::scan_log(mended(bytes)).log; }

}  // namespace fuzz
