#include "command/json/frame_json.h"

#include "command/json/frame_json_parts.h"
#include "frame/joints/joint_table.h"

namespace bentbook {
namespace {

using namespace frame_json;

void cuts(JsonOut& out, const Timber& timber, const LayoutMarks& marks) {
  out.open_list("cuts");
  for (const CutMarks& cut : marks.cuts) {
    const EndCut& own = timber.cuts[static_cast<std::size_t>(cut.cut)];
    out.open_item();
    out.text("end", keys::word(keys::kEnd, own.end));
    out.text("name", keys::word(keys::kEndCut, own.name));
    waste(out, cut.waste);
    cut_plane(out, own.plane);
    out.numbers("stations_in", cut.stations, 9);
    out.close();
  }
  out.close_list();
}

void contacts(JsonOut& out, const Frame& frame, std::span<const int> joints, int self) {
  out.open_list("contacts");
  for (const int j : joints) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(j)];
    const bool member = joint.member == self;
    out.open_item();
    out.text("mark", frame.timbers[static_cast<std::size_t>(member ? joint.receiver : joint.member)].mark);
    out.text("meeting", keys::word(keys::kMeeting, joint.meeting));
    out.text("joint", row_of(joint.kind).word);
    out.text("holds", joint.carried == self ? keys::word(keys::kBearing, joint.bearing) : "carries");
    out.flag("own_end", member && !joint.crossing);
    if (member && !joint.crossing) out.text("end", keys::word(keys::kEnd, joint.end));
    vector(out, "where_in", joint.where);
    out.close();
  }
  out.close_list();
}

void placement(JsonOut& out, const Timber& timber) {
  out.flag("placed", timber.placed);
  if (!timber.placed) return;
  out.open("at");
  vector(out, "origin_in", timber.at.origin);
  vector(out, "x", timber.at.x);
  vector(out, "y", timber.at.y);
  vector(out, "z", timber.at.z);
  out.close();
}

void member(JsonOut& out, const Frame& frame, int index, std::span<const int> joints) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(index)];
  const TimberFacts facts = facts_of(timber, stock_step(out.voice()));
  out.open_item();
  head(out, timber);
  out.number("volume_in3", facts.volume, 6);
  out.number("weight_lb", facts.weight_lb, 6);
  vector(out, "cg_in", facts.cg);
  vector(out, "cg_world_in", facts.cg_world);
  out.number("board_feet", facts.board_feet, 3);
  out.length("stock", facts.stock);
  placement(out, timber);
  const Sides& s = timber.sides;
  const double sides[] = {s.y_lo, s.y_hi, s.z_lo, s.z_hi};
  out.numbers("sides_in", sides, 9);
  cuts(out, timber, layout_marks(timber));
  out.open_list("features");
  for (const Feature& f : timber.features) feature(out, frame, timber, index, f);
  out.close_list();
  contacts(out, frame, joints, index);
  warnings(out, timber.warnings, out.voice());
  out.close();
}

}  // namespace

std::string members_json(const Book& book, const Frame& frame, const Voice& voice) {
  // Joints by timber first: asking each timber for its own would take the square of their number.
  std::vector<std::vector<int>> joints(frame.timbers.size());
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    joints[static_cast<std::size_t>(frame.joints[j].member)].push_back(static_cast<int>(j));
    joints[static_cast<std::size_t>(frame.joints[j].receiver)].push_back(static_cast<int>(j));
  }
  JsonOut out(voice);
  out.text("title", book.title);
  out.open_list("members");
  for (int i = 0; i < static_cast<int>(frame.timbers.size()); ++i)
    member(out, frame, i, joints[static_cast<std::size_t>(i)]);
  out.close_list();
  const FrameTotals totals = totals_of(frame, stock_step(voice));
  out.number("weight_lb", totals.weight_lb, 3);
  out.number("board_feet", totals.board_feet, 3);
  vector(out, "cg_world_in", totals.cg);
  findings(out, frame, voice);
  return out.finish();
}

std::string check_json(const Book& book, const Frame& frame, const Voice& voice) {
  JsonOut out(voice);
  out.text("title", book.title);
  out.count("timbers", static_cast<int>(frame.timbers.size()));
  out.number("thrust_lb", frame.thrust_lb, 3);
  findings(out, frame, voice);
  out.open_list("warned");
  for (const Timber& timber : frame.timbers) {
    if (timber.warnings.empty()) continue;
    out.open_item();
    out.text("mark", timber.mark);
    warnings(out, timber.warnings, voice);
    out.close();
  }
  out.close_list();
  return out.finish();
}

}  // namespace bentbook
