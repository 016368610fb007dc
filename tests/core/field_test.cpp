// Fields of a book by their paths: what they are, what may stand there, and what goes with a change.

#include "book/field.h"

#include <catch_amalgamated.hpp>
#include <string>

#include "book/book_edit.h"
#include "book/demo.h"
#include "frame/placing/solve_frame.h"

using namespace bentbook;

namespace {

template <class Value>
Value value_at(const Book& book, std::string_view path) {
  const auto field = field_at(book, path);
  REQUIRE(field);
  return std::get<Value>(field->value);
}

}  // namespace

TEST_CASE("a path tells kind, value and limits", "[field]") {
  const Book book = demo_book();
  CHECK(value_at<Length>(book, "frame.span") == Length::feet(14));
  CHECK(field_at(book, "frame.span")->length.bare == BareUnit::kFoot);
  CHECK(value_at<Slope>(book, "frame.pitch_left") == Slope::in_12(Length::inches(9)));
  CHECK(value_at<double>(book, "frame.moisture") == 30);
  CHECK(field_at(book, "frame.moisture")->high == 300);
  CHECK(value_at<bool>(book, "frame.ties"));
  CHECK(field_at(book, "frame.roof")->words[1] == "principals");
  CHECK(value_at<Weight>(book, "raising.crew.each") == Weight::pounds(50));
  CHECK(field_at(book, "raising.loads.wind_mph")->most == 200);
  CHECK(field_at(book, "raising.stack_x")->length.min < Length{});
  Book site = book;
  site.raising.gear.emplace_back();
  site.raising.crane.chart.emplace_back();
  for (const char* paced : {"raising.gear.0.length", "raising.crane.chart.0.radius", "raising.crane.x",
                            "raising.stack_y", "raising.truck.length"})
    CHECK(field_at(site, paced)->length.bare == BareUnit::kFoot);
  CHECK(field_at(book, "title")->kind() == FieldKind::kText);
  for (const char* none :
       {"", "frame", "frame.", "frame.sp", "frame.span.x", "frame.bays.9.width", "frame.bays.x.width",
        "frame.bays.@9.width", "frame.bays.", "frame.bays.0", "frame.girts.-1.height"})
    if (field_at(book, none)) FAIL(none);
}

TEST_CASE("an item of a list goes by its place, or by its mark, name or label", "[field]") {
  Book book = demo_book();
  CHECK(value_at<Length>(book, "frame.bays.0.width") == Length::feet(9));
  CHECK(value_at<Length>(book, "frame.bays.@3.width") == Length::feet(11));
  CHECK(value_at<Length>(book, "frame.girts.0.height") == Length::inches(42));
  HandTimber dotted;
  dotted.mark = "X.1";
  dotted.length = Length::feet(5);
  book = with_added(std::move(book), dotted);
  CHECK(value_at<Length>(book, "frame.added.@X.1.length") == Length::feet(5));
}

TEST_CASE("a value of another kind or past the limits is refused", "[field]") {
  const Book book = demo_book();
  const auto why = [&](std::string_view path, const FieldValue& value) {
    const auto next = with_field(book, path, value);
    REQUIRE_FALSE(next);
    return next.error();
  };
  CHECK(why("frame.no_such", Length{}).code == ErrorCode::kMissing);
  CHECK(why("frame.span", std::int64_t{3}).code == ErrorCode::kUnitMismatch);
  CHECK(why("frame.span", -Length::inches(1)).code == ErrorCode::kTooSmall);
  CHECK(why("frame.moisture", 301.0).code == ErrorCode::kTooLarge);
  const Error wind = why("raising.loads.wind_mph", std::int64_t{201});
  CHECK(wind.code == ErrorCode::kTooLarge);
  CHECK(wind.where == "wind_mph");
  CHECK(wind.limit == 200);
  CHECK(why("frame.roof", Choice{2}).code == ErrorCode::kTooLarge);
  CHECK(why("saws.0.step", Angle{}).where == "step");
}

TEST_CASE("sides that are alike stay so when the left one is set", "[field]") {
  Book book = demo_book();
  book = with_field(std::move(book), "frame.plate_left", Length::feet(9)).value();
  CHECK(book.frame.plate_right == Length::feet(9));
  book = with_field(std::move(book), "frame.plate_right", Length::feet(10)).value();
  book = with_field(std::move(book), "frame.plate_left", Length::feet(8)).value();
  CHECK(book.frame.plate_right == Length::feet(10));
  book = with_field(std::move(book), "frame.pitch_left", Slope::in_12(Length::inches(7))).value();
  CHECK(book.frame.pitch_right == Slope::in_12(Length::inches(7)));
}

TEST_CASE("an override says from then on what was set in it, and the rest as the timber stands", "[field]") {
  Book book = demo_book();
  const Frame frame = solve_frame(book.frame).value();
  const std::string path = "frame.overrides.@P-A1.section.breadth";
  CHECK(std::get<Length>(field_at(book, path, &frame)->value) == Length::inches(7));
  const Book same = with_field(book, path, Length::inches(7), &frame).value();
  CHECK(same.frame.overrides.empty());
  book = with_field(std::move(book), path, Length::inches(8), &frame).value();
  const Override o = override_of(book, "P-A1");
  CHECK(o.has_section);
  CHECK_FALSE(o.has_wood);
  CHECK(o.section == Section{Length::inches(8), Length::inches(7)});
  book = with_field(std::move(book), "frame.overrides.@P-A1.wood.bow", Length::inches(-1, 4), &frame).value();
  CHECK(override_of(book, "P-A1").has_wood);
}

TEST_CASE("a timber entered by hand has its nominal section in all its wood", "[field]") {
  HandTimber timber;
  timber.mark = "X-1";
  Book book = with_added(demo_book(), timber);
  book = with_field(std::move(book), "frame.added.@X-1.wood.nominal.depth", Length::inches(9)).value();
  CHECK(book.frame.added[0].wood.design.depth == Length::inches(9));
  CHECK(book.frame.added[0].wood.actual.depth == Length::inches(9));
}

TEST_CASE("a rafter's field goes by its key and is the one that was told", "[field]") {
  Places places = demo_places();
  places = with_field(std::move(places), "rafter.heel_left", Length::inches(7)).value();
  CHECK(places.rafter.left.heel_by == HeelBy::kHeel);
  CHECK(places.rafter.left.heel == Length::inches(7));
  CHECK(std::get<Length>(field_at(places, "rafter.heel_right")->value) == Length::inches(7));
  CHECK(field_at(places, "rafter.plate_height_left")->length.min < Length{});
  places = with_field(std::move(places), "rafter.ridge", Length::inches(2)).value();
  CHECK(places.rafter.peak == PeakKind::kRidgeBoard);
  CHECK_FALSE(with_field(places, "rafter.no_such", Length{}));
}
