#include "screens/books/new_book.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "book/book.h"
#include "frame/drawings/plan_drawing.h"
#include "frame/placing/solve_frame.h"
#include "screens/form/drawing_form.h"
#include "screens/form/foot.h"
#include "screens/form/usual.h"
#include "screens/frame/form.h"
#include "screens/frame/joinery_choice.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

using FourNumbers = FrameMemory::FourNumbers;

/// The lengths, by the figures' keys; "pitch" is the fourth.
struct NewLength {
  std::string_view key;
  Msg name;
  Length FourNumbers::*value;
};
constexpr NewLength kLengths[] = {{"span", Msg::kFieldSpan, &FourNumbers::span},
                                  {"length", Msg::kNewLength, &FourNumbers::length},
                                  {"plate", Msg::kFieldPlateHeight, &FourNumbers::plate}};

std::string new_key(std::string_view key) { return "new." + std::string(key); }

SizedBy sized_by(const Context& context) {
  return is_metric(context.style().form) ? SizedBy::kMillimetres : SizedBy::kInches;
}

FramePlan plan_of(const FourNumbers& numbers, SizedBy by) {
  return with_joinery(default_plan(numbers.span, numbers.length, numbers.plate, numbers.pitch, by), numbers.joinery);
}

/// What the keypad finished.
void take(Context& context, FourNumbers& numbers) {
  for (const NewLength& one : kLengths)
    if (const auto told = context.keypad.take_length(new_key(one.key))) numbers.*one.value = *told;
  if (const auto told = context.keypad.take_slope("new.pitch")) numbers.pitch = *told;
}

/// With what stands in the open keypad.
FourNumbers typed(const Context& context, FourNumbers numbers) {
  for (const NewLength& one : kLengths)
    if (const auto told = context.keypad.preview_length(new_key(one.key))) numbers.*one.value = *told;
  if (const auto told = context.keypad.preview_slope("new.pitch")) numbers.pitch = *told;
  return numbers;
}

bentbook::FigureText said(std::string_view key, const FourNumbers& numbers, const Voice& voice) {
  for (const NewLength& one : kLengths)
    if (key == one.key) return {say_length(numbers.*one.value, voice), std::string(text(one.name, voice.language))};
  return key == "pitch" ? pitch_figure(numbers.pitch, voice) : pitch_run_figure(voice);
}

void put(FourNumbers& numbers, std::string_view key, const Keypad::Reading& reading) {
  for (const NewLength& one : kLengths)
    if (key == one.key && reading.length) numbers.*one.value = *reading.length;
  if (reading.slope) numbers.pitch = *reading.slope;
}

void open(Context& context, std::string_view key, const FourNumbers& numbers) {
  Keypad& keypad = context.keypad;
  FieldKind kind = FieldKind::kSlope;
  for (const NewLength& one : kLengths) {
    if (key != one.key) continue;
    kind = FieldKind::kLength;
    keypad.open_length(new_key(key), context.say(one.name), numbers.*one.value,
                       {Length::feet(2), Length::feet(1000), BareUnit::kFoot});
  }
  if (kind == FieldKind::kSlope) keypad.open_slope("new.pitch", context.say(Msg::kFieldPitch), numbers.pitch);
  offer_new(context, new_key(key), kind, [&](const Keypad::Reading& reading) {
    FourNumbers other = numbers;
    put(other, key, reading);
    return check_frame(plan_of(other, sized_by(context))).has_value();
  });
}

/// The keypad's key for the next of the four.
void walk(Context& context, const FourNumbers& numbers) {
  std::vector<std::string> keys;
  keys.reserve(4);
  for (const std::string_view key : {"span", "length", "plate", "pitch"}) {
    keys.push_back(new_key(key));
    if (!context.keypad.take_next(keys.back())) continue;
    turn_to(context.ui, keys.back());
    open(context, key, numbers);
  }
  context.keypad.set_walk(std::move(keys));
}

