#include "registry_json.h"

#include <cmath>

#include "text/json_writer.h"

namespace bentbook::page {
namespace {

/// Finer than any slider's step.
constexpr int kDecimals = 3;

void add_number(JsonWriter& json, double v) { json.number(std::isfinite(v) && std::fabs(v) < 1e6 ? v : 0, kDecimals); }

void add_item(JsonWriter& json, const screens::Item& item) {
  json.open_list();
  json.text(item.key);
  json.count(static_cast<int>(item.role));
  json.text(item.name);
  json.text(item.value);
  for (const float v : {item.rect.x, item.rect.y, item.rect.w, item.rect.h}) json.count(std::lround(v));
  json.count((item.enabled ? 1 : 0) + (item.checked ? 2 : 0) + (item.live ? 4 : 0) + 8 * static_cast<int>(item.touch));
  json.count(item.level);
  for (const double v : {item.min, item.max, item.step, item.number}) add_number(json, v);
  json.count(item.scroll);
  json.close_list();
}

}  // namespace

std::string registry_json(const screens::Registry& registry) {
  JsonWriter json;
  json.open_list();
  for (const screens::Item& item : registry.items()) add_item(json, item);
  json.close_list();
  return std::string(json.bytes());
}

}  // namespace bentbook::page
