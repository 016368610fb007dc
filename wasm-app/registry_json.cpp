#include "registry_json.h"

#include <cmath>
#include <string_view>

#include "text/json_writer.h"

namespace bentbook::page {
namespace {

/// The rows' columns, as web/bridge.js finds them.
constexpr std::string_view kColumns[] = {"key",   "role", "touch", "name",    "value",   "x",
                                         "y",     "w",    "h",     "enabled", "checked", "live",
                                         "level", "min",  "max",   "step",    "number",  "scroll"};

/// Finer than any slider's step.
constexpr int kDecimals = 3;

void add_number(JsonWriter& json, double v) { json.number(std::isfinite(v) && std::fabs(v) < 1e6 ? v : 0, kDecimals); }

void add_item(JsonWriter& json, const screens::Item& item) {
  json.open_list();
  json.text(item.key);
  json.count(static_cast<int>(item.role));
  json.count(static_cast<int>(item.touch));
  json.text(item.name);
  json.text(item.value);
  for (const float v : {item.rect.x, item.rect.y, item.rect.w, item.rect.h}) json.count(std::lround(v));
  for (const bool v : {item.enabled, item.checked, item.live}) json.flag(v);
  json.count(item.level);
  for (const double v : {item.min, item.max, item.step, item.number}) add_number(json, v);
  json.count(item.scroll);
  json.close_list();
}

}  // namespace

std::string registry_json(const screens::Registry& registry) {
  JsonWriter json;
  json.open_list();
  json.open_list();
  for (const std::string_view name : kColumns) json.text(name);
  json.close_list();
  for (const screens::Item& item : registry.items()) add_item(json, item);
  json.close_list();
  return std::string(json.bytes());
}

}  // namespace bentbook::page
