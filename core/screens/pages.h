#pragma once
/// Where the user is: five places along the bottom, and in each a stack of pages pushed from the right with the back
/// key at the bottom left. Only places that are built appear.

#include <cstdint>
#include <string_view>
#include <vector>

#include "screens/context.h"

namespace bentbook::screens {

/// A page is a plain function. `key` is stable ("rafter.pattern"); `title` stands at the top.
struct Page {
  std::string_view key;
  Msg title{};
  void (*draw)(Context&) = nullptr;
};

enum class Place : std::uint8_t { kAngles, kRafter, kFrame, kShop, kRaising };

class Pages {
 public:
  /// Built places, in the order of the bar.
  void add_place(Place place, Page root);
  struct Root {
    Place place{};
    Page page;
    std::vector<Page> pushed;
  };
  [[nodiscard]] const std::vector<Root>& places() const { return places_; }
  [[nodiscard]] Place place() const { return places_[current_].place; }
  void go(Place place);
  /// Pushed pages over everything (settings, saws, help) and pages of a place share one stack: the current place's.
  void push(const Page& page);
  void pop();
  [[nodiscard]] int depth() const { return static_cast<int>(places_[current_].pushed.size()); }
  [[nodiscard]] const Page& top() const;

  /// Share of the way that the top page has still to come in, 1 → 0; 0 at rest.
  [[nodiscard]] float slide(double now_ms) const;
  void set_reduced_motion(bool on) { reduced_motion_ = on; }
  void clock(double now_ms) { now_ms_ = now_ms; }
  /// Changes whenever another page is on top (the frame settles, the keypad closes).
  [[nodiscard]] unsigned turns() const { return turns_; }

 private:
  static constexpr double kSlideMs = 180;
  std::vector<Root> places_;
  std::size_t current_ = 0;
  double now_ms_ = 0, slide_from_ms_ = -1e9;
  int slide_sign_ = 1;
  bool reduced_motion_ = false;
  unsigned turns_ = 0;
};

}  // namespace bentbook::screens
