#pragma once
/// What the user gave of a frame, by key, for drawings, rows and the keypad.
///
/// Lengths: span plate_left plate_right eave_overhang gable_overhang rafter_spacing purlin_spacing queen_inset tie_drop
/// collar_rise joist_spacing brace_leg_post brace_leg_beam stock_most stand_off, bay:<label>, girt:<index>,
/// section:<kind>:breadth|depth, joint:<meeting>:<measure>, end:<mark>:<a|b>:<measure> (the joint of one timber's end),
/// timber:<mark>:<what> (overrides), defect:<mark>:<index>:from|to and hand:<mark>:<what>.
/// Slopes: pitch_left pitch_right. Counts: moisture load_psf, joint:<meeting>:pegs and the like.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace bentbook::screens {

/// One measure of a joint type; exactly one pointer is set.
struct JointMeasure {
  std::string name;  ///< its path in the joint's file form, "peg.diameter"
  Length* length = nullptr;
  int* count = nullptr;
  bool* flag = nullptr;
  int most = 0;  ///< of a count
};
[[nodiscard]] std::vector<JointMeasure> measures_of(JointType& type);

/// The place of a length in the plan or among the timbers; nullptr: no such key.
[[nodiscard]] Length* find_length(Book& book, std::string_view field);
[[nodiscard]] Angle* find_angle(Book& book, std::string_view field);
/// …and what stands there.
[[nodiscard]] std::optional<Length> length_at(const Book& book, std::string_view field);
[[nodiscard]] std::optional<Angle> angle_at(const Book& book, std::string_view field);
[[nodiscard]] std::optional<std::int64_t> count_at(const Book& book, std::string_view field);
void set_count(Book& book, std::string_view field, std::int64_t value);

/// Sets a length by key, overrides too: what an override does not say yet it takes from the timber as it stands in
/// `frame` (may be null). Sides that were alike stay alike when the left one is set.
void set_length(Book& book, std::string_view field, Length value, const Frame* frame);
/// The override of a timber, with section and wood as they are where it does not set them apart.
[[nodiscard]] Override filled_override(const Book& book, std::string_view mark, const Frame* frame);
void set_slope(Book& book, std::string_view field, const Slope& value);
[[nodiscard]] const Slope& slope_of(const FramePlan& plan, std::string_view field);

/// "bay:3" → "bay", "3". Without a colon the second part is empty.
[[nodiscard]] std::pair<std::string_view, std::string_view> split_key(std::string_view field);

}  // namespace bentbook::screens
