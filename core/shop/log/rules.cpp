#include "shop/log/rules.h"

#include <algorithm>

#include "frame/keys.h"
#include "shop/log/record.h"

namespace bentbook {
namespace {

bool is_step_word(std::string_view word) {
  return !word.empty() && word.size() <= 60 && std::all_of(word.begin(), word.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
  });
}

/// Dropping and restoring are one thing said two ways.
EventAction about(EventAction action) {
  return action == EventAction::kStepRestored ? EventAction::kStepDropped : action;
}

}  // namespace

std::optional<AddedStep> read_added(std::string_view value) {
  const auto words = words_of(value);
  if (words.size() != 3) return std::nullopt;
  const int tick = keys::index_of(kTickWords, words[0]), place = keys::index_of(kWorkplaceWords, words[1]);
  if (tick < 0 || place < 0 || !(words[2] == "-" || is_step_word(words[2]))) return std::nullopt;
  return AddedStep{static_cast<Tick>(tick), static_cast<Workplace>(place), words[2]};
}

Result<void> check_rule(const Event& e) {
  if (keys::index_of(keys::kTimberKind, e.timber) < 0) return fail(ErrorCode::kSyntax, "timber");
  if (!is_step_word(e.step)) return fail(ErrorCode::kSyntax, "step");
  switch (e.action) {
    case EventAction::kStepAdded:
      if (!e.step.starts_with("own.")) return fail(ErrorCode::kSyntax, "step");
      if (e.note.empty()) return fail(ErrorCode::kMissing, "note");
      if (!read_added(e.value)) return fail(ErrorCode::kSyntax, "value");
      break;
    case EventAction::kStepMoved:
      if (!(e.value == "-" || is_step_word(e.value))) return fail(ErrorCode::kSyntax, "value");
      break;
    case EventAction::kStepAsks: {
      const auto count = read_decimal(e.value);
      if (!e.value.empty() && !(count && *count <= static_cast<std::uint64_t>(Length::kPerFoot)))
        return fail(ErrorCode::kSyntax, "value");
      break;
    }
    default:
      break;
  }
  return {};
}

void take_rule(std::vector<Rule>& rules, const Event& e) {
  rules.erase(std::remove_if(rules.begin(), rules.end(),
                             [&](const Rule& rule) {
                               return about(rule.action) == about(e.action) && rule.step == e.step &&
                                      rule.kind == e.timber;
                             }),
              rules.end());
  if (rules.size() < kMostRules) rules.push_back({e.action, e.timber, e.step, e.value, e.note, e.id()});
}

}  // namespace bentbook
