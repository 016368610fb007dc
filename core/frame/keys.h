#pragma once
/// Stable words for enumerations, in files and on the command line: never shown as they are on a screen. In the order
/// of their enumerators; words are added at the end and never change. Those of the joints stand in
/// frame/joints/joint_table.h.

#include <array>
#include <span>
#include <string_view>

#include "frame/joints/joint.h"
#include "frame/plan.h"

namespace bentbook::keys {

inline constexpr std::array<std::string_view, kTimberKinds> kTimberKind = {"sill",
                                                                           "post",
                                                                           "plate",
                                                                           "tie",
                                                                           "girt",
                                                                           "joist",
                                                                           "king_post",
                                                                           "queen_post",
                                                                           "collar",
                                                                           "ridge_beam",
                                                                           "principal_rafter",
                                                                           "common_rafter",
                                                                           "purlin",
                                                                           "brace",
                                                                           "other",
                                                                           "hip_rafter",
                                                                           "valley_rafter",
                                                                           "jack_rafter",
                                                                           "dragon_tie",
                                                                           "header"};
inline constexpr std::array<std::string_view, 12> kFeatureKind = {
    "slot", "relief", "let_in", "mortise", "housing", "tenon", "hole", "birds_mouth", "lap", "scarf", "tongue", "fork"};
inline constexpr std::array<std::string_view, 4> kSlotOpen = {"top", "bottom", "both", "blind"};
inline constexpr std::array<std::string_view, 4> kHoleUse = {"pin", "peg", "screw", "other"};
inline constexpr std::array<std::string_view, 6> kEndCut = {"square", "plumb", "level", "mitre", "side", "angle"};
inline constexpr std::array<std::string_view, 4> kDefect = {"wane", "knot", "check", "heart"};
inline constexpr std::array<std::string_view, 5> kFace = {"0", "1", "2", "3", "4"};  ///< by number; "0" is none
inline constexpr std::array<std::string_view, kMeetings> kMeeting = {
    "post_foot",    "sill_corner",   "sill_scarf",   "post_top",      "plate_scarf",  "tie_post",      "girt_post",
    "king_foot",    "king_top",      "queen_top",    "ridge_scarf",   "rafter_plate", "rafter_purlin", "rafter_peak",
    "rafter_ridge", "purlin_rafter", "purlin_scarf", "collar_rafter", "joist_tie",    "brace_end"};
inline constexpr std::array<std::string_view, 4> kBearing = {"bears_on", "hangs_from", "braces", "butts"};
inline constexpr std::array<std::string_view, 3> kRoofForm = {"gable", "lean_to", "hip"};
inline constexpr std::array<std::string_view, 2> kRoofFrame = {"commons", "principals"};
inline constexpr std::array<std::string_view, 2> kPeak = {"pair", "ridge_beam"};
inline constexpr std::array<std::string_view, 3> kOnTies = {"nothing", "king_posts", "queen_posts"};
inline constexpr std::array<std::string_view, 2> kEnd = {"a", "b"};

template <class Enum, std::size_t N>
[[nodiscard]] constexpr std::string_view word(const std::array<std::string_view, N>& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}
/// Index of a word, −1 where it is none of them.
[[nodiscard]] constexpr int index_of(std::span<const std::string_view> words, std::string_view word) {
  for (std::size_t i = 0; i < words.size(); ++i)
    if (words[i] == word) return static_cast<int>(i);
  return -1;
}

}  // namespace bentbook::keys
