#include "screens/form/usual.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "frame/placing/solve_frame.h"
#include "roof/corner/corner_solve.h"
#include "roof/rafter.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"

namespace bentbook::screens {
namespace {

constexpr std::size_t kMostEntered = 3;

/// Rises in 12, and degrees where lengths are metric. Source: SOURCES.md, "usual pitches and sections".
constexpr std::array kUsualRises{6, 8, 9, 10, 12};
constexpr std::array kUsualDegrees{30, 35, 40, 45};
struct BreadthAndDepth {
  int breadth, depth;
};
/// Nominal inches, and millimetres. Source: SOURCES.md, "usual pitches and sections".
constexpr std::array<BreadthAndDepth, 3> kUsualInches{{{6, 6}, {8, 8}, {8, 10}}};
constexpr std::array<BreadthAndDepth, 3> kUsualMm{{{150, 150}, {200, 200}, {200, 250}}};

/// Feet, and millimetres, of what a building's lengths are called. Source: SOURCES.md, "usual buildings".
struct BuildingLength {
  std::string_view name;
  std::array<int, 4> feet, mm;
};
constexpr BuildingLength kBuilding[] = {{"span", {16, 20, 24, 30}, {5000, 6000, 7000, 9000}},
                                        {"length", {24, 36, 48, 60}, {7500, 10000, 12000, 18000}},
                                        {"plate", {8, 9, 10, 12}, {2400, 2750, 3000, 3600}},
                                        {"plate_left", {8, 9, 10, 12}, {2400, 2750, 3000, 3600}}};

std::string_view last_word(std::string_view path) { return path.substr(path.rfind('.') + 1); }

Keypad::Reading reading_of(const Slope& slope) {
  Keypad::Reading reading;
  reading.slope = slope;
  return reading;
}
Keypad::Reading reading_of(Length length) {
  Keypad::Reading reading;
  reading.length = length;
  return reading;
}

void add(std::vector<Keypad::Usual>& out, Keypad::Usual usual) {
  const bool there = std::any_of(out.begin(), out.end(), [&](const auto& other) { return other.text == usual.text; });
  if (!there) out.push_back(std::move(usual));
}

std::vector<Keypad::Usual> pitches(const Context& context, std::string_view key) {
  std::vector<Keypad::Usual> out;
  const auto offer = [&](const Slope& slope) {
    add(out, {print_slope(slope, Marks::kScreen), {{std::string(key), reading_of(slope)}}});
  };
  for (const Keypad::Outcome& entered : context.keypad.entered())
    if (entered.reading.slope && out.size() < kMostEntered) offer(*entered.reading.slope);
  if (is_metric(context.style().form)) {
    for (const int degrees : kUsualDegrees) offer(Slope::of_angle(Angle::degrees(degrees)));
  } else {
    for (const int rise : kUsualRises) offer(Slope::in_12(Length::inches(rise)));
  }
  return out;
}

/// Both measures of a section by either of them; none: it is none.
std::vector<Keypad::Usual> sections(const Context& context, std::string_view path) {
  const std::string_view word = last_word(path);
  if (word != "breadth" && word != "depth") return {};
  const std::string owner(path.substr(0, path.size() - word.size()));
  const std::string breadth = owner + "breadth", depth = owner + "depth";
  const auto other = field_now(context, word == "depth" ? breadth : depth);
  if (!other || other->kind() != FieldKind::kLength) return {};
  const bool metric = is_metric(context.style().form);
  std::vector<Keypad::Usual> out;
  for (const auto& [b, d] : metric ? kUsualMm : kUsualInches) {
    const auto measure = [&](int n) { return metric ? Length::mm(n) : Length::inches(n); };
    add(out, {std::to_string(b) + "×" + std::to_string(d),
              {{breadth, reading_of(measure(b))}, {depth, reading_of(measure(d))}}});
  }
  return out;
}

/// Entered lately in fields of the same name, then what a building usually has there.
std::vector<Keypad::Usual> lengths(const Context& context, std::string_view path) {
  std::vector<Keypad::Usual> out;
  const auto offer = [&](Length length) {
    add(out, {say_length(length, voice_of(context)), {{std::string(path), reading_of(length)}}});
  };
  for (const Keypad::Outcome& entered : context.keypad.entered())
    if (entered.reading.length && last_word(entered.key) == last_word(path) && out.size() < kMostEntered)
      offer(*entered.reading.length);
  if (!path.starts_with("new.") && !path.starts_with("frame.")) return out;
  const bool metric = is_metric(context.style().form);
  for (const BuildingLength& usual : kBuilding)
    if (usual.name == last_word(path))
      for (const int n : metric ? usual.mm : usual.feet) offer(metric ? Length::mm(n) : Length::feet(n));
  return out;
}

/// The book, or the places, with what the tap hands out, can be solved.
bool can_stand(const Context& context, const Keypad::Usual& usual) {
  const Frame* frame = nullptr;
  const bool in_book = usual.gives.front().key.starts_with("frame.") || usual.gives.front().key.starts_with("raising.");
  if (in_book && *context.desk.model().frame) frame = &**context.desk.model().frame;
  Book book = in_book ? context.desk.book() : Book{};
  Places places = context.places;
  for (const Keypad::Outcome& given : usual.gives) {
    const FieldValue value = given.reading.slope ? FieldValue(*given.reading.slope) : FieldValue(*given.reading.length);
    if (in_book) {
      auto next = with_field(std::move(book), given.key, value, frame);
      if (!next) return false;
      book = std::move(*next);
    } else {
      auto next = with_field(std::move(places), given.key, value);
      if (!next) return false;
      places = std::move(*next);
    }
  }
  if (in_book) return check_frame(book.frame).has_value();
  const bool corner = usual.gives.front().key.starts_with("corner.");
  return corner ? solve_corner(places.corner).has_value() : solve_rafters(places.rafter).has_value();
}

}  // namespace

void offer_usual(Context& context, std::string_view path, const Field& field) {
  std::vector<Keypad::Usual> usual;
  if (field.kind() == FieldKind::kSlope) usual = pitches(context, path);
  if (field.kind() == FieldKind::kLength) {
    usual = sections(context, path);
    for (Keypad::Usual& entered : lengths(context, path)) add(usual, std::move(entered));
  }
  std::erase_if(usual, [&](const Keypad::Usual& one) { return !can_stand(context, one); });
  context.keypad.offer(std::move(usual));
}

void offer_new(Context& context, std::string_view key, FieldKind kind,
               FunctionRef<bool(const Keypad::Reading&)> stands) {
  std::vector<Keypad::Usual> usual = kind == FieldKind::kSlope ? pitches(context, key) : lengths(context, key);
  std::erase_if(usual, [&](const Keypad::Usual& one) { return !stands(one.gives.front().reading); });
  context.keypad.offer(std::move(usual));
}

}  // namespace bentbook::screens
