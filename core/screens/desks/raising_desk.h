#pragma once
/// The raising's desk: what is worked out off the frame about the raising of the open book. The order's check, one step
/// explained, an order looked for. Whatever it shows is about what lies open now.

#include <memory>

#include "screens/desks/asked.h"
#include "screens/desks/books_desk.h"

namespace bentbook::screens {

class RaisingDesk {
 public:
  explicit RaisingDesk(Platform& platform) : platform_(platform) {}
  /// What lies open, before a page is drawn. Where the frame is another one, work about the one before is ended; where
  /// the lead only said something else, a search is, and a check is let go on: the next is soon done by what it found.
  void look_at(const BooksDesk& desk);
  void take(const TaskEvent& event);

  /// Of the frame and the raising that lie open: what is kept of them holds while it is the same.
  [[nodiscard]] Fingerprint of() const { return of_; }

  /// The check of the whole order; asked for where it is not known.
  const Asked<OrderCheck>& check();
  /// The check as far as it is known; nothing is asked.
  [[nodiscard]] const OrderCheck* known_check() const { return check_.answer(); }
  /// One step looked at closely; asked for where it is not known.
  const Asked<StepExplained>& explain(int step);
  /// An order that was looked for.
  [[nodiscard]] const Asked<FoundOrder>& search() const { return search_; }
  /// Looks for an order: any good one first; once there is one, for a cheaper one, which takes as long as it is let.
  void start_search();
  void stop_search() { search_.cancel(platform_); }

 private:
  [[nodiscard]] bool has_frame() const { return frame_ != nullptr && frame_->has_value(); }
  [[nodiscard]] RaisingCase now() const;

  Platform& platform_;
  std::shared_ptr<const Result<Frame>> frame_;
  RaisingPlan plan_;
  Fingerprint of_ = 0;
  Asked<OrderCheck> check_;
  Asked<StepExplained> explained_;
  Asked<FoundOrder> search_;
};

}  // namespace bentbook::screens
