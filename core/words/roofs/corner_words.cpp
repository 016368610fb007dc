#include "words/roofs/corner_words.h"

#include <string>

#include "roof/square_drawing.h"

namespace bentbook {
namespace {

struct GivenLength {
  std::string_view key;
  Length CornerInput::*at;
};
constexpr GivenLength kGivenLengths[] = {
    {"run", &CornerInput::run},
    {"hip_breadth", &CornerInput::hip_breadth},
    {"hip_depth", &CornerInput::hip_depth},
    {"jack_breadth", &CornerInput::jack_breadth},
    {"jack_depth", &CornerInput::jack_depth},
    {"ridge", &CornerInput::ridge},
    {"overhang", &CornerInput::overhang},
    {"spacing", &CornerInput::spacing},
};

struct AnswerLength {
  std::string_view key;
  Length RoofCorner::*at;
};
constexpr AnswerLength kAnswerLengths[] = {
    {"hip_run", &RoofCorner::run},   {"rise", &RoofCorner::rise},     {"hip_length", &RoofCorner::length},
    {"to_cut", &RoofCorner::to_cut}, {"hip_tail", &RoofCorner::tail}, {"hip_heel", &RoofCorner::heel},
    {"hip_seat", &RoofCorner::seat}, {"drop", &RoofCorner::drop},     {"shift", &RoofCorner::shift},
};

FigureText roof_figure(std::string_view stem, const CornerInput& input, const CornerRoof& roof, const Voice& voice) {
  const auto angle = [&](Angle value) { return FigureText{say_angle(value, voice), field_name(stem, voice.language)}; };
  if (stem == "plan") return angle(roof.plan);
  if (stem == "backing") {
    FigureText out = angle(roof.backing);
    if (input.kind == CornerKind::kValley) out.name = field_name("trough", voice.language);
    return out;
  }
  if (stem == "jack_difference") return {say_length(roof.jack_difference, voice), field_name(stem, voice.language)};
  return {};
}

}  // namespace

std::string_view corner_roof_text(int roof, Language language) {
  return text(roof == 0 ? Msg::kCornerFirst : Msg::kCornerOther, language);
}

std::string_view corner_kind_text(CornerKind kind, Language language) {
  return text(kind == CornerKind::kHip ? Msg::kCornerHip : Msg::kCornerValley, language);
}

std::string_view corner_cut_text(CornerCutName name, Language language) {
  constexpr Msg kNames[] = {Msg::kCornerCutPeak,        Msg::kCornerCutFoot,        Msg::kCornerCutJack,
                            Msg::kCornerCutPurlin,      Msg::kCornerCutPurlinPlumb, Msg::kCornerCutFascia,
                            Msg::kCornerCutFasciaPlumb, Msg::kCornerCutBoards};
  return text(kNames[static_cast<std::size_t>(name)], language);
}

std::string corner_caution_text(const CornerCaution& caution, const Voice& voice) {
  Msg msg = Msg::kCornerRisesAway;
  if (caution.id == CornerCautionId::kHipShallow) msg = Msg::kCornerShallow;
  if (caution.id == CornerCautionId::kHipHigh) msg = Msg::kCornerHigh;
  if (caution.id == CornerCautionId::kNotchPastQuarter) msg = Msg::kCautionNotchQuarter;
  return say(msg, voice.language,
             {{"roof", corner_roof_text(caution.roof, voice.language)},
              {"length", say_length_at_least(caution.length, voice)},
              {"share", print_fixed(100 * caution.share, 0) + " %"}});
}

std::string on_square_text(Angle off_square, const Voice& voice) {
  const OnSquare square = on_square(off_square);
  if (square.number == Length{} && !square.along_12) return std::string(text(Msg::kCornerSquareAcross, voice.language));
  const bool metric = is_metric(voice.lengths.form);
  const std::string whole = metric ? "300" : "12";
  const Length on_leg = Length::from_inches(square.number.in() * square_run(metric).in() / 12);
  const std::string number = say_length(on_leg, voice);
  return say(Msg::kCornerSquare, voice.language,
             {{"whole", whole},
              {"number", number},
              {"leg", square.along_12 ? whole : print_length(on_leg, voice.lengths, voice.marks).text}});
}

std::string hold_square_text(const CornerInput& input, const RoofCorner& corner, const Voice& voice) {
  constexpr Length kBody = Length::inches(24), kTongue = Length::inches(16);
  const double leg = square_run(is_metric(voice.lengths.form)).in();
  Length run = Length::from_inches(corner.square_run.in() * leg / 12),
         rise = Length::from_inches(leg * input.pitch.tan());
  while (run > kBody || rise > kTongue) run.count /= 2, rise.count /= 2;
  const Voice on_square = square_voice(voice);
  return say(Msg::kSquareHow, voice.language,
             {{"run", say_length(run, on_square)}, {"rise", say_length(rise, on_square)}});
}

std::string drop_text(const CornerInput& input, const RoofCorner& corner, const Voice& voice) {
  if (input.kind == CornerKind::kValley) return std::string(text(Msg::kCornerValleyDrop, voice.language));
  if (input.backed || corner.shift == Length{}) return {};
  return say(Msg::kCornerShift, voice.language,
             {{"shift", say_length(corner.shift, voice)},
              {"roof", corner_roof_text(corner.shift_to, voice.language)},
              {"drop", say_length(corner.drop, voice)}});
}

FigureText corner_figure(std::string_view key, const CornerInput& input, const RoofCorner& corner, const Voice& voice) {
  const Language language = voice.language;
  if (key == "eave_angle") return {say_angle(input.eave_angle, voice), field_name(key, language)};
  if (key == "pitch" || key == "pitch_other") {
    const Slope& pitch = key == "pitch" ? input.pitch : input.pitch_other;
    return {print_slope(pitch, voice.marks), field_name(key, language)};
  }
  if (key == "hip_slope") return {say_angle(corner.slope, voice), field_name(key, language)};
  for (const GivenLength& one : kGivenLengths)
    if (one.key == key) return {say_length(input.*one.at, voice), field_name(key, language)};
  for (const AnswerLength& one : kAnswerLengths)
    if (one.key == key) return {say_length(corner.*one.at, voice), field_name(key, language)};
  const bool other = key.ends_with("_other");
  FigureText out = roof_figure(other ? key.substr(0, key.size() - 6) : key, input, corner.roof(other ? 1 : 0), voice);
  if (other && !out.name.empty()) out.name = say(Msg::kCornerOfOther, language, out.name);
  return out;
}

FigureText corner_cut_figure(std::string_view key, const CornerCut& cut, const Voice& voice) {
  const Language language = voice.language;
  if (key == "from_length")
    return {say_angle(cut_line(cut, first_face(cut.name)).from_length, voice),
            std::string(text(Msg::kCornerOnTop, language))};
  if (key == "off_square")
    return {say_angle(cut_line(cut, Face::kNear).off_square, voice), std::string(text(Msg::kCornerOnSide, language))};
  if (key.starts_with("arris_"))
    return {say_length(arris_marks(cut)[static_cast<std::size_t>(key.back() - '0')], voice),
            field_name("arris", language)};
  const Msg face = key == "face_top"      ? Msg::kCornerFaceTop
                   : key == "face_side"   ? Msg::kCornerFaceSide
                   : key == "face_bottom" ? Msg::kCornerFaceBottom
                                          : Msg::kCornerFaceFar;
  return {std::string(text(face, language)), std::string(text(face, language))};
}

}  // namespace bentbook
