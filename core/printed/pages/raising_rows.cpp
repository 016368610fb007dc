#include "printed/pages/raising_rows.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "raising/order.h"
#include "words/frame_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

constexpr std::size_t kStepNumberCell = 0, kStepNameCell = 2, kStepWeightCell = 3;
constexpr std::size_t kMostAsOne = 8;  // steps in a row: more marks are not found at a glance

/// A step's name taken apart where its own values stand in it.
struct NamedStep {
  int bent = 0;       ///< goes up whole; 0: the pieces are named
  std::string kind;   ///< before the marks; empty where they are of different ones
  std::string marks;  ///< "C-A1+C-E1"
  std::size_t named = 0;
  std::string behind;  ///< ", 4 girts caught"
  [[nodiscard]] bool alike(const NamedStep& other) const {
    return (bent > 0) == (other.bent > 0) && kind == other.kind && named == other.named && behind == other.behind;
  }
};

/// Nothing where nothing comes or what comes is counted, not named.
std::optional<NamedStep> named_step(const RaisingStep& step, const Frame& frame, Language language) {
  const std::vector<int> main = timbers_of(frame, step.marks);
  if (main.empty()) return std::nullopt;
  const Timber& first = frame.timbers[at(main.front())];
  const std::string name = step_name(step, frame, language);
  std::string_view left = name;
  const auto skip = [&](std::string_view begin) {
    if (begin.empty() || !left.starts_with(begin)) return false;
    left.remove_prefix(begin.size());
    return true;
  };
  NamedStep out;
  if (first.place.bent > 0 && skip(say(Msg::kStepBentUp, language, std::to_string(first.place.bent)))) {
    out.bent = first.place.bent;
    out.behind = left;
    return out;
  }
  if (const std::string_view kind = kind_name(first.kind, language); skip(std::string(kind) + " ")) out.kind = kind;
  const std::vector<std::string> own = marks_in(step);
  do {
    std::string_view longest;  // P-A1.1 begins as P-A1 does
    for (const std::string& mark : own)
      if (left.starts_with(mark) && mark.size() > longest.size()) longest = mark;
    if (!skip(longest)) return std::nullopt;
    (out.marks += out.marks.empty() ? "" : "+") += longest;
    ++out.named;
  } while (skip(" + "));
  if (!left.empty() && !left.starts_with(", ")) return std::nullopt;
  out.behind = left;
  return out;
}

/// Whether two rows say the same of their steps but for number and name, and no fault.
bool tell_alike(const TableRow& a, const TableRow& b) {
  for (std::size_t c = 0; c < a.size(); ++c)
    if (c != kStepNumberCell && c != kStepNameCell && a[c] != b[c]) return false;
  const auto one_line = [](const TableRow& row) { return row[kStepNameCell].find('\n') == std::string::npos; };
  return one_line(a) && one_line(b);
}

std::string name_as_one(std::span<const NamedStep> steps, std::size_t number, Language language) {
  const NamedStep& first = steps.front();
  std::string bents;
  for (const NamedStep& step : steps)
    if (step.bent > 0) (bents += bents.empty() ? "" : ", ") += std::to_string(step.bent);
  std::string out = first.bent > 0 ? say(Msg::kStepBentUp, language, bents) : first.kind;
  if (!first.behind.empty())  // ", …"
    out += say(Msg::kPaperEachStep, language, out.empty() ? first.behind.substr(2) : first.behind);
  if (first.bent > 0) return out;
  if (!out.empty()) out += "\n";
  for (const NamedStep& step : steps) {
    if (&step != &first) out += ", ";
    out += std::to_string(number++) + ":\u00A0" + step.marks;
  }
  return out;
}

}  // namespace

std::vector<TableRow> alike_as_one(const Frame& frame, std::span<const RaisingStep> steps,
                                   const std::vector<TableRow>& rows, Language language) {
  std::vector<TableRow> out;
  out.reserve(rows.size());
  for (std::size_t first = 0; first < rows.size();) {
    std::vector<NamedStep> alike;
    alike.reserve(kMostAsOne);
    if (std::optional<NamedStep> one = named_step(steps[first], frame, language)) alike.push_back(std::move(*one));
    std::size_t end = first + 1;
    for (; !alike.empty() && alike.size() < kMostAsOne && end < rows.size() && tell_alike(rows[first], rows[end]);
         ++end) {
      std::optional<NamedStep> next = named_step(steps[end], frame, language);
      if (!next || !next->alike(alike.front())) break;
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
