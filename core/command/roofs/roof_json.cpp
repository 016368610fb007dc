#include "command/roofs/roof_json.h"

#include <array>

#include "command/json/json_out.h"
#include "numeric/index.h"
#include "words/roofs/roof_words.h"

namespace bentbook {
namespace {

constexpr double kSquareFoot = 144;

Angle degrees_of(double radians) { return Angle::from_radians(radians); }

void put_vector(JsonOut& out, std::string_view key, Vec3 v) {
  const std::array<double, 3> values{v.x, v.y, v.z};
  out.numbers(key, values, 9);
}

void put_sides(JsonOut& out, const RoofSolution& roof, int left, int right) {
  if (left >= 0) out.text("left", plane_letters(roof, left));
  if (right >= 0) out.text("right", plane_letters(roof, right));
}

void put_plane(JsonOut& out, const RoofSolution& roof, int side) {
  const RoofPlane& plane = roof.shape.planes[at(side)];
  out.open_item();
  out.text("side", plane_letters(roof, side));
  out.flag("gable", plane.gable);
  if (!plane.gable) {
    const RoofFace& face = roof.shape.faces[at(side)];
    out.degrees("slope", degrees_of(libm::atan(plane.tan)));
    out.length("seat", Length::from_inches(plane.seat));
    out.length("heel", Length::from_inches(plane.base - plane.plate));
    out.length("tail_height", Length::from_inches(plane.eave_z));
    out.number("plan_sq_ft", face.plan_area / kSquareFoot, 3);
    out.number("slope_sq_ft", face.slope_area / kSquareFoot, 3);
    out.open_list("outline");
    for (const Vec2& p : face.outline) {
      out.open_item();
      put_vector(out, "at", {p.x, p.y, plane.height(p)});
      out.close();
    }
    out.close_list();
    if (!face.holes.empty()) {
      out.open_list("holes");
      for (const Polygon2& hole : face.holes) {
        out.open_item();
        out.open_list("outline");
        for (const Vec2& p : hole) {
          out.open_item();
          put_vector(out, "at", {p.x, p.y, plane.height(p)});
          out.close();
        }
        out.close_list();
        out.close();
      }
      out.close_list();
    }
  }
  out.close();
}

void put_dormer(JsonOut& out, const RoofPlan& plan, const RoofSolution& roof, const DormerShape& d) {
  out.open_item();
  out.text("mark", dormer_letters(d.dormer));
  out.text("kind", d.gable ? "gable" : "shed");
  out.text("side", side_letters(d.side));
  out.length("centre", plan.dormers[at(d.dormer)].centre);
  out.length("opening", Length::from_inches(opening_length(d, roof.shape.planes[at(d.side)])));
  out.length("between_trimmers", Length::from_inches(2 * d.inner));
  out.length("meets", Length::from_inches(d.meets));
  out.length("top", Length::from_inches(d.top));
  if (d.gable) out.length("ridge", Length::from_inches(ridge_length(d)));
  out.close();
}

void put_line(JsonOut& out, const RoofSolution& roof, const RoofLine& line) {
  out.open_item();
  out.text("kind", roof_line_key(line.kind));
  put_sides(out, roof, line.left, line.right);
  put_vector(out, "from", line.a);
  put_vector(out, "to", line.b);
  out.length("length", Length::from_inches(norm(line.b - line.a)));
  out.degrees("slope", degrees_of(libm::atan2(line.b.z - line.a.z, norm(flat(line.b - line.a)))));
  out.close();
}

void put_cut(JsonOut& out, const RoofSolution& roof, const RoofEndCut& cut) {
  const BladeAngles side = blade_angles(cut.plane, Face::kNear), top = blade_angles(cut.plane, Face::kTop);
  out.open_item();
  out.text("end", cut.at_b ? "b" : "a");
  out.text("name", roof_cut_key(cut.name));
  if (cut.against >= 0) out.text("against", roof.timbers[at(cut.against)].mark);
  put_vector(out, "normal", cut.plane.normal);
  out.number("offset_in", cut.plane.offset, 9);
  out.degrees("side_swing", degrees_of(side.swing));
  out.degrees("side_tilt", degrees_of(side.tilt));
  out.degrees("top_swing", degrees_of(top.swing));
  out.degrees("top_tilt", degrees_of(top.tilt));
  out.close();
}

void put_timber(JsonOut& out, const RoofSolution& roof, const RoofTimber& t) {
  out.open_item();
  out.text("mark", t.mark);
  out.text("kind", roof_timber_key(t.kind));
  put_sides(out, roof, t.left, t.right);
  out.length("breadth", t.section.breadth);
  out.length("depth", t.section.depth);
  out.length("length", Length::from_inches(t.length));
  out.length("line_length", Length::from_inches(t.line_length));
  out.length("run", Length::from_inches(t.run));
  out.length("shortening", Length::from_inches(t.shortening));
  out.degrees("slope", degrees_of(t.slope));
  if (t.drop > 0) out.length("drop", Length::from_inches(t.drop));
  if (libm::fabs(t.shift) > 1e-9) out.length("shift", Length::from_inches(t.shift));
  out.open_list("cuts");
  for (const RoofEndCut& cut : t.cuts) put_cut(out, roof, cut);
  out.close_list();
  if (!t.backing.empty()) {
    out.open_list("backing");
    for (const CutPlane& bevel : t.backing) {
      out.open_item();
      put_vector(out, "normal", bevel.normal);
      out.number("offset_in", bevel.offset, 9);
      out.degrees("backing", degrees_of(libm::atan2(libm::fabs(bevel.normal.y), bevel.normal.z)));
      out.close();
    }
    out.close_list();
  }
  if (t.seat.cut) {
    out.open("birds_mouth");
    out.length("along", Length::from_inches(t.seat.along));
    out.length("seat", Length::from_inches(t.seat.length));
    out.length("heel", Length::from_inches(t.seat.heel));
    out.length("notch", Length::from_inches(t.seat.depth));
    out.close();
  }
  put_vector(out, "origin", t.at.origin);
  put_vector(out, "x", t.at.x);
  put_vector(out, "y", t.at.y);
  put_vector(out, "z", t.at.z);
  out.close();
}

void put_finding(JsonOut& out, const RoofSolution& roof, const RoofFinding& f, const Voice& voice) {
  out.open_item();
  out.text("id", roof_finding_key(f.id));
  if (f.a >= 0) out.text("side", side_letters(f.a));
  if (f.b >= 0) out.text("other_side", side_letters(f.b));
  if (f.timber >= 0) out.text("mark", roof.timbers[at(f.timber)].mark);
  if (f.dormer >= 0) out.text("dormer", dormer_letters(f.dormer));
  if (f.other >= 0) out.text("other", roof.timbers[at(f.other)].mark);
  out.number("value", f.value, 6);
  if (f.id == RoofFindingId::kFasciaApart) {
    if (f.overhang >= 0) out.length("overhang", Length::from_inches(f.overhang));
    out.length("plate_height", Length::from_inches(f.plate));
  }
  out.text("text", roof_finding_text(f, roof, voice));
  out.close();
}

}  // namespace

std::string roof_json(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice) {
  JsonOut out(voice);
  out.open_list("planes");
  for (std::size_t i = 0; i < roof.shape.planes.size(); ++i) put_plane(out, roof, static_cast<int>(i));
  out.close_list();
  if (!roof.dormers.empty()) {
    out.open_list("dormers");
    for (const DormerShape& d : roof.dormers) put_dormer(out, plan, roof, d);
    out.close_list();
  }
  out.open_list("lines");
  for (const RoofLine& line : roof.shape.lines) put_line(out, roof, line);
  out.close_list();
  out.open_list("timbers");
  for (const RoofTimber& t : roof.timbers) put_timber(out, roof, t);
  out.close_list();
  out.open_list("findings");
  for (const RoofFinding& f : roof.findings) put_finding(out, roof, f, voice);
  out.close_list();
  return out.finish();
}

}  // namespace bentbook
