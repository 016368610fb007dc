#include "screens/shop/bench.h"

#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "screens/app/aloud.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"
#include "screens/form/foot.h"
#include "shop/plate_bench.h"
#include "words/error_words.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// What a yard and a plate shop have lying there, by inches and by millimetres.
constexpr std::array<Section, 3> kSectionsInches = {{{Length::inches(6), Length::inches(8)},
                                                     {Length::inches(8), Length::inches(8)},
                                                     {Length::inches(8), Length::inches(10)}}};
constexpr std::array<Section, 3> kSectionsMm = {
    {{Length::mm(150), Length::mm(200)}, {Length::mm(200), Length::mm(200)}, {Length::mm(200), Length::mm(250)}}};
constexpr std::array<Length, 3> kPlatesInches = {Length::inches(1, 4), Length::inches(3, 8), Length::inches(1, 2)};
constexpr std::array<Length, 3> kPlatesMm = {Length::mm(6), Length::mm(10), Length::mm(12)};

constexpr std::string_view kRoot = "bench.";

/// Of a measure of the plate, "plate.pins.spacing"; of the section's, breadth or depth.
std::string measure_name(std::string_view key, Language language) {
  const std::size_t point = key.find('.');
  const std::string_view own = key.substr(point + 1);
  return key.starts_with("section") ? field_name(own, language) : std::string(joint_measure_name(own, language));
}

/// The figures of both drawings.
bentbook::FigureText bench_figure(std::string_view key, const PlateBenchInput& input, const PlateBench& bench,
                                  const Voice& voice) {
  const Language language = voice.language;
  const KnifePlate& plate = input.plate;
  const auto said = [&](Length value) { return say_tool_inches(value.in(), voice); };
  const auto answered = [&](Length value, Msg name) {
    return bentbook::FigureText{said(value), std::string(text(name, language))};
  };
  if (key == "gauge") return answered(bench.gauge, Msg::kBenchGauge);
  if (key == "depth") return answered(bench.depth, Msg::kBenchDepth);
  if (key == "slot")
    return {std::string(text(Msg::kBenchSlot, language)) + " " + said(bench.slot),
            std::string(text(Msg::kBenchSlot, language))};
  std::string name = measure_name(key, language);
  if (key == "section.breadth") return {said(input.section.breadth), std::move(name)};
  if (key == "section.depth") return {said(input.section.depth), std::move(name)};
  if (key == "plate.thickness") return {say(Msg::kBenchPlate, language, said(plate.thickness)), std::move(name)};
  if (key == "plate.pins.from_shoulder") return {said(plate.pins.from_shoulder), std::move(name)};
  if (key == "plate.pins.spacing") return {said(plate.pins.spacing), std::move(name)};
  if (key == "plate.pins.diameter")
    return {say_count(Msg::kDrivePins, language, plate.pins.count, {{"size", said(plate.pins.diameter)}}),
            std::move(name)};
  return {};
}

void answers(Context& context, const PlateBenchInput& input, const PlateBench& bench, const Voice& voice) {
  Ui& ui = context.ui;
  const auto one = [&](const char* key, Msg name, Length value) {
    answer(ui, key, context.say(name), say_tool_inches(value.in(), voice));
  };
  side_by_side(
      ui, 16, 120, [&](Ui&) { one("bench.slot", Msg::kBenchSlot, bench.slot); },
      [&](Ui&) { one("bench.depth", Msg::kBenchDepth, bench.depth); });
  side_by_side(
      ui, 16, 120, [&](Ui&) { one("bench.gauge", Msg::kBenchGauge, bench.gauge); },
      [&](Ui&) {
        if (input.plate.pins.count > 0) one("bench.pin", Msg::kBenchPin, bench.pin_length);
      });
  aloud_row(context, "bench.aloud", {"bench.slot", "bench.depth", "bench.gauge", "bench.pin"});
}

void drawings(Context& context, const PlateBenchInput& input, const PlateBench& bench, const Voice& voice) {
  const auto words = [&](std::string_view key) { return bench_figure(key, input, bench, voice); };
  const auto show = [&](const char* key, Msg name, const draw::Drawing& drawing) {
    const auto tapped = drawing_form(context, key, context.say(name), drawing_height(context, 210), drawing, words);
    if (tapped) open_field(context, std::string(kRoot) + *tapped, measure_name(*tapped, context.ui.language));
  };
  side_by_side(
      context.ui, 16, 300, [&](Ui&) { show("bench.end", Msg::kBenchEndPicture, bench_end_drawing(input, bench)); },
      [&](Ui&) { show("bench.side", Msg::kBenchSidePicture, bench_side_drawing(input, bench)); });
}

