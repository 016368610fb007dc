#include "frame/sheet/face_marks.h"

#include <algorithm>

#include "geometry/pocket.h"

namespace bentbook {
namespace {

constexpr double kNoLength = 1e-6;

class FaceMaker {
 public:
  FaceMaker(const Timber& timber, const Sheet& sheet, Face face)
      : timber_(timber), sheet_(sheet), frame_(frame_of(face, timber.sides)) {
    out_.face = face;
    out_.left = rolled(face);
    out_.right = rolled(rolled(rolled(face)));
    out_.length = timber.length;
    out_.width = frame_.hi - frame_.lo;
    out_.reference = is_reference(timber.wood, face);
    out_.gauge_left = is_reference(timber.wood, out_.left);
  }

  FaceMarks make() {
    for (const CutMarks& cut : sheet_.marks.cuts) end_cut(cut);
    for (const RecessMarks& recess : sheet_.marks.recesses) take(recess);
    for (FaceMark& mark : out_.marks) tidy(mark);
    for (const MateOutline& mate : sheet_.mates) land(mate);
    return std::move(out_);
  }

 private:
  /// Faces 1 and 2 have the low coordinate at the left, 3 and 4 the high one.
  [[nodiscard]] Vec2 on_page(Vec2 p) const {
    const bool low_left = out_.face == Face::kTop || out_.face == Face::kNear;
    return {p.x, low_left ? p.y - frame_.lo : frame_.hi - p.y};
  }

  [[nodiscard]] std::vector<Vec2> on_page(const std::vector<Vec2>& polygon) const {
    std::vector<Vec2> out;
    out.reserve(polygon.size());
    for (const Vec2& p : clipped_to(polygon, 0, timber_.length)) out.push_back(on_page(p));
    return out;
  }

  /// The part of a line that lies on the wood between the tips.
  void line(FaceMark& mark, const LineMark& from) const {
    Vec2 a = from.a, b = from.b;
    const auto bring_in = [&](Vec2& p, Vec2 q) {
      const double x = std::clamp(p.x, 0.0, timber_.length);
      if (x != p.x && q.x != p.x) p = {x, p.y + (x - p.x) / (q.x - p.x) * (q.y - p.y)};
    };
    const bool off = std::max(a.x, b.x) < -kNoLength || std::min(a.x, b.x) > timber_.length + kNoLength;
    if (off) return;
    bring_in(a, b);
    bring_in(b, a);
    if (libm::hypot(b.x - a.x, b.y - a.y) < kNoLength) return;
    mark.lines.push_back({on_page(a), on_page(b), libm::fabs(from.off_square), true});
  }

  FaceMark& mark_of(WorkOn work, int index) {
    for (FaceMark& mark : out_.marks)
      if (mark.work == work && mark.index == index) return mark;
    return out_.marks.emplace_back(FaceMark{work, index, {}, {}, {}, {}, {}});
  }

  void end_cut(const CutMarks& cut) {
    FaceMark mark{WorkOn::kEndCut, cut.cut, {}, {}, {}, {}, {}};
    for (const LineMark& l : cut.lines)
      if (l.face == out_.face) line(mark, l);
    if (mark.lines.empty()) return;
    const auto all = waste_on_face(timber_, out_.face);
    // One cut, one waste: what a line of this cut bounds.
    for (const auto& polygon : all)
      if (bounded_by(polygon, cut.cut)) mark.waste.push_back(on_page(polygon));
    out_.marks.push_back(std::move(mark));
  }

  /// Whether the polygon lies on the waste's side of the cut.
  [[nodiscard]] bool bounded_by(const std::vector<Vec2>& polygon, int cut) const {
    Vec2 middle;
    for (const Vec2& p : polygon) middle = {middle.x + p.x, middle.y + p.y};
    const auto n = static_cast<double>(polygon.size());
    const Vec3 p = frame_.point({middle.x / n, middle.y / n});
    const CutPlane& plane = timber_.cuts[static_cast<std::size_t>(cut)].plane;
    return dot(plane.normal, p) > plane.offset;
  }

