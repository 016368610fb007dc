#include "screens/desks/raising_desk.h"

namespace bentbook::screens {

void RaisingDesk::look_at(const BooksDesk& desk) {
  const bool open = desk.state() == BooksDesk::State::kOpen;
  const std::shared_ptr<const Result<Frame>> frame = open ? desk.model().frame : nullptr;
  const bool other_frame = frame != frame_;
  if (!other_frame && (!open || desk.book().raising == plan_)) return;
  frame_ = frame;
  plan_ = open ? desk.book().raising : RaisingPlan{};
  of_ = open ? fingerprint_of(desk.book()) : 0;
  if (of_ == search_.of()) return;
  // With a search its Worker ends, and with that what a check has found out.
  const bool from_nothing = other_frame || search_.running();
  search_.cancel(platform_);
  if (from_nothing) {
    check_.cancel(platform_);
    explained_.cancel(platform_);
  }
  check_.turn_to(of_);
  search_.turn_to(of_);
}

void RaisingDesk::take(const TaskEvent& event) {
  (void)(check_.take(event) || explained_.take(event) || search_.take(event));
}

RaisingCase RaisingDesk::now() const { return {std::shared_ptr<const Frame>(frame_, &**frame_), plan_}; }

const Asked<OrderCheck>& RaisingDesk::check() {
  if (has_frame() && !check_.ended() && !check_.running()) check_.ask(platform_, TaskKind::kCheck, CheckRequest{now()});
  return check_;
}

const Asked<StepExplained>& RaisingDesk::explain(int step) {
  explained_.turn_to(fingerprint_of_step(of_, step));
  if (has_frame() && !explained_.ended() && !explained_.running())
    explained_.ask(platform_, TaskKind::kExplain, ExplainRequest{now(), step});
  return explained_;
}

void RaisingDesk::start_search() {
  const FoundOrder* found = search_.answer();
  if (!has_frame() || search_.running()) return;
  search_.ask(platform_, TaskKind::kSearch, SearchRequest{now(), 1, 4000, found != nullptr && found->found});
}

}  // namespace bentbook::screens
