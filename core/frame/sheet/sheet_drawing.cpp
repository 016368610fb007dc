#include "frame/sheet/sheet_drawing.h"

#include <algorithm>

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

constexpr double kOffSquareLeast = 1e-7;

bool within(double x, double from, double to) { return x >= from - 1e-9 && x <= to + 1e-9; }

/// Draws what lies on a stretch of one timber.
class Unroller {
 public:
  Unroller(const Timber& timber, const Sheet& sheet, double from, double to)
      : timber_(timber), sheet_(sheet), from_(from), to_(to) {}

  void faces() {
    for (const Face face : kFaces) {
      area(face, kept_face(timber_, face), Stroke::kVisible, Fill::kNone);
      for (const auto& waste : waste_on_face(timber_, face)) area(face, waste, Stroke::kThin, Fill::kWaste);
    }
  }

  void recesses() {
    for (const RecessMarks& recess : sheet_.marks.recesses) {
      for (const RecessOnFace& on : recess.faces) {
        if (recess.diameter > 0 && on.face == recess.face)
          hole(recess, on.face);
        else
          area(on.face, on.outline, Stroke::kVisible, Fill::kWaste);
      }
    }
  }

  void mates() {
    for (const MateOutline& mate : sheet_.mates) area(mate.face, mate.outline, Stroke::kHidden, Fill::kNone);
  }

  void cut_lines() {
    for (const CutMarks& cut : sheet_.marks.cuts)
      for (const LineMark& line : cut.lines) stroke(line, Stroke::kCut);
  }

  void note(Face face, Vec2 at, SheetFigure figure, Meaning meaning) {
    if (!within(at.x, from_, to_)) return;
    out_.drawing.notes.push_back({unrolled(face, at, timber_.sides), figure.key, meaning});
    out_.figures.push_back(std::move(figure));
  }

  void overall() {
    const double bottom = -2 * (timber_.sides.y_hi - timber_.sides.y_lo + timber_.sides.z_hi - timber_.sides.z_lo);
    out_.drawing.dimensions.push_back({{0, bottom}, {timber_.length, bottom}, -1, {1, 0}, "overall", Meaning::kAnswer});
    out_.figures.push_back({"overall", SheetFigure::Kind::kLength, Length::from_inches(timber_.length), {}, 0});
  }

  /// From the square line at the mark's low end to the line itself.
  void angle(const LineMark& line, std::string key) {
    if (libm::fabs(line.off_square) < kOffSquareLeast || !within(line.a.x, from_, to_)) return;
    const Point vertex = unrolled(line.face, line.a, timber_.sides), far = unrolled(line.face, line.b, timber_.sides);
    const double square = far.y > vertex.y ? 90 : -90;
    const double own = libm::atan2(far.y - vertex.y, far.x - vertex.x) * 180 / libm::kPi;
    out_.drawing.angles.push_back({vertex, std::min(square, own), std::max(square, own), 2, key, Meaning::kAnswer});
    out_.figures.push_back(
        {std::move(key), SheetFigure::Kind::kAngle, {}, Angle::from_radians(libm::fabs(line.off_square)), 0});
  }

  SheetDrawing take() { return std::move(out_); }

 private:
  void area(Face face, const std::vector<Vec2>& outline, Stroke stroke, Fill fill) {
    const std::vector<Vec2> seen = clipped_to(outline, from_, to_);
    if (seen.empty()) return;
    draw::Polygon polygon;
    for (const Vec2& p : seen) polygon.points.push_back(unrolled(face, p, timber_.sides));
    polygon.stroke = stroke;
    polygon.fill = fill;
    out_.drawing.polygons.push_back(std::move(polygon));
  }

  void hole(const RecessMarks& recess, Face face) {
    const FaceFrame frame = frame_of(face, timber_.sides);
    const Vec2 centre{recess.outline[0].x, recess.outline[0].y + frame.lo};
    if (!within(centre.x, from_, to_)) return;
    const Point at = unrolled(face, centre, timber_.sides);
    const double r = recess.diameter / 2, arm = r * 1.5;
    out_.drawing.arcs.push_back({at, r, 0, 360, Stroke::kVisible});
    out_.drawing.lines.push_back({{at.x - arm, at.y}, {at.x + arm, at.y}, Stroke::kCentre});
    out_.drawing.lines.push_back({{at.x, at.y - arm}, {at.x, at.y + arm}, Stroke::kCentre});
  }

  void stroke(const LineMark& line, Stroke stroke) {
    Vec2 a = line.a, b = line.b;
    if (!within(a.x, from_, to_) && !within(b.x, from_, to_)) return;
    const auto bring_in = [&](Vec2& p, const Vec2& other) {
      const double x = std::clamp(p.x, from_, to_);
      if (x != p.x) p = {x, p.y + (x - p.x) / (other.x - p.x) * (other.y - p.y)};
    };
    bring_in(a, b);
    bring_in(b, a);
    out_.drawing.lines.push_back(
        {unrolled(line.face, a, timber_.sides), unrolled(line.face, b, timber_.sides), stroke});
  }