  void take(const RecessMarks& recess) {
    const auto on = std::find_if(recess.faces.begin(), recess.faces.end(),
                                 [&](const RecessOnFace& f) { return f.face == out_.face; });
    if (on == recess.faces.end() || recess.feature < 0) return hide(recess);
    if (recess.diameter > 0) {
      const bool seen_round = recess.face == out_.face || recess.face == rolled(out_.left);
      if (!seen_round) return hide(recess);
      FaceMark& mark = mark_of(WorkOn::kFeature, recess.feature);
      const Vec2 centre = recess.outline.front();
      mark.holes.push_back({on_page(Vec2{centre.x, centre.y + frame_.lo}), recess.diameter});
      deepen(mark, recess, *on);
      return;
    }
    FaceMark& mark = mark_of(WorkOn::kFeature, recess.feature);
    for (const LineMark& l : on->lines) line(mark, l);
    if (auto waste = on_page(on->outline); waste.size() >= 3) mark.waste.push_back(std::move(waste));
    deepen(mark, recess, *on);
  }

  void deepen(FaceMark& mark, const RecessMarks& recess, const RecessOnFace& on) const {
    const std::optional<double> depth = told_depth(timber_, recess, on);
    if (depth) mark.depth = std::max(mark.depth.value_or(*depth), *depth);
  }

  /// What is cut from elsewhere: the box around it, or its own outline where it is drawn square to this face.
  void hide(const RecessMarks& recess) {
    const Box box = bounds_of(timber_.pockets[static_cast<std::size_t>(recess.pocket)]);
    const double lo = std::max(frame_.lo, frame_.flat ? box.lo.y : box.lo.z);
    const double hi = std::min(frame_.hi, frame_.flat ? box.hi.y : box.hi.z);
    const double from = std::max(0.0, box.lo.x), to = std::min(timber_.length, box.hi.x);
    if (hi <= lo + kNoLength || to <= from + kNoLength) return;
    std::vector<Vec2> outline = {{from, lo}, {to, lo}, {to, hi}, {from, hi}};
    const bool square_to_it = recess.face == out_.face || recess.face == rolled(out_.left);
    if (square_to_it && !recess.on_end && recess.diameter == 0) {
      outline.clear();
      for (const Vec2& p : recess.outline) outline.push_back({p.x, std::clamp(p.y + frame_.lo, frame_.lo, frame_.hi)});
    }
    if (auto page = on_page(outline); page.size() >= 3) out_.hidden.push_back(std::move(page));
  }

  void tidy(FaceMark& mark) const {
    for (const FaceLine& l : mark.lines)
      if (libm::fabs(l.a.y - l.b.y) < kNoLength) mark.gauges.push_back(out_.gauge(l.a.y));
    std::sort(mark.gauges.begin(), mark.gauges.end());
    const auto same = [](double a, double b) { return libm::fabs(a - b) < 1e-4; };
    mark.gauges.erase(std::unique(mark.gauges.begin(), mark.gauges.end(), same), mark.gauges.end());
  }

  /// A joint that lands in two patches on one face is one landing.
  void land(const MateOutline& mate) {
    if (mate.face != out_.face) return;
    auto landing = std::find_if(out_.landings.begin(), out_.landings.end(),
                                [&](const FaceLanding& l) { return l.joint == mate.joint; });
    if (landing == out_.landings.end())
      landing = out_.landings.insert(landing, {mate.joint, mate.mate, {1e300, 1e300}, {-1e300, -1e300}});
    for (const Vec2& outside : mate.outline) {
      const Vec2 p = on_page(Vec2{std::clamp(outside.x, 0.0, timber_.length), outside.y});
      landing->low = {std::min(landing->low.x, p.x), std::min(landing->low.y, p.y)};
      landing->high = {std::max(landing->high.x, p.x), std::max(landing->high.y, p.y)};
    }
  }

  const Timber& timber_;
  const Sheet& sheet_;
  FaceFrame frame_;
  FaceMarks out_;
};

}  // namespace

FaceMarks face_marks(const Timber& timber, const Sheet& sheet, Face face) {
  return FaceMaker(timber, sheet, face).make();
}

Vec2 section_within(const Sides& sides, Face up, double side) {
  const FaceFrame frame = frame_of(up, sides);
  const double wide = frame.hi - frame.lo, high = frame.thickness;
  const double scale = side / std::max(wide, high);
  return {wide * scale, high * scale};
}

}  // namespace bentbook
