#pragma once
/// The flip test: set the saw to square, cut a piece through, flip one half over and push the cut ends together.
/// A true scale closes the joint; an error opens it by gap = 2 · depth · sin(error).

#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

/// What the saw cuts more than its scale says, off square (the sign of `gap`: positive where the cut ran past square
/// the way the table swings for the cuts to come). Source: SOURCES.md, "flip test".
/// Errors: kNotPositive ("flip_depth"); kTooLarge ("flip_gap", limit: the gap of 5° — more is a setting, not an error).
[[nodiscard]] Result<Angle> scale_error_from_flip(Length gap, Length depth);

/// The gap that an error would show.
[[nodiscard]] Length flip_gap(Angle error, Length depth);

}  // namespace bentbook
