#include "screens/raising/yard/lifters.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "raising/drawings/crane_drawing.h"
#include "raising/drawings/site_drawing.h"
#include "raising/lifting/crane.h"
#include "screens/raising/yard/figures.h"
#include "screens/raising/yard/site.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

struct Lifter {
  std::string_view name;
  Crane RaisingPlan::*crane;
  Machine machine;
  InYard place;
  Msg title, present;
};
constexpr std::array<Lifter, 3> kLifters{
    {{"crane", &RaisingPlan::crane, Machine::kCrane, InYard::kCrane, Msg::kLiftByCrane, Msg::kGearCranePresent},
     {"crane_two", &RaisingPlan::crane_two, Machine::kCrane, InYard::kCraneTwo, Msg::kLiftByCraneTwo,
      Msg::kGearCraneTwoPresent},
     {"telehandler", &RaisingPlan::telehandler, Machine::kTelehandler, InYard::kTelehandler, Msg::kLiftByTelehandler,
      Msg::kGearTelehandlerPresent}}};

const Lifter& lifter_of(std::string_view name) {
  return *std::find_if(kLifters.begin(), kLifters.end() - 1, [&](const Lifter& one) { return one.name == name; });
}

void touched(Context& context, const std::string& machine, std::size_t row) {
  context.raising_memory.charted = machine;
  context.raising_memory.chart_row = row;
}

/// The row touched last; the last one where none was.
std::size_t row_to_drop(const Context& context, const std::string& machine, std::size_t rows) {
  const bool any = context.raising_memory.charted == machine && context.raising_memory.chart_row < rows;
  return any ? context.raising_memory.chart_row : rows - 1;
}

void chart_part(Context& context, const RaisingShown& shown, const Lifter& lifter) {
  Ui& ui = context.ui;
  const std::string name(lifter.name), root = "raising." + name + ".";
  const Crane& crane = shown.book().raising.*lifter.crane;
  const Voice voice = voice_of(context);
  const ChartSize size = chart_size(context.ui.column.width, context.ui.theme.target,
                                    static_cast<float>(context.kit.settings.text_percent) / 100, crane.chart.size());
  raising_drawn(context, "gear." + name, Msg::kGearChartPicture, size.height,
                crane_drawing(crane, lifter.machine, size.room), root,
                [&](std::string_view key) { return lifter_figure(key, shown.book(), lifter.name, voice); });
  std::vector<std::string> walk;
  walk.reserve(2 * crane.chart.size());
  for (std::size_t i = 0; i < crane.chart.size(); ++i)
    for (const char* field : {"radius", "capacity"}) {
      const std::string key = "chart." + std::to_string(i) + "." + field;
      walk.push_back(root + key);
      walk_on(context, walk.back(), lifter_figure(key, shown.book(), lifter.name, voice).name,
              "gear." + name + "." + key);
      if (context.keypad.is_open(walk.back())) touched(context, name, i);
    }
  context.keypad.set_walk(std::move(walk));
  if (crane.chart.empty()) caution(ui, "gear." + name + ".no_chart", context.say(Msg::kGearNoChart));
  if (button(ui, "gear." + name + ".chart.add", context.say(Msg::kGearAddRow)))
    edit_raising(context, [&](RaisingPlan& p) {
      std::vector<ChartRow>& chart = (p.*lifter.crane).chart;
      const Length step = is_metric(context.style().form) ? Length::mm(3000) : Length::feet(10);
      Length longest{};
      for (const ChartRow& row : chart) longest = std::max(longest, row.radius);
      chart.push_back({longest + step, {}});
      touched(context, name, chart.size() - 1);
    });
  if (!crane.chart.empty()) {
    const std::size_t row = row_to_drop(context, name, crane.chart.size());
    if (button(ui, "gear." + name + ".chart.drop",
               say(Msg::kGearDropRow, ui.language, say_length(crane.chart[row].radius, voice))))
      edit_raising(context, [&](RaisingPlan& p) {
        std::vector<ChartRow>& chart = (p.*lifter.crane).chart;
        chart.erase(chart.begin() + static_cast<std::ptrdiff_t>(row));
        touched(context, name, chart.size());
      });
  }
  note(ui, "gear." + name + ".note", context.say(Msg::kGearChartNote));
}

void machine_screen(Context& context) {
  raising_page(context, "machine.page", [&](const ShownFrame& frame) {
    const Lifter& lifter = lifter_of(context.subject);
    if (!given_flag(context, "raising." + std::string(lifter.name) + ".present", context.say(lifter.present))) return;
    const RaisingShown shown(context);
    chart_part(context, shown, lifter);
    heading(context.ui, "machine.place", context.say(Msg::kGearPlace));
    site_part(context, *frame.frame(), shown, lifter.place);
  });
}

void gin_pole_screen(Context& context) {
  raising_page(context, "gin_pole.page", [&](const ShownFrame&) {
    if (!given_flag(context, "raising.gin_pole.present", context.say(Msg::kGearGinPolePresent))) return;
    const RaisingShown shown(context);
    raising_drawn(context, "gear.gin_pole", Msg::kLiftByGinPole, drawing_height(context, 280), gin_pole_drawing(),
                  "raising.gin_pole.", [&](std::string_view key) {
                    return lifter_figure(key, shown.book(), "gin_pole", voice_of(context));
                  });
    if (const auto who = text_field(context.ui, "gear.gin_pole.by", context.say(Msg::kGearGinPoleBy),
                                    context.desk.book().raising.gin_pole.rated_by))
      edit_raising(context, [&](RaisingPlan& p) { p.gin_pole.rated_by = who->substr(0, 200); });
    note(context.ui, "gear.gin_pole.note", context.say(Msg::kGearGinPoleNote));
  });
}

std::string said_of(const Context& context, const Crane& crane) {
  if (!crane.present) return std::string(context.say(Msg::kGearNotThere));
  const double longest = longest_radius(crane);
  if (longest <= 0) return std::string(context.say(Msg::kGearNoChart));
  return say(Msg::kAsideReach, context.ui.language, say_inches(longest, voice_of(context)));
}

}  // namespace

void lifter_rows(Context& context) {
  Ui& ui = context.ui;
  const RaisingPlan& plan = context.desk.book().raising;
  for (const Lifter& lifter : kLifters)
    if (list_row(ui, "gear." + std::string(lifter.name), context.say(lifter.title),
                 said_of(context, plan.*lifter.crane)))
      context.pages.push(raising_machine_page(lifter.name));
  const GinPole& pole = plan.gin_pole;
  const std::string second = !pole.present
                                 ? std::string(context.say(Msg::kGearNotThere))
                                 : say(Msg::kAsideRated, ui.language, print_weight(pole.rated, context.style().form));
  if (list_row(ui, "gear.gin_pole", context.say(Msg::kLiftByGinPole), second))
    context.pages.push(raising_gin_pole_page());
}

Page raising_machine_page(std::string_view name) {
  const Lifter& lifter = lifter_of(name);
  return {"raising.machine", lifter.title, machine_screen, std::string(lifter.name)};
}
Page raising_gin_pole_page() { return {"raising.gin_pole", Msg::kLiftByGinPole, gin_pole_screen}; }

}  // namespace bentbook::screens
