#include "words/words.h"

namespace bentbook {
namespace {

/// Smallest step that the style shows, in counts of Length.
std::int64_t step_of(const LengthStyle& style) {
  const auto tenth = [](std::int64_t unit, int decimals) {
    for (int i = 0; i < decimals && unit % 10 == 0; ++i) unit /= 10;
    return unit;
  };
  switch (style.form) {
    case LengthForm::kFeetInches:
    case LengthForm::kInchFraction:
      return Length::kPerInch / (style.denominator > 0 ? style.denominator : 16);
    case LengthForm::kDecimalInch:
      return tenth(Length::kPerInch, style.decimals);
    case LengthForm::kMm:
      return tenth(Length::kPerMm, style.decimals > 0 ? 1 : 0);
    case LengthForm::kMetre:
      return tenth(1000 * Length::kPerMm, style.decimals);
  }
  return 1;
}

std::string share_text(double share) { return print_fixed(100 * share, 0) + " %"; }

/// A bird's mouth has a plumb cut only where there is a seat and a tail.
bool has_mouth_plumb(const RafterInput& input) {
  const RafterSide& side = input.left;
  return side.overhang > Length{} && (side.heel_by == HeelBy::kHeel || side.seat > Length{});
}

std::string plain_length(Length value, const Voice& voice) {
  return print_length(value, voice.lengths, voice.marks).text;
}

}  // namespace

Voice square_voice(Voice voice) {
  if (voice.lengths.form == LengthForm::kFeetInches) voice.lengths.form = LengthForm::kInchFraction;
  return voice;
}

std::string say_length(Length value, const Voice& voice) {
  const Printed printed = print_length(value, voice.lengths, voice.marks);
  if (!printed.rounded) return printed.text;
  return (voice.marks == Marks::kAscii ? "~ " : "≈ ") + printed.text;
}

std::string say_length_at_most(Length value, const Voice& voice) {
  const std::int64_t step = step_of(voice.lengths);
  const std::int64_t rest = value.count % step;
  return plain_length({value.count - (rest < 0 ? rest + step : rest)}, voice);
}

std::string say_length_at_least(Length value, const Voice& voice) {
  const std::int64_t step = step_of(voice.lengths);
  const std::int64_t rest = value.count % step;
  return plain_length({value.count + (rest > 0 ? step - rest : -rest)}, voice);
}

std::string say_weight(double lb, const Voice& voice) { return print_weight(Weight::from_lb(lb), voice.lengths.form); }

std::string say_kept(double value, KeptIn kept, const Voice& voice) {
  const EntryStep step = entry_step(kept, voice.lengths.form);
  std::string number = steps_text(steps_of(value, step), step);
  const bool metric = is_metric(voice.lengths.form);
  switch (kept) {
    case KeptIn::kPlain:
      return number;
    case KeptIn::kPsf:
      return say(metric ? Msg::kUnitKpa : Msg::kUnitPsf, voice.language, number);
    case KeptIn::kMph:
      break;
  }
  if (!metric) return say(Msg::kUnitMph, voice.language, number);
  return say(Msg::kUnitMs, voice.language, {{"ms", number}, {"kmh", print_fixed(value * kKmhPerMph, 0)}});
}

std::string say_wood(double board_feet, const Voice& voice) {
  if (!is_metric(voice.lengths.form)) return say(Msg::kUnitBoardFeet, voice.language, print_fixed(board_feet, 0));
  return print_fixed(board_feet * kCubicMetresPerBoardFoot, 3) + " m³";
}

std::string say_reading(Angle reading, const Voice& voice) {
  int decimals = 0;
  for (std::int64_t unit = Angle::kPerDegree; decimals < 3 && reading.nano_degrees % unit != 0; unit /= 10) ++decimals;
  return say_angle(reading, voice, decimals);
}

std::string say_cost(Length cost, const Voice& voice) {
  const bool metric = is_metric(voice.lengths.form);
  const LengthStyle fine{metric ? LengthForm::kMm : LengthForm::kDecimalInch, 16, metric ? 1 : 3};
  return print_length(cost, fine, voice.marks).text;
}

std::string say_missed(const Graduation& at, const Voice& voice) {
  const LengthForm form = voice.lengths.form;
  const bool metric = is_metric(form), decimal = form == LengthForm::kDecimalInch;
  const LengthStyle fine{metric ? LengthForm::kMm : decimal ? form : LengthForm::kInchFraction, 64, metric ? 1 : 3};
  const Length finest = metric ? Length{Length::kPerMm / 10} : Length::inches(1, 64);
  if (at.arris < finest) return say(Msg::kSawWithin, voice.language, print_length(finest, fine, voice.marks).text);
  return say(at.past ? Msg::kSawPast : Msg::kSawShy, voice.language, print_length(at.arris, fine, voice.marks).text);
}

std::string say_costs(const Graduation& at, const Voice& voice) {
  return say(Msg::kSawCost, voice.language,
             {{"arris", say_cost(at.arris, voice)},
              {"gap", say_cost(at.gap, voice)},
              {"mated", say_cost(at.gap_mated, voice)}});
}

std::string say_angle(Angle value, const Voice& voice, int decimals) {
  const std::string text = print_degrees(value, decimals, voice.marks);
  return voice.marks == Marks::kAscii ? text + " deg" : text;
}

std::string field_name(std::string_view key, Language language) {
  const bool left = key.ends_with("_left"), right = key.ends_with("_right");
  const std::string_view stem = left ? key.substr(0, key.size() - 5) : right ? key.substr(0, key.size() - 6) : key;
  const auto msg = find_msg("field_" + std::string(stem));
  if (!msg) return std::string(key);
  const std::string_view name = text(*msg, language);
  return right ? say(Msg::kSideOfRight, language, name) : std::string(name);
}

std::string caution_text(const Caution& caution, const RafterPair& pair, const Voice& voice) {
  Msg msg = Msg::kCautionThrust;
  switch (caution.id) {
    case CautionId::kNotchPastSixth:
      msg = caution.at_beam ? Msg::kCautionBeamNotchSixth : Msg::kCautionNotchSixth;
      break;
    case CautionId::kNotchPastQuarter:
      msg = caution.at_beam ? Msg::kCautionBeamNotchQuarter : Msg::kCautionNotchQuarter;
      break;
    case CautionId::kSeatPastPlate:
      msg = Msg::kCautionSeatPastPlate;
      break;
    case CautionId::kRidgeShallow:
      msg = Msg::kCautionRidgeShallow;
      break;
    case CautionId::kSteeperThan45:
      msg = Msg::kCautionSteep;
      break;
    case CautionId::kThrust:
      break;
    case CautionId::kBeamSeatShort:
      msg = Msg::kCautionBeamSeatShort;
      break;
    case CautionId::kBeamSeatLong:
      msg = Msg::kCautionBeamSeatLong;
      break;
  }
  return say(msg, voice.language,
             {{"share", share_text(caution.share)},
              {"length", say_length(caution.length, voice)},
              {"force", say_weight(pair.thrust_lb, voice)}});
}

std::string_view mark_text(MarkName name, const RafterInput& input, Language language) {
  switch (name) {
    case MarkName::kBeamPlumb:
      return text(Msg::kMarkBeamPlumb, language);
    case MarkName::kBeamSeat:
      return text(Msg::kMarkBeamSeat, language);
    case MarkName::kSeatEnd:
      return text(Msg::kMarkSeatEnd, language);
    case MarkName::kWallLine:
      return text(has_mouth_plumb(input) ? Msg::kMarkWallLine : Msg::kMarkWallPlain, language);
    case MarkName::kTailLevel:
      return text(Msg::kMarkTailLevel, language);
    case MarkName::kTail:
      return text(input.tail == TailCut::kSquare ? Msg::kMarkTailSquare : Msg::kMarkTailPlumb, language);
  }
  return {};
}

std::string_view cut_text(CutName name, Language language) {
  switch (name) {
    case CutName::kPeakPlumb:
      return text(Msg::kCutPeakPlumb, language);
    case CutName::kBeamSeat:
      return text(Msg::kCutBeamSeat, language);
    case CutName::kSeat:
      return text(Msg::kCutSeat, language);
    case CutName::kHeelPlumb:
      return text(Msg::kCutHeelPlumb, language);
    case CutName::kTailPlumb:
      return text(Msg::kCutTailPlumb, language);
    case CutName::kTailSquare:
      return text(Msg::kCutTailSquare, language);
    case CutName::kTailLevel:
      return text(Msg::kCutTailLevel, language);
  }
  return {};
}

std::string pass_text(const Pass& pass, const Saw& saw, const Voice& voice) {
  Msg msg = Msg::kPassOne;
  if (saw.kind == SawKind::kHand)
    msg = Msg::kPassHand;
  else if (pass.faces == Faces::kTwo)
    msg = Msg::kPassTwo;
  else if (pass.faces == Faces::kByHand)
    msg = Msg::kPassByHand;
  else if (pass.faces == Faces::kCannot)
    msg = pass.bite == Bite::kSwing ? Msg::kPassSwing : Msg::kPassTilt;
  const bool swing = pass.bite == Bite::kSwing;
  return say(msg, voice.language,
             {{"needed", say_length_at_least(pass.needed, voice)},
              {"reach", say_length(saw.reach, voice)},
              {"left", say_length_at_least(pass.left, voice)},
              {"most", say_angle(swing ? saw.max_swing : saw.max_tilt, voice)},
              {"angle", say_angle(swing ? pass.swing : pass.tilt, voice)}});
}

}  // namespace bentbook
