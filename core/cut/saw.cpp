#include "cut/saw.h"

#include "cut/limits.h"
#include "measure/fields.h"

namespace bentbook {
namespace {

constexpr std::string_view kSawKinds[] = {"circular", "chainsaw_bar", "hand"};
constexpr std::string_view kSquareReads[] = {"0", "90"};
constexpr AngleEntry kOffSquare{Angle{}, Angle::degrees(90)};

Result<void> between(Angle value, Angle low, Angle high, const char* where) {
  if (value < low) return fail(ErrorCode::kTooSmall, where, -1, low.nano_degrees);
  if (value > high) return fail(ErrorCode::kTooLarge, where, -1, high.nano_degrees);
  return {};
}

}  // namespace

Angle in_scale(SquareReads square_reads, Angle off_square_or_reading) {
  if (square_reads == SquareReads::kZero) return off_square_or_reading;
  return Angle::degrees(90) - off_square_or_reading;
}

Result<void> check_saw(const Saw& saw) {
  if (saw.step <= Angle{}) return fail(ErrorCode::kNotPositive, "step");
  if (saw.step > limits::kCoarsestStep)
    return fail(ErrorCode::kTooLarge, "step", -1, limits::kCoarsestStep.nano_degrees);
  if (saw.kind != SawKind::kHand && saw.reach <= Length{}) return fail(ErrorCode::kNotPositive, "reach");
  if (saw.reach.count > Length::kLimit) return fail(ErrorCode::kTooLarge, "reach", -1, Length::kLimit);
  if (auto ok = between(saw.max_swing, {}, Angle::degrees(90), "max_swing"); !ok) return ok;
  if (auto ok = between(saw.max_tilt, {}, Angle::degrees(90), "max_tilt"); !ok) return ok;
  return between(saw.scale_error, Angle{} - limits::kMostScaleError, limits::kMostScaleError, "scale_error");
}

void describe(Fields& fields, Saw& s) {
  fields.text("name", s.name);
  fields.choice("kind", s.kind, kSawKinds);
  fields.choice("square_reads", s.square_reads, kSquareReads);
  fields.angle("step", s.step, {Angle{1}, limits::kCoarsestStep});
  fields.length("reach", s.reach);
  fields.angle("max_swing", s.max_swing, kOffSquare);
  fields.angle("max_tilt", s.max_tilt, kOffSquare);
  fields.angle("scale_error", s.scale_error, {Angle{} - limits::kMostScaleError, limits::kMostScaleError});
  if (!fields.reads()) return;
  if (auto ok = check_saw(s); !ok) fields.fail(ok.error().code, ok.error().where.c_str(), ok.error().limit);
}

void describe(Fields& fields, Section& s) {
  fields.length("breadth", s.breadth);
  fields.length("depth", s.depth);
}

}  // namespace bentbook