  const Timber& timber_;
  const Sheet& sheet_;
  double from_, to_;
  SheetDrawing out_;
};

SheetFigure length_figure(std::string key, double inches) {
  return {std::move(key), SheetFigure::Kind::kLength, Length::from_inches(inches), {}, 0};
}

std::string digits(int n) { return std::to_string(n); }

/// The first line of a step: where its number stands.
const LineMark* first_line(const Sheet& sheet, const BenchStep& step) {
  if (step.work == WorkOn::kEndCut) {
    for (const CutMarks& cut : sheet.marks.cuts)
      if (cut.cut == step.index && !cut.lines.empty()) return &cut.lines.front();
    return nullptr;
  }
  for (const RecessMarks& recess : sheet.marks.recesses) {
    if (recess.feature != step.index) continue;
    for (const RecessOnFace& on : recess.faces)
      if (!on.lines.empty()) return &on.lines.front();
  }
  return nullptr;
}

void arris_notes(Unroller& out, const Timber& timber, const CutMarks& cut) {
  for (int arris = 1; arris <= 4; ++arris) {
    const auto i = static_cast<unsigned>(arris - 1);
    if (!cut.on_wood[i]) continue;
    const Face face = kFaces[i];  // the face that the arris opens
    const Vec2 at = arris_at(arris, timber.sides);
    const double across = frame_of(face, timber.sides).flat ? at.x : at.y;
    out.note(face, {cut.stations[i], across},
             length_figure("arris_" + digits(arris) + "_cut_" + digits(cut.cut), cut.stations[i]), Meaning::kAnswer);
  }
}

void line_notes(Unroller& out, const RecessMarks& recess) {
  for (const RecessOnFace& on : recess.faces) {
    if (recess.diameter > 0) {
      if (on.face == recess.face) {
        const Vec2 centre = recess.outline[0];
        out.note(
            on.face, on.outline.front(),
            length_figure("line_" + digits(recess.pocket) + "_" + digits(static_cast<int>(on.face)) + "_0", centre.x),
            Meaning::kAnswer);
      }
      continue;
    }
    int n = 0;
    for (const LineMark& line : on.lines)
      out.note(
          on.face, line.a,
          length_figure("line_" + digits(recess.pocket) + "_" + digits(static_cast<int>(on.face)) + "_" + digits(n++),
                        line.a.x),
          Meaning::kAnswer);
  }
}

}  // namespace

draw::Point unrolled(Face face, Vec2 p, const Sides& s) {
  const double breadth = s.y_hi - s.y_lo, depth = s.z_hi - s.z_lo;
  switch (face) {
    case Face::kTop:
      return {p.x, p.y - s.y_hi};
    case Face::kNear:
      return {p.x, -breadth - (s.z_hi - p.y)};
    case Face::kBottom:
      return {p.x, -breadth - depth - (p.y - s.y_lo)};
    case Face::kFar:
      return {p.x, -2 * breadth - depth - (p.y - s.z_lo)};
  }
  return {};
}

SheetDrawing whole_drawing(const Timber& timber, const Sheet& sheet) {
  Unroller out(timber, sheet, 0, timber.length);
  out.faces();
  out.recesses();
  out.mates();
  out.cut_lines();
  out.overall();
  int number = 0;
  for (const BenchStep& step : sheet.steps) {
    ++number;
    if (const LineMark* line = first_line(sheet, step))
      out.note(line->face, line->a, {"step_" + digits(number), SheetFigure::Kind::kNumber, {}, {}, number},
               Meaning::kFact);
  }
  for (const MateOutline& mate : sheet.mates) {
    // A joint that lands in two patches on one face is named at the first.
    const auto same = [&](const MateOutline& m) { return m.joint == mate.joint && m.face == mate.face; };
    if (&*std::find_if(sheet.mates.begin(), sheet.mates.end(), same) != &mate) continue;
    out.note(mate.face, mate.outline.front(),
             {"mate_" + digits(mate.joint) + "_" + digits(static_cast<int>(mate.face)),
              SheetFigure::Kind::kMate,
              {},
              {},
              mate.mate},
             Meaning::kFact);
  }
  return out.take();
}

SheetDrawing stretch_drawing(const Timber& timber, const Sheet& sheet, double from, double to) {
  Unroller out(timber, sheet, from, to);
  out.faces();
  out.recesses();
  out.mates();
  out.cut_lines();
  for (const CutMarks& cut : sheet.marks.cuts) {
    arris_notes(out, timber, cut);
    for (const LineMark& line : cut.lines)
      out.angle(line, "angle_" + digits(cut.cut) + "_" + digits(static_cast<int>(line.face)));
  }
  for (const RecessMarks& recess : sheet.marks.recesses) line_notes(out, recess);
  return out.take();
}

const SheetFigure* find_figure(const SheetDrawing& drawing, std::string_view key) {
  for (const SheetFigure& figure : drawing.figures)
    if (figure.key == key) return &figure;
  return nullptr;
}

}  // namespace bentbook
