#pragma once
/// A question put to long work: asked, under way, answered. An answer is taken only for the very question that is
/// under way, and forgotten once something else is the question.

#include <optional>
#include <utility>

#include "tasks/task.h"
#include "ui/platform.h"

namespace bentbook::screens {

/// `Answer`: an alternative of TaskAnswer.
template <class Answer>
class Asked {
 public:
  /// What the question is now about. An answer about anything else is forgotten; work under way goes on to its end,
  /// since what it finds out helps the next, but its answer will be refused.
  void turn_to(Fingerprint of) {
    if (of == of_) return;
    of_ = of;
    answer_.reset();
  }
  [[nodiscard]] Fingerprint of() const { return of_; }

  /// Asks; the answer that is there stays until the new one comes.
  void ask(Platform& platform, TaskKind kind, TaskRequest request) {
    running_ = TaskId{kind, of_};
    per_mille_ = 0;
    platform.start_task({*running_, std::move(request)});
  }
  /// Work under way is ended and its answer given up.
  void cancel(Platform& platform) {
    if (running_) platform.cancel_task(*std::exchange(running_, std::nullopt));
  }
  /// True: it was this question's.
  bool take(const TaskEvent& event) {
    if (event.id != running_) return false;
    per_mille_ = event.per_mille;
    if (!event.ended) return true;
    running_.reset();
    if (event.id.of != of_) return true;
    if (!*event.ended)
      answer_ = tl::unexpected(event.ended->error());
    else if (const Answer* answer = std::get_if<Answer>(&**event.ended))
      answer_ = *answer;
    else
      answer_ = fail(ErrorCode::kSyntax, "answer");
    return true;
  }
  void forget() { answer_.reset(); }

  /// Work is under way, about this or about what the question was before.
  [[nodiscard]] bool running() const { return running_.has_value(); }
  /// How far it is, where it is about this.
  [[nodiscard]] std::optional<int> per_mille() const {
    if (running_ && running_->of == of_) return per_mille_;
    return std::nullopt;
  }
  [[nodiscard]] bool ended() const { return answer_.has_value(); }
  [[nodiscard]] const Answer* answer() const { return answer_ && *answer_ ? &**answer_ : nullptr; }
  /// Why there is none.
  [[nodiscard]] const Error* failure() const { return answer_ && !*answer_ ? &answer_->error() : nullptr; }

 private:
  Fingerprint of_ = 0;
  std::optional<TaskId> running_;
  int per_mille_ = 0;
  std::optional<Result<Answer>> answer_;  ///< about of_
};

}  // namespace bentbook::screens
