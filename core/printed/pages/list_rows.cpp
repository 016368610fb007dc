#include "printed/pages/list_rows.h"

#include <algorithm>
#include <utility>

#include "frame/keys.h"
#include "numeric/index.h"
#include "words/shop_words.h"
#include "words/steps/saw_scale.h"

namespace bentbook {
namespace {

/// The tools that such a step is set to: the bit, or how wide and deep.
std::string tool_text(const WorkStep& step, const Voice& voice) {
  std::string out(key_text("work_", keys::word(kStepWorkWords, step.work), voice.language));
  if (!step.name.empty()) out = step.name;
  constexpr StepNumberName kTools[] = {StepNumberName::kDiameter, StepNumberName::kWidth};
  for (const StepNumberName tool : kTools)
    for (const StepNumber& number : step.numbers) {
      if (number.name != tool) continue;
      out += " · ";
      out += step_number_text(tool, voice.language);
      out += " " + step_value_text(tool, number.value, voice);
      return out;
    }
  return {};
}

}  // namespace

std::vector<CutRow> cut_rows(const Frame& frame) {
  std::vector<CutRow> rows;
  rows.reserve(frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const int alike = frame.timbers[i].alike, timber = static_cast<int>(i);
    const auto same = [&](const CutRow& row) { return alike >= 0 && frame.timbers[at(row.timber)].alike == alike; };
    const auto found = std::find_if(rows.begin(), rows.end(), same);
    if (found == rows.end())
      rows.push_back({timber, {timber}});
    else
      found->timbers.push_back(timber);
  }
  return rows;
}

std::vector<SettingRow> setting_rows(std::span<const TimberWork> work, const Voice& voice) {
  std::vector<SettingRow> rows;
  for (SawGroup& group : waiting_for_saw(work)) {
    std::vector<WaitingCut> cuts = std::move(group.cuts);
    rows.push_back({Workplace::kSaw, std::move(group), {}, std::move(cuts)});
  }
  const auto sawn = static_cast<std::ptrdiff_t>(rows.size());
  for (std::size_t w = 0; w < work.size(); ++w)
    for (std::size_t s = 0; s < work[w].steps.size(); ++s) {
      const WorkStep& step = work[w].steps[s];
      if (step.place == Workplace::kSaw) continue;
      std::string said = tool_text(step, voice);
      if (said.empty()) continue;
      const auto found = std::find_if(rows.begin() + sawn, rows.end(), [&](const SettingRow& row) {
        return row.place == step.place && row.said == said;
      });
      const WaitingCut cut{static_cast<int>(w), static_cast<int>(s)};
      if (found == rows.end())
        rows.push_back({step.place, {}, std::move(said), {cut}});
      else
        found->cuts.push_back(cut);
    }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const SettingRow& a, const SettingRow& b) { return a.place < b.place; });
  return rows;
}

std::string scale_text(const Saw& saw, std::int64_t hundredths, const Voice& voice) {
  const ScaleWords words = scale_words(saw, hundredths, voice);
  return words.exactly.empty() ? words.reads : words.reads + " (" + words.exactly + ")";
}

}  // namespace bentbook
