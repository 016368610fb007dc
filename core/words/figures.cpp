#include "words/figures.h"

#include <string>
#include <utility>

#include "draw/pitch_mark.h"
#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

FigureText length_figure(std::string_view key, Length value, const Voice& voice) {
  return {say_length(value, voice), field_name(key, voice.language)};
}
FigureText angle_figure(std::string_view key, Angle value, const Voice& voice) {
  return {say_angle(value, voice), field_name(key, voice.language)};
}

struct SideKey {
  std::string_view stem;
  bool right = false;
};
SideKey split(std::string_view key) {
  if (key.ends_with("_right")) return {key.substr(0, key.size() - 6), true};
  if (key.ends_with("_left")) return {key.substr(0, key.size() - 5), false};
  return {key, false};
}

struct SideLength {
  std::string_view stem;
  Length Rafter::*at;
};
constexpr SideLength kSideLengths[] = {
    {"run", &Rafter::run},
    {"rise", &Rafter::rise},
    {"line_length", &Rafter::line_length},
    {"ridge_deduction", &Rafter::ridge_deduction},
    {"tip_to_tip", &Rafter::tip_to_tip},
    {"longest", &Rafter::longest},
    {"stock", &Rafter::stock},
    {"peak_setback", &Rafter::peak_setback},
    {"seat", &Rafter::seat},
    {"heel", &Rafter::heel},
    {"plate_height", &Rafter::plate_height},
    {"plumb_depth", &Rafter::plumb_depth},
    {"birdsmouth_depth", &Rafter::birdsmouth_depth},
    {"beam_seat", &Rafter::beam_seat},
    {"beam_notch_depth", &Rafter::beam_notch_depth},
    {"peak_height", &Rafter::peak_height},
    {"rafter_top", &Rafter::rafter_top},
    {"ridge_top", &Rafter::ridge_top},
    {"sheathing_plumb", &Rafter::sheathing_plumb},
    {"overhang", &Rafter::overhang},
    {"tail_along", &Rafter::tail_along},
};

/// marks_top_<i>, marks_bottom_<i>.
FigureText mark_figure(std::string_view stem, const RafterInput& input, const Rafter& rafter, const Voice& voice) {
  const auto& marks = stem.starts_with("marks_top_") ? rafter.marks_top : rafter.marks_bottom;
  const int i = stem.back() - '0';
  if (i < 0 || i >= marks.count) return {};
  return {say_length(marks[i].from_peak, voice), std::string(mark_text(marks[i].name, input, voice.language))};
}

FigureText side_figure(const SideKey& key, const RafterInput& input, const Rafter& rafter, const Voice& voice) {
  if (key.stem.starts_with("marks_")) return mark_figure(key.stem, input, rafter, voice);
  if (key.stem == "pitch") {
    const RafterSide& side = key.right && !input.alike ? input.right : input.left;
    return pitch_figure(side.pitch, voice);
  }
  if (key.stem == "in_12") return pitch_run_figure(voice);
  if (key.stem == "slope") return angle_figure("slope", rafter.slope, voice);
  if (key.stem == "ridge_top" && input.peak == PeakKind::kOverBeam)
    return length_figure("ridge_beam_top", rafter.ridge_top, voice);
  for (const SideLength& s : kSideLengths)
    if (s.stem == key.stem) return length_figure(s.stem, rafter.*s.at, voice);
  return {};
}

/// A part of the roof that has a page of its own (name_parts()).
FigureText part_figure(std::string_view key, Language language) {
  const Msg part = key == "part.peak" ? Msg::kPeakTitle : key == "part.foot" ? Msg::kFootTitle : Msg::kTailTitle;
  return {std::string(text(part, language)), std::string(text(Msg::kPartOpen, language))};
}

}  // namespace

FigureText drawn_unsigned(FigureText figure) {
  constexpr std::string_view kMinus = "\u2212";
  if (figure.text.starts_with(kMinus)) figure.drawn = figure.text.substr(kMinus.size());
  return figure;
}

FigureText pitch_figure(const Slope& pitch, const Voice& voice) {
  std::string said = print_slope(pitch, voice.marks);
  std::string rise = draw::has_triangle(pitch) ? said.substr(0, said.find(':')) : std::string{};
  return {std::move(said), field_name("pitch", voice.language), std::move(rise)};
}

FigureText pitch_run_figure(const Voice& voice) { return {"12", field_name("run", voice.language)}; }

FigureText rafter_figure(std::string_view key, const RafterInput& input, const RafterPair& pair, const Voice& voice) {
  if (key == "span") return length_figure(key, pair.span, voice);
  if (key == "run") return length_figure(key, pair.left.run, voice);
  if (key.starts_with("part.")) return part_figure(key, voice.language);
  const SideKey side = split(key);
  if (side.stem == key && is_rafter_length(key)) return length_figure(key, rafter_length(input, key), voice);
  FigureText out = side_figure(side, input, side.right ? pair.right : pair.left, voice);
  if (!pair.alike && !out.name.empty() && side.stem != key)
    out.name = say(side.right ? Msg::kSideOfRight : Msg::kSideOfLeft, voice.language, out.name);
  return out;
}

FigureText triangle_figure(std::string_view key, const TriangleInput& input, const Triangle& triangle,
                           const Voice& voice) {
  if (key == "rise") return length_figure(key, triangle.rise, voice);
  if (key == "run") return length_figure(key, triangle.run, voice);
  if (key == "slope_length") return length_figure(key, triangle.slope_length, voice);
  if (key != "slope") return {};
  if (input.given(TrianglePart::kSlope))
    return {print_slope(input.slope, voice.marks), field_name(key, voice.language)};
  return angle_figure(key, triangle.angle, voice);
}

FigureText setting_figure(std::string_view key, const Setting& setting, const Section& section, const Voice& voice) {
  if (key == "depth") return length_figure(key, section.depth, voice);
  if (key == "breadth") return length_figure(key, section.breadth, voice);
  if (key == "travel") return length_figure(key, setting.travel, voice);
  if (key == "set_to") return angle_figure(key, setting.set_to, voice);
  return {};
}

FigureText mitre_figure(std::string_view key, Angle between, Length depth_a, Length depth_b, const Mitre& mitre,
                        const Voice& voice) {
  if (key == "between") return angle_figure(key, between, voice);
  if (key == "depth_a") return length_figure(key, depth_a, voice);
  if (key == "depth_b") return length_figure(key, depth_b, voice);
  if (key == "off_square_a") return angle_figure(key, mitre.off_square_a, voice);
  if (key == "off_square_b") return angle_figure(key, mitre.off_square_b, voice);
  if (key == "line") return length_figure(key, mitre.line, voice);
  return {};
}

FigureText flip_figure(std::string_view key, Length gap, Length depth, Angle error, const Voice& voice) {
  if (key == "flip_gap") return length_figure(key, gap, voice);
  if (key == "flip_depth") return length_figure(key, depth, voice);
  if (key == "scale_error") return {say_angle(error, voice, 2), field_name(key, voice.language)};
  return {};
}

}  // namespace bentbook