void more_of_the_plate(Context& context) {
  heading(context.ui, "bench.more", context.say(Msg::kBenchMore), 3);
  for (const char* field : {"plate.slot_clearance", "plate.reach", "plate.depth_clearance", "plate.width",
                            "plate.pins.count", "plate.pins.plug", "plate.base_thickness"})
    given_field(context, std::string(kRoot) + field, measure_name(field, context.ui.language));
  (void)given_flag(context, "bench.plate.let_in", joint_measure_name("let_in", context.ui.language));
}

/// What was refused is named and can be mended, by the most that would do or by another measure.
void refused(Context& context, const Error& error, const Voice& voice) {
  Ui& ui = context.ui;
  const std::string_view key = std::string_view(error.where).substr(kRoot.size());
  Error named = error;
  named.where = measure_name(key, ui.language);
  refusal(ui, "bench.refused", error_text(named, voice));
  given_field(context, error.where, named.where);
  if (error.limit > 0 &&
      button(ui, "bench.use_limit", say(Msg::kRafterUseLimit, ui.language, say_length_at_most({error.limit}, voice)),
             Weight::kPrimary))
    put_field(context, error.where, Length{error.limit});
  for (const char* field : {"section.breadth", "section.depth", "plate.thickness", "plate.pins.spacing",
                            "plate.pins.diameter", "plate.pins.count", "plate.pins.plug", "plate.slot_clearance"})
    if (key != field) given_field(context, std::string(kRoot) + field, measure_name(field, ui.language));
}

/// A usual size: whole inches or millimetres, said without the unit.
std::string bare(Length length, bool metric) {
  return std::to_string(length.count / (metric ? Length::kPerMm : Length::kPerInch));
}

template <class T, std::size_t n, class Said>
std::optional<int> one_of(Context& context, ItemKey key, const std::array<T, n>& all, const T& now, Said&& said) {
  std::vector<std::string> texts;
  int chosen = -1;
  for (std::size_t i = 0; i < n; ++i) {
    if (all[i] == now) chosen = static_cast<int>(i);
    texts.push_back(said(all[i]));
  }
  const std::vector<std::string_view> options(texts.begin(), texts.end());
  return choice(context.ui, key, {}, options, chosen);
}

/// The usual sections and plates, where the thumb is.
void usual(Context& context, const Voice& voice) {
  const bool metric = is_metric(voice.lengths.form);
  const PlateBenchInput& now = context.places.bench;
  const auto& sections = metric ? kSectionsMm : kSectionsInches;
  const auto& plates = metric ? kPlatesMm : kPlatesInches;
  Places next = context.places;
  if (const auto i = one_of(context, "bench.sections", sections, now.section,
                            [&](const Section& s) { return bare(s.breadth, metric) + " × " + bare(s.depth, metric); }))
    next.bench.section = sections[static_cast<std::size_t>(*i)];
  if (const auto i = one_of(context, "bench.plates", plates, now.plate.thickness, [&](Length t) {
        return say(Msg::kBenchPlate, voice.language, metric ? bare(t, metric) : say_tool_inches(t.in(), voice));
      }))
    next.bench.plate.thickness = plates[static_cast<std::size_t>(*i)];
  if (!(next == context.places)) context.change(std::move(next));
}

void bench_screen(Context& context) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  PlateBenchInput input = context.places.bench;
  Result<PlateBench> bench = plate_bench(input);
  if (const auto typed = typed_places(context)) {
    if (auto with = plate_bench(typed->bench)) {
      input = typed->bench;
      bench = with;
    }
  }
  // A low page, one that the keypad covers or one in large type has no room for a foot.
  constexpr int kLargeType = 130;
  const bool foot = !context.landscape && !context.keypad.is_open() && context.kit.settings.text_percent < kLargeType;
  const auto content = [&] {
    begin_scroll(ui, "bench.page", context.page);
    if (bench) {
      answers(context, input, *bench, voice);
      drawings(context, input, *bench, voice);
      more_of_the_plate(context);
    } else {
      refused(context, bench.error(), voice);
    }
    caution(ui, "bench.not_engineered", finding_text({}, voice));
    if (!foot) usual(context, voice);
    space(ui, 24);
    end_scroll(ui);
  };
  if (!foot) return content();
  const Rect strip = above_foot(context, 2 * (ui.theme.target + kGap) + kGap, content);
  foot_ground(ui, strip);
  ui.column = {strip.x + kMargin, strip.y + kGap, strip.w - 2 * kMargin, 0, strip};
  usual(context, voice);
}

}  // namespace

Page shop_bench_page() { return {"shop.bench", Msg::kBenchTitle, bench_screen}; }

}  // namespace bentbook::screens
