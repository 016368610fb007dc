#include "printed/pages/raising_rows.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "numeric/index.h"
#include "raising/order.h"
#include "words/frame_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

constexpr std::size_t kStepNumberCell = 0, kStepNameCell = 2, kStepWeightCell = 3;
constexpr std::size_t kMostAsOne = 8;  // steps in a row: more marks are not found at a glance

/// Nothing where what comes is counted, not named.
std::optional<StepNameParts> named_step(const RaisingStep& step, const Frame& frame, Language language) {
  std::optional<StepNameParts> parts = step_name_parts(step, frame, language);
  if (parts && parts->bent == 0 && parts->marks.size() > kMostMarksNamed) parts.reset();
  return parts;
}

bool named_alike(const StepNameParts& a, const StepNameParts& b) {
  return (a.bent > 0) == (b.bent > 0) && a.kind == b.kind && a.caught == b.caught &&
         (a.bent > 0 || a.marks.size() == b.marks.size());
}

/// Whether two rows say the same of their steps but for number and name, and no fault.
bool tell_alike(const TableRow& a, const TableRow& b) {
  for (std::size_t c = 0; c < a.size(); ++c)
    if (c != kStepNumberCell && c != kStepNameCell && a[c] != b[c]) return false;
  const auto one_line = [](const TableRow& row) { return row[kStepNameCell].find('\n') == std::string::npos; };
  return one_line(a) && one_line(b);
}

std::string name_as_one(std::span<const StepNameParts> steps, std::size_t number, Language language) {
  const StepNameParts& first = steps.front();
  std::string bents;
  for (const StepNameParts& step : steps)
    if (step.bent > 0) (bents += bents.empty() ? "" : ", ") += std::to_string(step.bent);
  std::string out = first.bent > 0 ? say(Msg::kStepBentUp, language, bents) : first.kind;
  if (!first.caught.empty())  // ", …"
    out += say(Msg::kPaperEachStep, language, out.empty() ? first.caught.substr(2) : first.caught);
  if (first.bent > 0) return out;
  if (!out.empty()) out += "\n";
  for (const StepNameParts& step : steps) {
    if (&step != &first) out += ", ";
    out += std::to_string(number++) + ":\u00A0";
    for (const std::string& mark : step.marks) out += (&mark == step.marks.data() ? "" : "+") + mark;
  }
  return out;
}

}  // namespace

std::vector<TableRow> alike_as_one(const Frame& frame, std::span<const RaisingStep> steps,
                                   const std::vector<TableRow>& rows, Language language) {
  std::vector<TableRow> out;
  out.reserve(rows.size());
  for (std::size_t first = 0; first < rows.size();) {
    std::vector<StepNameParts> alike;
    alike.reserve(kMostAsOne);
    if (std::optional<StepNameParts> one = named_step(steps[first], frame, language)) alike.push_back(std::move(*one));
    std::size_t end = first + 1;
    for (; !alike.empty() && alike.size() < kMostAsOne && end < rows.size() && tell_alike(rows[first], rows[end]);
         ++end) {
      std::optional<StepNameParts> next = named_step(steps[end], frame, language);
      if (!next || !named_alike(*next, alike.front())) break;
      alike.push_back(std::move(*next));
    }
    TableRow row = rows[first];
    if (alike.size() > 1) {
      row[kStepNumberCell] += "–" + rows[end - 1][kStepNumberCell];
      row[kStepNameCell] = name_as_one(alike, first + 1, language);
      if (!row[kStepWeightCell].empty()) row[kStepWeightCell] = say(Msg::kPaperEach, language, row[kStepWeightCell]);
    }
    out.push_back(std::move(row));
    first = end;
  }
  return out;
}

}  // namespace bentbook
