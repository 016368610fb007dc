#include "screens/app/pages.h"

#include <utility>

namespace bentbook::screens {

void Pages::add_place(Place place, Icon icon, Page root) { places_.push_back({place, icon, std::move(root), {}}); }

void Pages::turned(bool from_top) {
  from_top_ = from_top;
  ++turns_;
}

void Pages::go(Place place) {
  if (place == places_[current_].place) {
    if (depth() > 0) begin(place);
    return;
  }
  for (std::size_t i = 0; i < places_.size(); ++i) {
    if (places_[i].place != place) continue;
    current_ = i;
    turned(false);
  }
}

void Pages::begin(Place place) {
  for (std::size_t i = 0; i < places_.size(); ++i) {
    if (places_[i].place != place) continue;
    current_ = i;
    places_[i].pushed.clear();
    turned(true);
  }
}

void Pages::push(const Page& page) {
  places_[current_].pushed.push_back(page);
  slide_from_ms_ = now_ms_;
  turned(true);
}

void Pages::pop() {
  if (places_[current_].pushed.empty()) return;
  places_[current_].pushed.pop_back();
  turned(false);
}

void Pages::turn_to(const Page& page) {
  pop();
  push(page);
}

const Page& Pages::top() const {
  const Root& root = places_[current_];
  return root.pushed.empty() ? root.page : root.pushed.back();
}

const Page& Pages::below() const {
  const Root& root = places_[current_];
  return root.pushed.size() < 2 ? root.page : root.pushed[root.pushed.size() - 2];
}

float Pages::slide(double now_ms) const {
  const double share = (now_ms - slide_from_ms_) / kSlideMs;
  if (reduced_motion_ || share >= 1 || share < 0 || depth() == 0) return 0;
  const auto left = static_cast<float>(1 - share);
  return left * left;
}

}  // namespace bentbook::screens
