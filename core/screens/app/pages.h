#pragma once
/// Where the user is: places along the bottom, and in each a stack of pages pushed from the right with the back key at
/// the bottom left. Only places that are built appear.

#include <string>
#include <string_view>
#include <vector>

#include "screens/app/context.h"

namespace bentbook::screens {

/// A page is a plain function. `key` is stable ("rafter.pattern"); `title` stands at the top; `subject` says which of
/// several things a page is about ("" where there is only one).
struct Page {
  std::string_view key;
  Msg title{};
  void (*draw)(Context&) = nullptr;
  std::string subject{};
};

class Pages {
 public:
  struct Root {
    Place place{};
    Icon icon{};
    Page page;
    std::vector<Page> pushed;
  };
  /// Built places, in the order of the bar. The first is where one is.
  void add_place(Place place, Icon icon, Page root);
  [[nodiscard]] const std::vector<Root>& places() const { return places_; }
  [[nodiscard]] Place place() const { return places_[current_].place; }
  /// To a place as it was left; to the place where one is: back to its first page. An unknown place changes nothing.
  void go(Place place);
  /// To a place's first page, from its top.
  void begin(Place place);
  void push(const Page& page);
  void pop();
  /// In place of the page on top.
  void turn_to(const Page& page);
  [[nodiscard]] int depth() const { return static_cast<int>(places_[current_].pushed.size()); }
  [[nodiscard]] const Page& top() const;
  /// The page that pop() leads to; the top one where there is nothing to pop.
  [[nodiscard]] const Page& below() const;

  /// Share of the way that the top page has still to come in from the right, 1 → 0; 0 at rest and with reduced motion.
  [[nodiscard]] float slide(double now_ms) const;
  void set_reduced_motion(bool on) { reduced_motion_ = on; }
  /// Tell the time before a frame's pages are drawn: a push begins to move then.
  void clock(double now_ms) { now_ms_ = now_ms; }
  /// Grows whenever another page is on top.
  [[nodiscard]] unsigned turns() const { return turns_; }
  /// The last turn brought a page that is looked at from its top, not one as it was left.
  [[nodiscard]] bool from_top() const { return from_top_; }

 private:
  static constexpr double kSlideMs = 180;
  void turned(bool from_top);
  std::vector<Root> places_;
  std::size_t current_ = 0;
  double now_ms_ = 0, slide_from_ms_ = -1e9;
  bool reduced_motion_ = false;
  unsigned turns_ = 0;
  bool from_top_ = false;
};

}  // namespace bentbook::screens
