#pragma once
/// Inside the book: how the values of several files stand in JSON (json_io.h). Found by the reader and writer through
/// their arguments' namespace.

#include "book/json_io.h"
#include "cut/saw.h"
#include "measure/print.h"
#include "roof/rafter.h"

namespace bentbook {

namespace words {
inline constexpr std::string_view kSawKinds[] = {"circular", "chainsaw_bar", "hand"};
inline constexpr std::string_view kSquareReads[] = {"0", "90"};
inline constexpr std::string_view kLengthForms[] = {"feet_inches", "inch_fraction", "decimal_inch", "mm", "metre"};
inline constexpr std::string_view kPlanBy[] = {"span", "run", "span_and_run"};
inline constexpr std::string_view kHeld[] = {"heels_and_plates", "ridge_and_plates", "ridge_and_heels"};
inline constexpr std::string_view kRafterPeaks[] = {"against_each_other", "ridge_board", "over_beam"};
inline constexpr std::string_view kTails[] = {"plumb", "square", "level_and_plumb"};
inline constexpr std::string_view kHeelBy[] = {"seat", "heel"};
inline constexpr std::string_view kFeet[] = {"tied", "loose"};
}  // namespace words

/// A number that must lie between two others.
template <class Io>
void number_within(Io& io, const char* key, double& value, double low, double high) {
  io.number(key, value);
  if constexpr (Io::kReads)
    if (!(value >= low && value <= high)) io.fail(value < low ? ErrorCode::kTooSmall : ErrorCode::kTooLarge, key);
}

template <class Io>
void describe(Io& io, Saw& s) {
  io.text("name", s.name);
  io.choice("kind", s.kind, words::kSawKinds);
  io.choice("square_reads", s.square_reads, words::kSquareReads);
  io.angle("step", s.step);
  io.length("reach", s.reach);
  io.angle("max_swing", s.max_swing);
  io.angle("max_tilt", s.max_tilt);
  io.angle("scale_error", s.scale_error);
  if constexpr (Io::kReads)
    if (auto ok = check_saw(s); !ok) io.fail(ok.error().code, ok.error().where.c_str(), ok.error().limit);
}

template <class Io>
void describe_lengths(Io& io, LengthStyle& s) {
  io.choice("length_form", s.form, words::kLengthForms);
  io.integer("division", s.denominator, 8, 64);
  io.integer("decimals", s.decimals, 0, 6);
  if constexpr (Io::kReads) {
    const int d = s.denominator;
    if (d != 8 && d != 16 && d != 32 && d != 64) io.fail(ErrorCode::kSyntax, "division");
  }
}

template <class Io>
void describe(Io& io, Section& s) {
  io.length("breadth", s.breadth);
  io.length("depth", s.depth);
}

template <class Io>
void describe(Io& io, RafterSide& s) {
  io.slope("pitch", s.pitch);
  io.choice("heel_by", s.heel_by, words::kHeelBy);
  io.length("seat", s.seat);
  io.length("heel", s.heel);
  io.length("plate_height", s.plate_height);
  io.length("overhang", s.overhang);
  io.flag("measured", s.measured);
  io.length("measured_rise", s.measured_rise);
  io.length("measured_run", s.measured_run);
}

template <class Io>
void describe(Io& io, RafterInput& r) {
  io.choice("plan_by", r.plan_by, words::kPlanBy);
  io.length("span", r.span);
  io.length("run", r.run);
  io.flag("alike", r.alike);
  io.object("left", r.left);
  io.object("right", r.right);
  io.choice("held", r.held, words::kHeld);
  io.object("section", r.section);
  io.length("plate", r.plate_breadth);
  io.choice("peak", r.peak, words::kRafterPeaks);
  io.length("ridge", r.ridge_thickness);
  io.length("ridge_beam", r.beam_breadth);
  io.length("ridge_seat", r.beam_seat);
  io.choice("tail", r.tail, words::kTails);
  io.length("tail_plumb", r.tail_plumb);
  io.length("sheathing", r.sheathing);
  io.length("trim", r.trim);
  io.choice("feet", r.feet, words::kFeet);
  io.number("load_psf", r.load_psf);
  io.length("spacing", r.spacing);
}

}  // namespace bentbook