/// The four in rows, where they give no frame to draw.
void rows(Context& context, const FourNumbers& numbers, const Error& error) {
  const Voice voice = voice_of(context);
  refusal(context.ui, "new.refused", frame_error_text(error, voice));
  for (const std::string_view key : {"span", "length", "plate", "pitch"}) {
    const bentbook::FigureText figure = said(key, numbers, voice);
    const std::string item = new_key(key);
    if (given(context.ui, item, figure.name, figure.text, context.keypad.is_open(item))) open(context, key, numbers);
  }
}

/// As high as leaves the two cards in sight.
float building_height(const Context& context) {
  constexpr float kCards = 152, kLeast = 280;
  return std::clamp(context.page.h - kCards, kLeast, std::max(kLeast, drawing_height(context, 480)));
}

/// Of numbers that give a frame.
const draw::Drawing& drawing_of(Context& context, const FourNumbers& numbers) {
  FrameMemory::NewBuilding& kept = context.frame_memory.new_building;
  const SizedBy by = sized_by(context);
  if (!kept.drawing || !(kept.of == numbers) || kept.by != by) {
    const FramePlan plan = plan_of(numbers, by);
    kept = {numbers, by, building_drawing(plan, *solve_frame(plan))};
  }
  return *kept.drawing;
}

void building(Context& context, FourNumbers& numbers) {
  FourNumbers shown = typed(context, numbers);
  if (!check_frame(plan_of(shown, sized_by(context)))) shown = numbers;
  const auto tapped =
      drawing_form(context, "new", context.say(Msg::kNewPicture), building_height(context), drawing_of(context, shown),
                   [&](std::string_view key) { return said(key, shown, voice_of(context)); });
  if (tapped) open(context, *tapped, numbers);
  if (const auto joinery = joinery_choice(context, numbers.joinery)) numbers.joinery = *joinery;
}

void make(Context& context, const FourNumbers& numbers, bool framed) {
  Book book = new_book(context.say(Msg::kBookUntitled), numbers.span, numbers.length, numbers.plate, numbers.pitch,
                       sized_by(context));
  book.frame = with_joinery(std::move(book.frame), numbers.joinery);
  book.lengths = context.style();
  book.saws = context.kit.saws;
  book.framed = framed;
  context.desk.make(std::move(book));
  context.pages.begin(Place::kFrame);
}

void new_screen(Context& context) {
  Ui& ui = context.ui;
  const SizedBy by = sized_by(context);
  FrameMemory& memory = context.frame_memory;
  FourNumbers& numbers = by == SizedBy::kMillimetres ? memory.metric_numbers : memory.four_numbers;
  take(context, numbers);
  walk(context, numbers);
  bool list = false, make_it = false;
  const Result<void> stands = check_frame(plan_of(numbers, by));
  const bool foot = !context.landscape && !context.keypad.is_open();
  const auto content = [&] {
    begin_scroll(ui, "new.page", context.page);
    if (stands)
      building(context, numbers);
    else
      rows(context, numbers, stands.error());
    if (!foot) make_it = button(ui, "new.make", context.say(Msg::kNewMake), Weight::kPrimary, stands.has_value());
    list = list_row(ui, "new.list", context.say(Msg::kNewList), context.say(Msg::kNewListNote));
    end_scroll(ui);
  };
  if (foot) {
    const Rect strip = above_foot(context, keys_height(ui), content);
    foot_ground(ui, strip);
    make_it = button_in(ui, "new.make", {strip.x + kMargin, strip.y + kGap, strip.w - 2 * kMargin, ui.theme.target},
                        context.say(Msg::kNewMake), Weight::kPrimary, stands.has_value());
  } else {
    content();
  }
  if (make_it || list) make(context, numbers, !list);
}

}  // namespace

Page books_new_page() { return {"books.new", Msg::kBookNew, new_screen}; }

}  // namespace bentbook::screens
