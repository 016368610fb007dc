#include "raising/order_csv.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>

#include "measure/parse.h"
#include "numeric/sorting.h"
#include "text/csv.h"
#include "text/invisible.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

using csv::trimmed;

constexpr std::size_t kMostSteps = 10'000;
enum Column : std::uint8_t { kStep, kMark, kDay, kPutUp, kTakeOut, kSetFirst, kHeldBy, kBy, kLater };
constexpr std::array<std::string_view, 9> kNames = {"step",      "mark",    "day", "put_up", "take_out",
                                                    "set_first", "held_by", "by",  "later"};

std::string lower(std::string_view s) {
  std::string out(trimmed(s));
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

int column_of(std::string_view name) {
  const std::string word = lower(name);
  if (word == "marks") return kMark;
  for (std::size_t i = 0; i < kNames.size(); ++i)
    if (kNames[i] == word) return static_cast<int>(i);
  return -1;
}

/// A line that was read well.
struct Row {
  int line = 1;
  std::int64_t step = 0;
  std::optional<int> day;
  std::vector<std::string> marks, put_up, take_out, set_first;
  std::optional<JointName> later;
  HeldBy held_by = HeldBy::kHands;
  LiftBy by = LiftBy::kAsTheYard;
  [[nodiscard]] bool brings() const {
    return !marks.empty() || !put_up.empty() || !take_out.empty() || !set_first.empty();
  }
};

class Reading {
 public:
  explicit Reading(std::string_view bytes) {
    csv::Records records(bytes);
    if (!head(records.more() ? records.next() : csv::Record{})) return;
    while (records.more()) {
      const csv::Record record = records.next();
      if (auto row = read(record)) rows_.push_back(*std::move(row));
    }
    gather();
  }
  OrderCsv take() { return std::move(order_); }

 private:
  void trouble(int line, std::string_view column, ErrorCode code, std::int64_t at = -1) {
    order_.troubles.push_back({line, std::string(column), {code, std::string(column), at, 0}});
  }

  bool head(const csv::Record& record) {
    std::array<bool, kNames.size()> seen{};
    for (const std::string& cell : record.cells) {
      const int column = column_of(cell);
      columns_.push_back(column);
      if (column < 0) continue;
      const auto c = static_cast<std::size_t>(column);
      if (seen[c]) return trouble(record.line, kNames[c], ErrorCode::kConflict), false;
      seen[c] = true;
    }
    if (record.open_quote) return trouble(record.line, kNames[kMark], ErrorCode::kSyntax), false;
    if (!seen[kMark]) return trouble(record.line, kNames[kMark], ErrorCode::kMissing), false;
    numbered_ = seen[kStep];
    if (seen[kLater]) order_.later.emplace();
    return true;
  }

  static bool is_name(std::string_view name) {
    return is_text(name) && name.size() <= 400 && !invisible_in(name).has_value();
  }

  /// Names between the plus signs; a guarded cell is one name. False: bytes that are no text, or do not show.
  static bool names(std::string_view cell, std::vector<std::string>& out) {
    if (csv::is_guarded(cell)) {
      out.emplace_back(csv::unguarded(cell));
      return is_name(out.back());
    }
    while (!cell.empty()) {
      const std::size_t plus = std::min(cell.find('+'), cell.size());
      const std::string_view name = trimmed(cell.substr(0, plus));
      if (!name.empty()) {
        if (!is_name(name)) return false;
        out.emplace_back(name);
      }
      cell.remove_prefix(std::min(plus + 1, cell.size()));
    }
    return true;
  }

  /// Two names with a plus sign between them.
  static std::optional<JointName> joint_in(std::string_view cell) {
    const std::string_view both = csv::is_guarded(cell) ? csv::unguarded(cell) : cell;
    const std::size_t plus = both.find('+', 1);
    if (plus == std::string_view::npos || both.find('+', plus + 1) != std::string_view::npos) return std::nullopt;
    JointName joint{std::string(trimmed(both.substr(0, plus))), std::string(trimmed(both.substr(plus + 1)))};
    if (joint.one.empty() || joint.other.empty() || joint.one == joint.other || !is_name(joint.one) ||
        !is_name(joint.other))
      return std::nullopt;
    return joint;
  }

  std::optional<std::int64_t> number(int line, Column column, std::string_view cell) {
    const auto value = parse_count(cell);
    if (value) return *value;
    trouble(line, kNames[column], value.error().code, value.error().at);
    return std::nullopt;
  }

  std::optional<Row> read(const csv::Record& record) {
    std::array<std::string_view, kNames.size()> cells;
    bool any = false;
    for (std::size_t i = 0; i < record.cells.size(); ++i) {
      const std::string_view cell = trimmed(record.cells[i]);
      if (cell.empty()) continue;
      any = true;
      if (i >= columns_.size()) return trouble(record.line, kNames[kMark], ErrorCode::kSyntax), std::nullopt;
      if (columns_[i] >= 0) cells[static_cast<std::size_t>(columns_[i])] = cell;
    }
    if (!any) return std::nullopt;
    if (record.open_quote) return trouble(record.line, kNames[kMark], ErrorCode::kSyntax), std::nullopt;
    Row row;
    row.line = record.line;
    if (numbered_) {
      if (cells[kStep].empty()) return trouble(record.line, kNames[kStep], ErrorCode::kMissing), std::nullopt;
      const auto step = number(record.line, kStep, cells[kStep]);
      if (!step) return std::nullopt;
      row.step = *step;
    } else {
      row.step = record.line;
    }
    if (!cells[kDay].empty()) {
      const auto day = number(record.line, kDay, cells[kDay]);
      if (!day) return std::nullopt;
      if (*day < 1 || *day > 1000) {
        trouble(record.line, kNames[kDay], *day < 1 ? ErrorCode::kTooSmall : ErrorCode::kTooLarge);
        return std::nullopt;
      }
      row.day = static_cast<int>(*day);
    }
    for (const auto& [column, out] :
         {std::pair{kMark, &row.marks}, {kPutUp, &row.put_up}, {kTakeOut, &row.take_out}, {kSetFirst, &row.set_first}})
      if (!names(cells[column], *out)) return trouble(record.line, kNames[column], ErrorCode::kSyntax), std::nullopt;
    if (!cells[kHeldBy].empty()) {
      const auto word = std::find(kHeldWords.begin(), kHeldWords.end(), lower(cells[kHeldBy]));
      if (word == kHeldWords.end() || row.set_first.empty())
        return trouble(record.line, kNames[kHeldBy], ErrorCode::kUnexpected), std::nullopt;
      row.held_by = static_cast<HeldBy>(word - kHeldWords.begin());
    }
    if (!cells[kBy].empty()) {
      const auto word = std::find(kLiftByWords.begin(), kLiftByWords.end(), lower(cells[kBy]));
      if (word == kLiftByWords.end()) return trouble(record.line, kNames[kBy], ErrorCode::kUnexpected), std::nullopt;
      row.by = static_cast<LiftBy>(word - kLiftByWords.begin());
    }
    if (!cells[kLater].empty()) {
      row.later = joint_in(cells[kLater]);
      if (!row.later) return trouble(record.line, kNames[kLater], ErrorCode::kSyntax), std::nullopt;
    }
    if (!row.brings() && !row.later) return trouble(record.line, kNames[kMark], ErrorCode::kMissing), std::nullopt;
    return row;
  }

  void gather() {
    sort_by(rows_, [](const Row& a, const Row& b) { return a.step < b.step; });
    std::vector<bool> has_day;
    const Row* before = nullptr;
    for (const Row& row : rows_) {
      if (row.later && std::find(order_.later->begin(), order_.later->end(), *row.later) == order_.later->end())
        order_.later->push_back(*row.later);
      if (!row.brings()) continue;
      if (before == nullptr || before->step != row.step) {
        if (order_.steps.size() == kMostSteps) {
          trouble(row.line, kNames[kMark], ErrorCode::kTooLarge);
          break;
        }
        order_.steps.emplace_back();
        order_.lines.push_back(row.line);
        has_day.push_back(false);
      }
      before = &row;
      RaisingStep& step = order_.steps.back();
      if (row.day && has_day.back() && step.day != *row.day) trouble(row.line, kNames[kDay], ErrorCode::kConflict);
      if (row.day && !has_day.back()) step.day = *row.day, has_day.back() = true;
      if (row.by != LiftBy::kAsTheYard) {
        if (step.by != LiftBy::kAsTheYard && step.by != row.by) trouble(row.line, kNames[kBy], ErrorCode::kConflict);
        step.by = row.by;
      }
      for (const std::string& mark : row.set_first) step.set_first.push_back({mark, row.held_by});
      step.marks.insert(step.marks.end(), row.marks.begin(), row.marks.end());
      step.put_up.insert(step.put_up.end(), row.put_up.begin(), row.put_up.end());
      step.take_out.insert(step.take_out.end(), row.take_out.begin(), row.take_out.end());
    }
    sort_by(order_.troubles, [](const OrderCsvTrouble& a, const OrderCsvTrouble& b) { return a.line < b.line; });
  }

  std::vector<int> columns_;
  bool numbered_ = false;
  std::vector<Row> rows_;
  OrderCsv order_;
};

}  // namespace

