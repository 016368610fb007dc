#pragma once
/// Frames with hipped ends for Catch2 tests, and what is asked of them.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <string>
#include <vector>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "frame/plan.h"
#include "words/frame_words.h"

namespace bentbook {

/// Feet; the rise in 12 is of sides and ends.
inline FramePlan hip_plan(int span, int length, int height, int rise) {
  return default_hip_plan(Length::feet(span), Length::feet(length), Length::feet(height),
                          Slope::in_12(Length::inches(rise)));
}

inline Frame framed(const FramePlan& plan) {
  auto frame = solve_frame(plan);
  INFO((frame ? std::string{} : frame.error().where));
  REQUIRE(frame);
  return *std::move(frame);
}

inline const Timber& timber_of(const Frame& frame, const std::string& mark) {
  const int i = timber_by_mark(frame, mark);
  INFO(mark);
  REQUIRE(i >= 0);
  return frame.timbers[static_cast<std::size_t>(i)];
}

inline std::vector<const Timber*> all_of(const Frame& frame, TimberKind kind) {
  std::vector<const Timber*> found;
  for (const Timber& t : frame.timbers)
    if (t.kind == kind) found.push_back(&t);
  return found;
}

inline bool found(const Frame& frame, FindingId id) {
  return std::any_of(frame.findings.begin(), frame.findings.end(), [&](const Finding& f) { return f.id == id; });
}

inline void nothing_said(const Frame& frame) {
  for (const Timber& t : frame.timbers) {
    CAPTURE(t.mark);
    for (const TimberWarning& w : t.warnings) FAIL_CHECK(warning_text(w, {}));
  }
  for (const Finding& f : frame.findings)
    if (f.id != FindingId::kNotEngineered) FAIL_CHECK(finding_text(f, {}));
}

}  // namespace bentbook
