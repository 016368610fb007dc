#include "command/json/frame_json_parts.h"

#include "frame/facts.h"
#include "frame/joints/joint_table.h"

namespace bentbook::frame_json {
namespace {

constexpr std::array<std::string_view, 4> kWaste = {"a", "b", "low", "high"};
constexpr std::array<std::string_view, 3> kAxis = {"x", "y", "z"};

void section_in(JsonOut& out, std::string_view key, const Section& section) {
  const double sizes[] = {section.breadth.in(), section.depth.in()};
  out.numbers(key, sizes);
}

std::string plain_inches(Length value) { return without_trailing_zeros(print_fixed(value.in(), 4)); }

}  // namespace

void vector(JsonOut& out, std::string_view key, Vec3 v) {
  const double list[] = {v.x, v.y, v.z};
  out.numbers(key, list, 9);
}

void points(JsonOut& out, std::string_view key, std::span<const Vec2> points) {
  out.open_list(key);
  for (const Vec2& p : points) {
    out.open_item();
    out.number("along", p.x, 9);
    out.number("across", p.y, 9);
    out.close();
  }
  out.close_list();
}

void cut_plane(JsonOut& out, const CutPlane& plane) {
  vector(out, "normal", plane.normal);
  out.number("offset_in", plane.offset, 9);
}

void pocket(JsonOut& out, const Pocket& pocket) {
  out.open_item();
  out.text("sweep", keys::word(kAxis, pocket.sweep));
  out.number("from_in", pocket.from, 9);
  out.number("to_in", pocket.to, 9);
  out.number("radius_in", pocket.radius, 9);
  points(out, "outline", {pocket.outline.begin(), pocket.outline.end()});
  out.close();
}

void feature(JsonOut& out, const Frame& frame, const Timber& timber, int self, const Feature& f) {
  out.open_item();
  out.text("kind", keys::word(keys::kFeatureKind, f.kind));
  out.count("face", static_cast<int>(f.face));
  if (f.at_end) out.text("end", keys::word(keys::kEnd, f.end));
  out.number("from_in", f.from);
  out.number("to_in", f.to);
  out.number("across_lo_in", f.across_lo);
  out.number("across_hi_in", f.across_hi);
  out.number("depth_in", f.depth);
  if (f.diameter > 0) {
    out.number("diameter_in", f.diameter);
    out.text("use", keys::word(keys::kHoleUse, f.use));
  }
  if (f.kind == FeatureKind::kSlot) out.text("open", keys::word(keys::kSlotOpen, f.open));
  if (f.joint >= 0) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(f.joint)];
    const int other = other_timber(joint, self);
    out.text("joint", row_of(joint.kind).word);
    out.text("mate", frame.timbers[static_cast<std::size_t>(other)].mark);
  }
  out.open_list("pockets");
  for (int i = f.first_pocket; i < f.first_pocket + f.pockets; ++i)
    pocket(out, timber.pockets[static_cast<std::size_t>(i)]);
  out.close_list();
  out.close();
}

void warnings(JsonOut& out, std::span<const TimberWarning> warnings, const Voice& voice) {
  out.open_list("warnings");
  for (const TimberWarning& w : warnings) {
    out.open_item();
    out.text("id", warning_key(w.id));
    out.number("value", w.value);
    out.number("limit", w.value2);
    out.number("station_in", w.station);
    out.text("text", warning_text(w, voice));
    out.close();
  }
  out.close_list();
}

void findings(JsonOut& out, const Frame& frame, const Voice& voice) {
  out.open_list("findings");
  for (const Finding& finding : frame.findings) {
    out.open_item();
    out.text("id", finding_key(finding.id));
    if (!finding.mark.empty()) out.text("mark", finding.mark);
    if (!finding.other.empty()) out.text("other", finding.other);
    out.number("value", finding.value, 3);
    out.text("text", finding_text(finding, voice));
    out.close();
  }
  out.close_list();
}

void waste(JsonOut& out, Waste waste) { out.text("waste", keys::word(kWaste, waste)); }

void head(JsonOut& out, const Timber& timber) {
  out.text("mark", timber.mark);
  out.text("kind", keys::word(keys::kTimberKind, timber.kind));
  const Section& nominal = timber.wood.nominal;
  out.text("section", plain_inches(nominal.breadth) + "x" + plain_inches(nominal.depth));
  section_in(out, "nominal_in", nominal);
  section_in(out, "design_in", timber.wood.design);
  section_in(out, "actual_in", timber.wood.actual);
  out.length("length", Length::from_inches(timber.length));
  out.flag("overridden", timber.overridden.any());
}

}  // namespace bentbook::frame_json
