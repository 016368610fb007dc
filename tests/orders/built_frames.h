#pragma once
/// Frames as they are built, in a new book each: usual sizes, one thing or another of what a plan can say.

#include <string>
#include <utility>
#include <vector>

#include "book/book.h"
#include "frame/joinery.h"

namespace bentbook {

struct Built {
  std::string name;
  Book book;
};

/// What differs from a new book's frame.
using Change = void (*)(FramePlan&);

inline void no_change(FramePlan& /*plan*/) {}

inline void on_sills(FramePlan& plan) {
  plan.sills = true;
  plan.end_girts = true;
}
inline void lofted(FramePlan& plan) {
  plan.loft = true;
  plan.tie_drop = Length::inches(36);
  plan.joist_spacing = Length::inches(32);
  plan.sections.joist = {Length::inches(4), Length::inches(8)};
  plan.sections.tie = {Length::inches(8), Length::inches(12)};
}
inline void purlined(FramePlan& plan) {
  plan.roof = RoofFrame::kPrincipals;
  plan.peak = Peak::kPair;
  plan.gable_overhang = Length::inches(12);
}
inline void purlined_on_ridge(FramePlan& plan) { plan.roof = RoofFrame::kPrincipals; }
inline void queened(FramePlan& plan) {
  plan.on_ties = OnTies::kQueenPosts;
  plan.peak = Peak::kPair;
}
inline void collared(FramePlan& plan) {
  plan.collars = true;
  plan.on_ties = OnTies::kNothing;
  plan.peak = Peak::kPair;
  plan.roof = RoofFrame::kPrincipals;
}
inline void leaning(FramePlan& plan) {
  plan.form = RoofForm::kLeanTo;
  plan.pitch_left = plan.pitch_right = Slope::in_12(Length::inches(4));
}
inline void plated(FramePlan& plan) { plan = with_joinery(std::move(plan), Joinery::kPlates); }
inline void wooden(FramePlan& plan) { plan = with_joinery(std::move(plan), Joinery::kWooden); }
inline void uneven(FramePlan& plan) {
  plan.bays = {{Length::feet(9), 2}, {Length::feet(14), 3}};
  plan.stock_most = Length::feet(24);
}
inline void uneven_long(FramePlan& plan) {
  plan.bays = {{Length::feet(14), 2}, {Length::feet(8), 3}, {Length::feet(12), 4}, {Length::feet(10), 5}};
  plan.stock_most = Length::feet(24);
}

inline Built built(const char* name, int span, int length, int plate, int pitch, Change change) {
  Book book = new_book(name, Length::feet(span), Length::feet(length), Length::feet(plate),
                       Slope::in_12(Length::inches(pitch)));
  change(book.frame);
  return {std::string(name) + " " + std::to_string(span) + " x " + std::to_string(length), std::move(book)};
}
inline Built hipped(int span, int length, int plate, int pitch) {
  Built one = built("hip on posts", span, length, plate, pitch, no_change);
  one.book.frame = default_hip_plan(Length::feet(span), Length::feet(length), Length::feet(plate),
                                    Slope::in_12(Length::inches(pitch)));
  return one;
}

/// Two of each kind, the smaller one first.
inline std::vector<Built> all_built() {
  return {
      built("as a new book", 20, 24, 10, 8, no_change),
      built("as a new book", 24, 36, 10, 9, no_change),
      built("sills", 16, 24, 9, 8, on_sills),
      built("sills", 24, 36, 10, 9, on_sills),
      built("loft", 16, 24, 12, 10, lofted),
      built("loft", 20, 30, 12, 10, lofted),
      built("purlins on principals", 16, 20, 9, 10, purlined),
      built("purlins on principals", 24, 36, 10, 10, purlined),
      built("purlins, principals, ridge", 16, 20, 9, 10, purlined_on_ridge),
      built("purlins, principals, ridge", 24, 36, 10, 10, purlined_on_ridge),
      built("queen posts", 24, 24, 10, 8, queened),
      built("queen posts", 30, 48, 12, 8, queened),
      built("collars", 16, 20, 9, 12, collared),
      built("collars", 20, 36, 10, 12, collared),
      built("lean-to", 10, 20, 8, 4, leaning),
      built("lean-to", 14, 36, 9, 4, leaning),
      built("knife plates", 16, 24, 9, 8, plated),
      built("knife plates", 24, 36, 10, 9, plated),
      built("wood in wood", 16, 24, 9, 8, wooden),
      built("wood in wood", 24, 36, 10, 9, wooden),
      built("unequal bays", 18, 23, 9, 8, uneven),
      built("unequal bays", 24, 44, 10, 9, uneven_long),
      hipped(16, 28, 9, 8),
      hipped(20, 40, 10, 8),
  };
}

}  // namespace bentbook
