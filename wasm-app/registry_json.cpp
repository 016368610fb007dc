#include "registry_json.h"

#include <charconv>
#include <cmath>
#include <cstdlib>

namespace bentbook::page {
namespace {

void add_text(std::string& out, std::string_view s) {
  out += '"';
  for (const char c : s) {
    const auto u = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (u < 0x20) {
      constexpr char kHex[] = "0123456789abcdef";
      out += "\\u00";
      out += kHex[u >> 4];
      out += kHex[u & 15];
    } else {
      out += c;
    }
  }
  out += '"';
}

void add_int(std::string& out, long v) {
  char buffer[16];
  out.append(buffer, std::to_chars(buffer, buffer + sizeof buffer, v).ptr);
}

void add_px(std::string& out, float v) { add_int(out, std::lround(v)); }

/// Three decimals are finer than any slider's step.
void add_number(std::string& out, double v) {
  const long thousandths = std::isfinite(v) && std::fabs(v) < 1e6 ? std::lround(v * 1000) : 0;
  if (thousandths < 0) out += '-';
  const long magnitude = std::labs(thousandths);
  add_int(out, magnitude / 1000);
  if (magnitude % 1000 == 0) return;
  const std::string decimals = std::to_string(1000 + magnitude % 1000);
  out += '.';
  out += std::string_view(decimals).substr(1);
}

void add_item(std::string& out, const screens::Item& item) {
  out += '[';
  add_text(out, item.key);
  out += ',';
  add_int(out, static_cast<long>(item.role));
  out += ',';
  add_text(out, item.name);
  out += ',';
  add_text(out, item.value);
  for (const float v : {item.rect.x, item.rect.y, item.rect.w, item.rect.h}) {
    out += ',';
    add_px(out, v);
  }
  out += ',';
  add_int(out,
          (item.enabled ? 1 : 0) + (item.checked ? 2 : 0) + (item.live ? 4 : 0) + 8 * static_cast<long>(item.touch));
  out += ',';
  add_int(out, item.level);
  for (const double v : {item.min, item.max, item.step, item.number}) {
    out += ',';
    add_number(out, v);
  }
  out += ',';
  add_int(out, item.scroll);
  out += ']';
}

}  // namespace

std::string registry_json(const screens::Registry& registry) {
  std::string out;
  out.reserve(128 * (registry.items().size() + 1));
  out += '[';
  for (const screens::Item& item : registry.items()) {
    if (out.size() > 1) out += ',';
    add_item(out, item);
  }
  out += ']';
  return out;
}

}  // namespace bentbook::page
