#include "words/error_words.h"

#include <string>

#include "text/invisible.h"

namespace bentbook {
namespace {

bool is_angle_field(std::string_view where) {
  for (const std::string_view key : {"between", "eave_angle", "step", "max_swing", "max_tilt", "scale_error", "angle"})
    if (where == key) return true;
  return false;
}

/// A character that does not show: `limit` is its code.
bool is_invisible(const Error& error) { return error.code == ErrorCode::kUnexpected && error.limit != 0; }

std::string limit_text(const Error& error, const Voice& voice, bool least) {
  if (is_invisible(error)) return code_name(static_cast<std::uint32_t>(error.limit));
  if (is_angle_field(error.where)) return say_angle({error.limit}, voice);
  return least ? say_length_at_least({error.limit}, voice) : say_length_at_most({error.limit}, voice);
}

/// Where one place has its own sentence.
Msg message_at(const Error& error, Msg usual) {
  struct Special {
    ErrorCode code;
    std::string_view where;
    Msg msg;
  };
  static constexpr Special kSpecials[] = {
      {ErrorCode::kEmpty, "cancelled", Msg::kErrorCancelled},
      {ErrorCode::kMissing, "worker", Msg::kErrorNotLoaded},
      {ErrorCode::kEmpty, "worker", Msg::kErrorBrokeOff},
      {ErrorCode::kEmpty, "paper", Msg::kErrorNothingToPrint},
      {ErrorCode::kTooLarge, "tail_plumb", Msg::kErrorTailPlumb},
      {ErrorCode::kTooLarge, "ridge_seat", Msg::kErrorRidgeSeat},
      {ErrorCode::kTooLarge, "flip_gap", Msg::kErrorFlipGap},
      {ErrorCode::kTooSmall, "overhang_left", Msg::kErrorOverhangTail},
      {ErrorCode::kTooSmall, "overhang_right", Msg::kErrorOverhangTail},
      {ErrorCode::kImpossible, "slope_length", Msg::kErrorSlopeLength},
      {ErrorCode::kImpossible, "rise", Msg::kErrorRiseLevel},
      {ErrorCode::kImpossible, "held", Msg::kErrorHeldImpossible},
      {ErrorCode::kImpossible, "peak", Msg::kErrorCornerPeak},
      {ErrorCode::kImpossible, "pitch_other", Msg::kErrorCornerPitches},
      {ErrorCode::kConflict, "held", Msg::kErrorHeldConflict},
      {ErrorCode::kConflict, "run", Msg::kErrorRunConflict},
      {ErrorCode::kMissing, "triangle", Msg::kErrorMissingParts},
      {ErrorCode::kTooDeep, "kit", Msg::kErrorFileDeep},
      {ErrorCode::kTooDeep, "places", Msg::kErrorFileDeep},
      {ErrorCode::kTooDeep, "rafter", Msg::kErrorFileDeep},
  };
  for (const Special& s : kSpecials)
    if (s.code == error.code && s.where == error.where) return s.msg;
  return usual;
}

Msg usual_message(const Error& error) {
  const bool limit = error.limit != 0, at = error.at >= 0;
  switch (error.code) {
    case ErrorCode::kEmpty:
      return Msg::kErrorEmpty;
    case ErrorCode::kUnexpected:
      return is_invisible(error) ? Msg::kErrorInvisible : Msg::kErrorUnexpected;
    case ErrorCode::kUnknownUnit:
      return Msg::kErrorUnknownUnit;
    case ErrorCode::kUnitMismatch:
      return Msg::kErrorUnitMismatch;
    case ErrorCode::kDivisionByZero:
      return Msg::kErrorDivisionByZero;
    case ErrorCode::kOverflow:
      return Msg::kErrorOverflow;
    case ErrorCode::kUnbalanced:
      return Msg::kErrorUnbalanced;
    case ErrorCode::kTooDeep:
      return Msg::kErrorTooDeep;
    case ErrorCode::kNotPositive:
      return Msg::kErrorNotPositive;
    case ErrorCode::kNegative:
      return Msg::kErrorNegative;
    case ErrorCode::kTooLarge:
      return limit ? Msg::kErrorTooLarge : Msg::kErrorTooLargePlain;
    case ErrorCode::kTooSmall:
      return limit ? Msg::kErrorTooSmall : Msg::kErrorTooSmallPlain;
    case ErrorCode::kSteep:
      return Msg::kErrorSteep;
    case ErrorCode::kSeatTooLong:
      return Msg::kErrorSeatTooLong;
    case ErrorCode::kHeelTooLarge:
      return Msg::kErrorHeelTooLarge;
    case ErrorCode::kImpossible:
      return Msg::kErrorImpossible;
    case ErrorCode::kMissing:
      return Msg::kErrorMissing;
    case ErrorCode::kConflict:
      return Msg::kErrorConflict;
    case ErrorCode::kSyntax:
      return at ? Msg::kErrorSyntax : Msg::kErrorSyntaxPlain;
    case ErrorCode::kNewerVersion:
      return Msg::kErrorNewerVersion;
    case ErrorCode::kUnknownOption:
      return Msg::kErrorUnknownOption;
  }
  return Msg::kErrorUnexpected;
}

}  // namespace

std::string error_text(const Error& error, const Voice& voice) {
  const bool least = error.code == ErrorCode::kTooSmall || error.code == ErrorCode::kImpossible;
  return error_text(error, limit_text(error, voice, least), voice);
}

std::string error_text(const Error& error, std::string_view limit, const Voice& voice) {
  return say(message_at(error, usual_message(error)), voice.language,
             {{"field", field_name(error.where, voice.language)},
              {"limit", limit},
              {"at", std::to_string(error.code == ErrorCode::kSyntax ? error.at : error.at + 1)}});
}

}  // namespace bentbook
