#include "command/roofs/rafter_answers.h"

#include <iterator>

#include "command/json/json_out.h"

namespace bentbook {
namespace {

constexpr std::string_view kMarkIds[] = {"beam_plumb", "beam_seat", "seat_end", "wall_line", "tail_level", "tail"};
constexpr std::string_view kCutIds[] = {"peak_plumb", "beam_seat",   "seat",      "heel_plumb",
                                        "tail_plumb", "tail_square", "tail_level"};
constexpr std::string_view kCautionIds[] = {
    "notch_past_sixth", "notch_past_quarter", "seat_past_plate", "steeper_than_45",
    "thrust",           "beam_seat_short",    "beam_seat_long",  "ridge_shallow"};
static_assert(std::size(kCautionIds) == static_cast<std::size_t>(CautionId::kRidgeShallow) + 1);

void json_marks(JsonOut& out, std::string_view key, const FixedList<Mark, 6>& marks, const RafterInput& input) {
  out.open_list(key);
  for (const Mark& mark : marks) {
    out.open_item();
    out.text("id", kMarkIds[static_cast<int>(mark.name)]);
    out.text("name", mark_text(mark.name, input, out.voice().language));
    out.length("from_peak", mark.from_peak);
    out.close();
  }
  out.close_list();
}

void json_peak(JsonOut& out, const RafterInput& input, const Rafter& r) {
  out.length("ridge_deduction", r.ridge_deduction);
  out.length("peak_height", r.peak_height);
  out.length("rafter_top", r.rafter_top);
  out.length("peak_setback", r.peak_setback);
  if (input.peak == PeakKind::kRidgeBoard) out.length("ridge_board_top", r.ridge_top);
  if (input.peak != PeakKind::kOverBeam) return;
  out.length("ridge_beam_top", r.ridge_top);
  out.length("ridge_seat", r.beam_seat);
  out.length("beam_notch_depth", r.beam_notch_depth);
  out.number("beam_notch_share", r.beam_notch_share);
}

void json_foot(JsonOut& out, const Rafter& r) {
  out.length("seat", r.seat);
  out.length("heel_height", r.heel);
  out.length("birdsmouth_depth", r.birdsmouth_depth);
  out.number("birdsmouth_share", r.birdsmouth_share);
  out.number("share_left", r.share_left);
  out.length("plumb_depth", r.plumb_depth);
  out.length("plate_height", r.plate_height);
  out.length("overhang", r.overhang);
  out.length("tail_along", r.tail_along);
  out.length("sheathing_plumb", r.sheathing_plumb);
}

void json_steps(JsonOut& out, const Rafter& r) {
  out.count("steps", r.steps);
  out.length("step_odd", r.step_odd);
  out.length("step_length", r.step_length);
  out.count("tail_steps", r.tail_steps);
  out.length("tail_step_odd", r.tail_step_odd);
}

void json_cautions(JsonOut& out, const RafterPair& pair, const Rafter& r) {
  out.open_list("cautions");
  for (const Caution& c : r.cautions) {
    out.open_item();
    out.text("id", kCautionIds[static_cast<int>(c.id)]);
    out.flag("at_beam", c.at_beam);
    out.text("text", caution_text(c, pair, out.voice()));
    out.close();
  }
  out.close_list();
}

void json_side(JsonOut& out, const RafterInput& input, const RafterPair& pair, const Rafter& r) {
  out.degrees("slope", r.slope);
  out.degrees("complement", Angle::degrees(90) - r.slope);
  out.number("pitch_in_12", 12 * r.tan);
  out.length("run", r.run);
  out.length("rise", r.rise);
  out.length("line_length", r.line_length);
  out.length("tip_to_tip", r.tip_to_tip);
  out.length("longest", r.longest);
  out.length("stock", r.stock);
  json_peak(out, input, r);
  json_foot(out, r);
  json_steps(out, r);
  json_marks(out, "marks_top_in", r.marks_top, input);
  json_marks(out, "marks_bottom_in", r.marks_bottom, input);
  out.open_list("cuts");
  for (const CutAngle& cut : r.cuts) {
    out.open_item();
    out.text("id", kCutIds[static_cast<int>(cut.name)]);
    out.text("name", cut_text(cut.name, out.voice().language));
    out.degrees("off_square", cut.off_square);
    out.close();
  }
  out.close_list();
  json_cautions(out, pair, r);
}

struct Lines {
  const RafterInput& input;
  const Voice& voice;
  std::string out;
  void length(std::string_view key, Length value) {
    out += told(field_name(key, voice.language), say_length(value, voice));
  }
  void marks(std::string_view title, const FixedList<Mark, 6>& list) {
    out += std::string(title) + "\n";
    for (const Mark& m : list)
      out += "  " + told(mark_text(m.name, input, voice.language), say_length(m.from_peak, voice));
  }
};

void text_side(Lines& lines, const RafterPair& pair, const Rafter& r) {
  const Voice& voice = lines.voice;
  for (const CutAngle& cut : r.cuts)
    lines.out += told(cut_text(cut.name, voice.language), say_angle(cut.off_square, voice, 2));
  lines.length("line_length", r.line_length);
  if (r.ridge_deduction > Length{}) lines.length("ridge_deduction", r.ridge_deduction);
  lines.length("tip_to_tip", r.tip_to_tip);
  lines.length("longest", r.longest);
  lines.length("stock", r.stock);
  lines.marks(text(Msg::kMarksTop, voice.language), r.marks_top);
  lines.marks(text(Msg::kMarksBottom, voice.language), r.marks_bottom);
  lines.length("peak_setback", r.peak_setback);
  lines.length("run", r.run);
  lines.length("rise", r.rise);
  lines.length("seat", r.seat);
  lines.length("heel", r.heel);
  lines.length("birdsmouth_depth", r.birdsmouth_depth);
  lines.out += told(field_name("above_mouth", voice.language), print_fixed(100 * r.share_left, 1) + " %");
  lines.length("plumb_depth", r.plumb_depth);
  lines.length("peak_height", r.peak_height);
  if (lines.input.peak != PeakKind::kAgainstEachOther)
    lines.length(lines.input.peak == PeakKind::kOverBeam ? "ridge_beam_top" : "ridge_top", r.ridge_top);
  if (r.sheathing_plumb > Length{}) lines.length("sheathing_plumb", r.sheathing_plumb);
  lines.out +=
      told(field_name("steps", voice.language), std::to_string(r.steps) + " + " + say_length(r.step_odd, voice));
  for (const Caution& c : r.cautions) lines.out += "! " + caution_text(c, pair, voice) + "\n";
}

}  // namespace

std::string rafter_json(const RafterInput& input, const RafterPair& pair, const Voice& voice) {
  JsonOut out(voice);
  out.length("span", pair.span);
  out.length("ridge_off_centre", pair.ridge_off_centre);
  if (input.feet == Feet::kLoose) out.number("thrust_lb", pair.thrust_lb, 3);
  json_side(out, input, pair, pair.left);
  if (!pair.alike) {
    out.open("right");
    json_side(out, input, pair, pair.right);
    out.close();
  }
  return out.finish();
}

std::string rafter_text(const RafterInput& input, const RafterPair& pair, const Voice& voice) {
  Lines lines{input, voice, {}};
  if (!pair.alike) {
    lines.length("ridge_off_centre", pair.ridge_off_centre);
    lines.out += std::string(text(Msg::kSideLeft, voice.language)) + "\n";
  }
  text_side(lines, pair, pair.left);
  if (!pair.alike) {
    lines.out += std::string(text(Msg::kSideRight, voice.language)) + "\n";
    text_side(lines, pair, pair.right);
  }
  return lines.out;
}

}  // namespace bentbook
