#include "printed/pages/raising_rows.h"

#include <algorithm>
#include <utility>

namespace bentbook {
namespace {

constexpr std::size_t kStepNumberCell = 0, kStepNameCell = 2, kStepWeightCell = 3;

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t blank = std::min(text.find(' ', at), text.size());
    out.emplace_back(text.substr(at, blank - at));
    at = blank + 1;
  }
  return out;
}

std::string_view without_comma(std::string_view word) {
  if (word.ends_with(',')) word.remove_suffix(1);
  return word;
}

bool is_count(std::string_view word) {
  return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_mark(const Frame& frame, std::string_view word) {
  return std::any_of(frame.timbers.begin(), frame.timbers.end(), [&](const Timber& t) { return t.mark == word; });
}

/// Whether two rows say the same of their steps but for number and name.
bool tell_alike(const TableRow& a, const TableRow& b) {
  for (std::size_t c = 0; c < a.size(); ++c)
    if (c != kStepNumberCell && c != kStepNameCell && a[c] != b[c]) return false;
  return true;
}

}  // namespace

std::optional<std::string> names_as_one(const Frame& frame, std::span<const std::string> names) {
  if (names.empty()) return std::nullopt;
  std::vector<std::vector<std::string>> all;
  all.reserve(names.size());
  for (const std::string& name : names) all.push_back(words_of(name));
  const std::vector<std::string>& first = all.front();
  std::size_t from = first.size(), to = 0;
  bool counted = false;
  for (const auto& other : all) {
    if (other.size() != first.size()) return std::nullopt;
    for (std::size_t w = 0; w < first.size(); ++w) {
      if (other[w] == first[w]) continue;
      const std::string_view one = without_comma(first[w]), two = without_comma(other[w]);
      const bool counts = is_count(one) && is_count(two);
      if (!counts && !(is_mark(frame, one) && is_mark(frame, two))) return std::nullopt;
      counted = counted || counts;
      from = std::min(from, w);
      to = std::max(to, w + 1);
    }
  }
  if (from >= to) return names.front();
  if (counted && to - from > 1) return std::nullopt;  // how many, not which
  std::string out;
  for (std::size_t w = 0; w < from; ++w) out += first[w] + " ";
  for (std::size_t n = 0; n < all.size(); ++n) {
    if (n > 0) out += to - from > 1 ? "; " : ", ";
    for (std::size_t w = from; w < to; ++w)
      (out += w == from ? "" : " ") += w + 1 == to ? without_comma(all[n][w]) : all[n][w];
  }
  if (first[to - 1].ends_with(',')) out += ',';
  for (std::size_t w = to; w < first.size(); ++w) out += " " + first[w];
  return out;
}

std::vector<TableRow> alike_as_one(const Frame& frame, const std::vector<TableRow>& steps) {
  std::vector<TableRow> out;
  for (std::size_t first = 0; first < steps.size();) {
    std::vector<std::string> names{steps[first][kStepNameCell]};
    std::string name = names.front();
    std::size_t end = first + 1;
    for (; end < steps.size() && tell_alike(steps[first], steps[end]); ++end) {
      names.push_back(steps[end][kStepNameCell]);
      std::optional<std::string> one;
      if (name.find('\n') == std::string::npos && names.back().find('\n') == std::string::npos)
        one = names_as_one(frame, names);
      if (!one) break;
      name = std::move(*one);
    }
    TableRow row = steps[first];
    if (end - first > 1) {
      row[kStepNumberCell] += "–" + steps[end - 1][kStepNumberCell];
      if (!row[kStepWeightCell].empty())
        row[kStepWeightCell] = std::to_string(end - first) + " × " + row[kStepWeightCell];
    }
    row[kStepNameCell] = std::move(name);
    out.push_back(std::move(row));
    first = end;
  }
  return out;
}

}  // namespace bentbook
