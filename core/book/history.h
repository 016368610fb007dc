#pragma once
/// Undo by whole values.

#include <cstddef>
#include <utility>
#include <vector>

namespace bentbook {

template <class Value>
class History {
 public:
  explicit History(Value start) : now_(std::move(start)) {}
  [[nodiscard]] const Value& now() const { return now_; }
  /// A committed edit. One that changes nothing is not remembered.
  void commit(Value next) {
    if (next == now_) return;
    undone_.clear();
    past_.push_back(std::exchange(now_, std::move(next)));
    if (past_.size() > kKept) past_.erase(past_.begin());
  }
  [[nodiscard]] bool can_undo() const { return !past_.empty(); }
  [[nodiscard]] bool can_redo() const { return !undone_.empty(); }
  /// What undo and redo lead to; nullptr: nothing.
  [[nodiscard]] const Value* before() const { return past_.empty() ? nullptr : &past_.back(); }
  [[nodiscard]] const Value* after() const { return undone_.empty() ? nullptr : &undone_.back(); }
  void undo() { step(past_, undone_); }
  void redo() { step(undone_, past_); }

 private:
  static constexpr std::size_t kKept = 100;
  void step(std::vector<Value>& from, std::vector<Value>& to) {
    if (from.empty()) return;
    to.push_back(std::exchange(now_, std::move(from.back())));
    from.pop_back();
  }
  Value now_;
  std::vector<Value> past_, undone_;
};

}  // namespace bentbook