OrderCsv read_order_csv(std::string_view bytes) { return Reading(bytes).take(); }

static std::string name_cell(std::string_view name) { return csv::quoted(csv::guarded(name)); }

/// By step, the joints that stand with its lines.
static std::vector<std::vector<const JointName*>> joints_by_step(std::span<const RaisingStep> steps,
                                                                 std::span<const JointName> joints) {
  std::map<std::string_view, std::size_t> brought_by;
  for (std::size_t s = 0; s < steps.size(); ++s) {
    for (const SetPiece& piece : steps[s].set_first) brought_by[piece.mark] = s;
    for (const std::string& mark : steps[s].marks) brought_by[mark] = s;
  }
  std::vector<std::vector<const JointName*>> by_step(steps.size());
  for (const JointName& joint : joints) {
    if (steps.empty()) break;
    const auto one = brought_by.find(joint.one), other = brought_by.find(joint.other);
    std::size_t at = one == brought_by.end() && other == brought_by.end() ? steps.size() - 1 : 0;
    for (const auto& it : {one, other})
      if (it != brought_by.end()) at = std::max(at, it->second);
    by_step[at].push_back(&joint);
  }
  return by_step;
}

std::string write_order_csv(std::span<const RaisingStep> steps, std::span<const JointName> later) {
  std::string out = "step,mark,day,put_up,take_out,set_first,held_by,by,later\r\n";
  const std::vector<std::vector<const JointName*>> by_step = joints_by_step(steps, later);
  for (std::size_t s = 0; s < steps.size(); ++s) {
    const RaisingStep& step = steps[s];
    const std::string head = std::to_string(s + 1) + ",";
    const std::string day = "," + std::to_string(step.day) + ",";
    const std::string by =
        step.by == LiftBy::kAsTheYard ? std::string{} : std::string(kLiftByWords[static_cast<std::size_t>(step.by)]);
    const std::string tail = "," + by + ",\r\n";
    for (const SetPiece& piece : step.set_first)
      out += head + day + ",," + name_cell(piece.mark) + "," +
             std::string(kHeldWords[static_cast<std::size_t>(piece.by)]) + tail;
    for (const std::string& mark : step.marks) out += head + name_cell(mark) + day + ",,," + tail;
    for (const std::string& name : step.put_up) out += head + day + name_cell(name) + ",,," + tail;
    for (const std::string& name : step.take_out) out += head + day + "," + name_cell(name) + ",," + tail;
    for (const JointName* joint : by_step[s])
      out += head + day + ",,,," + by + "," + name_cell(joint->one + "+" + joint->other) + "\r\n";
  }
  return out;
}

}  // namespace bentbook
