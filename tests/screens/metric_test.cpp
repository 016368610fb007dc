// A crew that works in millimetres: pages say no pounds, inches, miles or board feet, and an entry stays as typed.

#include "inch_units.h"
#include "raising_bed.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct MetricBed : RaisingBed {
  MetricBed() {
    go("bar.menu");
    go("menu.settings");
    press("settings.form.3");
    go("bar.back");
    go("bar.back");
  }
  /// What stands on the page in units of the inch; "" where all is well.
  [[nodiscard]] std::string inch_units() const {
    std::string found;
    for (const Item& item : app.registry().items())
      for (const std::string& said : {item.name, item.value})
        if (has_inch_units(said)) found += item.key + ": " + said + "\n";
    return found;
  }
};

}  // namespace

TEST_CASE("order, loads, gear, lists and a step say nothing in inches to a metric crew", "[screens]") {
  MetricBed bed;
  const auto metric = [&] { CHECK_THAT(bed.inch_units(), Catch::Matchers::IsEmpty()); };
  bed.go("raising.tap");
  bed.bring({"P-A1", "P-E1", "T-1"});
  bed.go("bar.back");
  for (const char* row : {"raising.order", "raising.loads", "raising.gear", "raising.lists"}) {
    INFO(row);
    bed.go(row);
    metric();
    bed.go("bar.back");
  }
  bed.go("raising.order");
  bed.go("order.step.0");
  metric();
}

TEST_CASE("wind entered in metres a second is kept in whole miles an hour and shown as entered", "[screens]") {
  MetricBed bed;
  bed.go("raising.loads");
  CHECK(bed.value("raising.loads.wind_mph") == "11 m/s (40 km/h)");
  bed.press("raising.loads.wind_mph");
  bed.tap_keypad({"digit.1", "digit.3", "done"});
  CHECK(bed.stored().loads.wind_mph == 29);  // 13 / 0.44704 = 29.08
  CHECK(bed.value("raising.loads.wind_mph") == "13 m/s (47 km/h)");
}

TEST_CASE("a load entered in kilopascals is kept in pounds on a square foot and shown as entered", "[screens]") {
  MetricBed bed;
  bed.go("place.frame");
  bed.go("frame.row.options");
  CHECK(bed.value("frame.load_psf") == "1.44 kPa");
  bed.press("frame.load_psf");
  bed.tap_keypad({"digit.2", "point", "digit.0", "digit.5", "done"});
  CHECK(bed.value("frame.load_psf") == "2.05 kPa");
  CHECK(read_book(bed.platform.stored("book1")).value().frame.load_psf ==
        Catch::Approx(2.05 / 0.04788026).epsilon(1e-6));
  CHECK_THAT(bed.inch_units(), Catch::Matchers::IsEmpty());
}

TEST_CASE("the bench opens with metric sizes for a metric crew, and keeps what was entered there", "[screens]") {
  MetricBed bed;
  bed.go("place.shop");
  bed.go("shop.bench");
  CHECK_THAT(bed.inch_units(), Catch::Matchers::IsEmpty());
  CHECK(bed.item("bench.sections.1").checked);  // 200 × 200
  CHECK(bed.item("bench.plates.0").checked);    // 6 mm
  CHECK(bed.value("bench.slot") == "8 mm");     // and 2 mm of play
  bed.press("bench.plates.1");
  bed.go("bar.back");
  bed.go("shop.bench");
  CHECK(bed.item("bench.plates.1").checked);
}

TEST_CASE("millimetres are marked to whole ones where that is chosen, and a tool is still set to a tenth",
          "[screens]") {
  MetricBed bed;
  bed.go("bar.menu");
  bed.go("menu.settings");
  bed.press("settings.step_mm.0");
  CHECK(bed.item("settings.step_mm.0").checked);
  bed.go("bar.back");
  bed.go("bar.back");
  bed.go("place.shop");
  bed.press("shop.all");
  bed.press("shop.timber.T-1");
  int stations = 0;
  for (const char* step : {"shop.step.mortise/B-A1.1", "shop.step.end_cut/b"}) {
    bed.press(step);
    for (const char* number : {"from_in", "stop_in"})
      if (const std::string key = "shop.step.number." + std::string(number); bed.shows(key)) {
        ++stations;
        CHECK(bed.value(key).find('.') == std::string::npos);
      }
    bed.press("bar.back");
  }
  CHECK(stations == 2);
  // In inches by decimals, whole ones would say nothing.
  bed.press("bar.menu");
  bed.press("menu.settings");
  bed.press("settings.form.2");
  bed.press("settings.form.3");
  CHECK(bed.item("settings.step_mm.1").checked);
}
