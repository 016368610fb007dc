#include "paper/code.h"

#include <qrcodegen.h>

#include "measure/print.h"
#include "text/xml_text.h"

namespace bentbook {
namespace {

/// Bytes that the largest code takes at the least level (version 40-L). Source: SOURCES.md, "QR codes".
constexpr std::size_t kMostBytes = 2953;

qrcodegen_Ecc level_of(CodeLevel level) {
  switch (level) {
    case CodeLevel::kLow:
      return qrcodegen_Ecc_LOW;
    case CodeLevel::kMedium:
      return qrcodegen_Ecc_MEDIUM;
    case CodeLevel::kHigh:
      break;
  }
  return qrcodegen_Ecc_QUARTILE;
}

std::string number(double mm) { return print_fixed(mm, 3); }

}  // namespace

Result<Code> make_code(std::string_view text, CodeLevel level) {
  if (text.empty()) return fail(ErrorCode::kEmpty, "code");
  // 7089 digits are the most that any code holds; with signs of other kinds fewer.
  if (text.size() > 7089 || text.find('\0') != std::string_view::npos) return fail(ErrorCode::kTooLarge, "code");
  std::vector<std::uint8_t> work(qrcodegen_BUFFER_LEN_MAX), made(qrcodegen_BUFFER_LEN_MAX);
  const std::string ended(text);
  if (!qrcodegen_encodeText(ended.c_str(), work.data(), made.data(), level_of(level), qrcodegen_VERSION_MIN,
                            qrcodegen_VERSION_MAX, qrcodegen_Mask_AUTO, false))
    return fail(ErrorCode::kTooLarge, "code", -1, static_cast<std::int64_t>(kMostBytes));
  Code code;
  code.size = qrcodegen_getSize(made.data());
  for (int y = 0; y < code.size; ++y)
    for (int x = 0; x < code.size; ++x) code.dark.push_back(qrcodegen_getModule(made.data(), x, y));
  return code;
}

std::string code_svg(const Code& code, double module_mm, std::string_view title) {
  const int across = code.size + 2 * kQuietModules;
  const std::string side = number(across * module_mm), box = std::to_string(across);
  std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + side + "mm\" height=\"" + side +
                    "mm\" viewBox=\"0 0 " + box + " " + box + "\" shape-rendering=\"crispEdges\">\n<title>" +
                    xml_text(title) + "</title>\n<path fill=\"#fff\" d=\"M0 0h" + box + "v" + box + "h-" + box +
                    "z\"/>\n<path fill=\"#000\" d=\"";
  for (int y = 0; y < code.size; ++y)
    for (int x = 0; x < code.size;) {
      int end = x;
      while (end < code.size && code.at(end, y)) ++end;
      if (end > x)
        out += "M" + std::to_string(x + kQuietModules) + " " + std::to_string(y + kQuietModules) + "h" +
               std::to_string(end - x) + "v1h-" + std::to_string(end - x) + "z";
      x = end > x ? end : x + 1;
    }
  return out + "\"/>\n</svg>\n";
}

}  // namespace bentbook
