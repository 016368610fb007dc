#include "frame/roofs/hip_roof.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>

#include "frame/joints/end_joint.h"
#include "frame/limits.h"
#include "frame/roofs/hip_peaks.h"
#include "frame/roofs/roof_timbers.h"
#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

constexpr double kSame = 1e-6;  ///< inches: the same place

/// Level, from an end's wall to its peak.
double end_run(const FramePlan& plan) { return plan.span.in() / 2 * plan.pitch_left.tan() / plan.hips.pitch.tan(); }

/// The plan's field for one of the roof's.
std::string field_of(const std::string& where) {
  constexpr std::pair<std::string_view, std::string_view> kFields[] = {
      {"overhang", "eave_overhang"}, {"spacing", "rafter_spacing"}, {"plate_height", "plate_left"},
      {"heel", "hips.pitch"},        {"pitch", "hips.pitch"},       {"hip.", "hips.hip"}};
  for (const auto& [word, field] : kFields)
    if (where.find(word) != std::string::npos) return std::string(field);
  return "bays";
}

void move_roof(RoofSolution& roof, Vec3 by) {
  for (RoofTimber& t : roof.timbers) t.at.origin = t.at.origin + by;
  for (RoofContact& c : roof.contacts)
    for (Vec3& p : c.corners) p = p + by;
}

/// How a jack comes to the king post under one peak.
enum class AtKing : std::uint8_t {
  kClear,       ///< not into it
  kOnFacet,     ///< lower than the hips leave it: it gets a facet under the jack too
  kAgainstFace  ///< so low that with such a facet the hips would bear no more
};

class HipFramer {
 public:
  HipFramer(Work& work, Layout& layout) : work_(work), plan_(work.plan), l_(layout), roof_(layout.roof) {}

  void run() {
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i)
      if (roof_.timbers[i].kind == RoofTimberKind::kRidge) ridge_ = static_cast<int>(i);
    for (const RoofTimber& t : roof_.timbers) placed_.push_back(place(t));
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i) seat(roof_.timbers[i], placed_[i]);
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i)
      if (at_ridge(roof_.timbers[i])) join_ridge(roof_.timbers[i], placed_[i]);
    for (const RoofContact& contact : roof_.contacts) join(contact);
    point_king();
  }

 private:
  [[nodiscard]] double first_in() const { return l_.first_out + plan_.sections.plate.breadth.in(); }
  [[nodiscard]] double last_in() const { return l_.last_out - plan_.sections.plate.breadth.in(); }
  static HipSide side_of(const RoofTimber& t) { return static_cast<HipSide>(t.left); }
  static bool on_end(const RoofTimber& t) {
    return side_of(t) == HipSide::kFirstEnd || side_of(t) == HipSide::kLastEnd;
  }

  /// A common ends square against the ridge beam, by the joint that the plan has there.
  [[nodiscard]] bool at_ridge(const RoofTimber& t) const {
    if (ridge_ < 0 || t.kind != RoofTimberKind::kCommon || on_end(t)) return false;
    int uppers = 0;
    for (const RoofEndCut& cut : t.cuts) uppers += cut.at_b ? 1 : 0;
    return uppers == 1 && t.cuts.back().against == ridge_;
  }

  int place(const RoofTimber& t) {
    if (t.kind == RoofTimberKind::kRidge) return -1;
    if (t.kind == RoofTimberKind::kHip) {
      // Both of its sides: an end and an eave.
      const bool right = t.left == static_cast<int>(HipSide::kRight) || t.right == static_cast<int>(HipSide::kRight);
      const bool last = t.left == static_cast<int>(HipSide::kLastEnd) || t.right == static_cast<int>(HipSide::kLastEnd);
      const char line = l_.side(right).line;
      const int label = last ? l_.labels.back() : l_.labels.front();
      // In one order, so that hips that are cut alike are known to be.
      RoofTimber sorted = t;
      sort_by(sorted.cuts, [](const RoofEndCut& a, const RoofEndCut& b) {
        return a.at_b != b.at_b ? b.at_b : a.plane.normal.y < b.plane.normal.y - 1e-9;
      });
      return place_roof_timber(work_, sorted, make_mark(TimberKind::kHipRafter, line, label), {label, -1, line, 0});
    }
    if (on_end(t)) return place_in_end(t);
    const TimberKind kind = frame_kind(t.kind);
    const char line = l_.side(side_of(t) == HipSide::kRight).line;
    const double y = t.at.origin.y;
    const int bay = std::clamp(bay_at(y), 0, l_.bent_count() - 1);
    const bool over_bent = libm::fabs(l_.bents[at(bay)] - y) < kSame;
    const int number = over_bent ? 0 : 1 + before(t, [&](const RoofTimber& other) {
                                         return std::clamp(bay_at(other.at.origin.y), 0, l_.bent_count() - 1) == bay &&
                                                libm::fabs(l_.bents[at(bay)] - other.at.origin.y) >= kSame &&
                                                other.at.origin.y < y - kSame;
                                       });
    const int label = l_.labels[at(bay)];
    const bool in_bay = !over_bent && bay + 1 < l_.bent_count();
    return place_roof_timber(work_, t, make_mark(kind, line, label, number), {label, in_bay ? bay : -1, line, number},
                             at_ridge(t) ? ridge_ : -1);
  }

  /// Numbered from the left.
  int place_in_end(const RoofTimber& t) {
    const bool last = side_of(t) == HipSide::kLastEnd;
    const int label = last ? l_.labels.back() : l_.labels.front();
    const int number =
        1 + before(t, [&](const RoofTimber& other) { return other.at.origin.x < t.at.origin.x - kSame; });
    return place_roof_timber(work_, t, make_mark(frame_kind(t.kind), 0, label, number), {label, -1, 0, number});
  }

  /// How many rafters of its kind and side are said to come before it.
  template <class Before>
  [[nodiscard]] int before(const RoofTimber& t, Before&& comes_before) const {
    int count = 0;
    for (const RoofTimber& other : roof_.timbers)
      if (other.line < 0 && other.left == t.left && frame_kind(other.kind) == frame_kind(t.kind) && comes_before(other))
        ++count;
    return count;
  }

  [[nodiscard]] int bay_at(double y) const {
    int bay = -1;
    while (bay + 1 < l_.bent_count() && l_.bents[at(bay + 1)] <= y + kSame) ++bay;
    return bay;
  }

  /// A rafter's foot over the plates: an end plate lies over the ends of the wall plates, all along its own.
  void seat(const RoofTimber& t, int timber) {
    if (timber < 0 || !t.seat.cut) return;
    bool first = true;
    const Vec3 outward = t.line < 0 ? -1 * level_in(side_of(t)) : Vec3{};
    const auto over = [&](int plate, std::initializer_list<Plane> within) {
      if (plate >= 0 && seat_on_plate(work_, {t, timber, plate, outward, first, {within.begin(), within.size()}}))
        first = false;
    };
    const bool lapped = lapped_plates(plan_);
    const double broad = plan_.sections.plate.breadth.in();
    const double x_lo = l_.left.wall_x + (lapped ? 0 : broad), x_hi = l_.right.wall_x - (lapped ? 0 : broad);
    const bool has_first = lapped && l_.end_plates[0] >= 0, has_last = lapped && l_.end_plates[1] >= 0;
    const Plane past_first{-1 * kY, -(has_first ? first_in() : l_.first_out)},
        before_last{kY, has_last ? last_in() : l_.last_out};
    over(l_.end_plates[0], {{kY, first_in()}, {-1 * kX, -x_lo}, {kX, x_hi}});
    over(l_.end_plates[1], {{-1 * kY, -last_in()}, {-1 * kX, -x_lo}, {kX, x_hi}});
    for (const bool is_right : {false, true}) {
      const Run& run = is_right ? l_.plate_right : l_.plate_left;
      const Plane inner = is_right ? Plane{-1 * kX, -(l_.right.wall_x - broad)} : Plane{kX, l_.left.wall_x + broad};
      // Where two pieces are scarfed, the higher one's top begins half of the scarf before its middle.
      for (std::size_t i = 0; i < run.pieces.size(); ++i) {
        const Plane from = i == 0 ? past_first : Plane{-1 * kY, run.half_joint - run.from[i]};
        const Plane to = i + 1 == run.pieces.size() ? before_last : Plane{kY, run.from[i + 1] - run.half_joint};
        over(run.pieces[i], {past_first, before_last, inner, from, to});
      }
    }
  }

  static Vec3 level_in(HipSide side) {
    return side == HipSide::kFirstEnd  ? kY
           : side == HipSide::kLastEnd ? -1 * kY
           : side == HipSide::kLeft    ? kX
                                       : -1 * kX;
  }

  void join_ridge(const RoofTimber& t, int timber) {
    const double y = t.at.origin.y;
    const Vec3 facing = side_of(t) == HipSide::kLeft ? -1 * kX : kX;
    join_end(work_,
             {Meeting::kRafterRidge, timber, End::kB, l_.ridge.top_at(y), facing, true, 1e9, l_.ridge.joined_at(y)});
  }

  void join(const RoofContact& contact) {
    if (contact.member == ridge_ || is_cut_off(contact)) return;
    if (contact.receiver != ridge_) return join_roof_contact(work_, roof_, contact, placed_);
    if (at_ridge(roof_.timbers[at(contact.member)])) return;
    placed_[at(ridge_)] = l_.ridge.at(contact.corners.front().y);
    join_roof_contact(work_, roof_, contact, placed_);
  }

  /// The post that stands under one peak; −1: none.
  [[nodiscard]] int king_at_peak() const {
    const auto king = std::find_if(l_.king.begin(), l_.king.end(), [](int timber) { return timber >= 0; });
    return has_hip_ridge(l_) || king == l_.king.end() ? -1 : *king;
  }

  /// The king post under one peak: a facet under each hip, and what a jack needs that comes so far between them.
  void point_king() {
    const int king = king_at_peak();
    for (std::size_t i = 0; i < roof_.timbers.size() && king >= 0; ++i) {
      const RoofTimber& t = roof_.timbers[i];
      if (placed_[i] < 0) continue;
      const AtKing comes = t.kind == RoofTimberKind::kHip ? AtKing::kOnFacet : at_king(king, t);
      if (comes == AtKing::kOnFacet) bear_on_king(king, i);
      if (comes == AtKing::kAgainstFace)
        join_end(work_, {Meeting::kRafterRidge, placed_[i], End::kB, king, -1 * level_in(side_of(t)), true});
    }
  }

  /// The king post's face toward a side; past it lies the post.
  [[nodiscard]] Plane king_face(int king, HipSide side) const {
    const Timber& post = work_.frame.timbers[at(king)];
    const Vec3 in = level_in(side);
    return {in, -face_offset(post, face_toward(post, -1 * in))};
  }

  [[nodiscard]] AtKing at_king(int king, const RoofTimber& t) const {
    const Timber& post = work_.frame.timbers[at(king)];
    const Plane face = king_face(king, side_of(t));
    const Vec3 across = cross(kZ, face.normal), axis = post.at.origin;
    const double broad = face_offset(post, face_toward(post, across)) - dot(across, axis) + t.section.breadth.in() / 2;
    if (libm::fabs(dot(across, t.at.origin - axis)) > broad - kSame) return AtKing::kClear;
    const Vec3 middle = meet(axis, face.normal, face.normal, face.offset);
    const double half = t.section.depth.in() / 2;
    const auto over = [&](Vec3 place, double z) { return meet(place, kZ, t.at.z, dot(t.at.z, t.at.origin) + z); };
    if (to_local(t.at, over(middle, half)).x > t.length - kSame ||
        over(middle, -half).z > under_hips(l_, middle) - kSame)
      return AtKing::kClear;
    return over(axis, -half).z > under_one_peak(l_) + kSame ? AtKing::kOnFacet : AtKing::kAgainstFace;
  }

  /// Whether a jack's cheek lies in what the king post's face takes off it.
  [[nodiscard]] bool is_cut_off(const RoofContact& contact) const {
    const int king = king_at_peak();
    const RoofTimber& t = roof_.timbers[at(contact.member)];
    if (king < 0 || t.kind == RoofTimberKind::kHip || at_king(king, t) != AtKing::kAgainstFace) return false;
    const Plane face = king_face(king, side_of(t));
    return std::all_of(contact.corners.begin(), contact.corners.end(),
                       [&](const Vec3& p) { return dot(face.normal, p) > face.offset - kSame; });
  }

  void bear_on_king(int king, std::size_t i) {
    const RoofTimber& rafter = roof_.timbers[i];
    const double under = -rafter.section.depth.in() / 2, half = rafter.section.breadth.in() / 2;
    const Vec3 up = rafter.at.z;
    const Plane facet{up, dot(up, rafter.at.origin) + under};
    cut_end(work_, king, End::kB, EndCutName::kAngle, facet);
    Joint& joint = begin_joint(work_, Meeting::kKingTop, JointKind::kHousedButt, king, placed_[i]);
    joint.bearing = Bearing::kBearsOn;
    joint.end = End::kB;
    std::swap(joint.carried, joint.carrier);
    const Vec3 axis = work_.timber(king).at.origin;
    const double x = to_local(rafter.at, meet(axis, kZ, facet.normal, facet.offset)).x;
    const double reach = plan_.sections.king_post.breadth.in() + plan_.sections.king_post.depth.in();
    joint.where = to_world(rafter.at, {x - reach / 8, 0, under});
    const auto corner = [&](double along, double across) { return to_world(rafter.at, {x + along, across, under}); };
    add_contact(work_, true, -1 * up, {corner(-reach, -half), corner(0, -half), corner(0, half), corner(-reach, half)});
    keep_ways(work_, {kZ});
  }

  Work& work_;
  const FramePlan& plan_;
  Layout& l_;
  const RoofSolution& roof_;
  int ridge_ = -1;           ///< in the roof's timbers
  std::vector<int> placed_;  ///< by timber of the roof: index in the frame, −1 where it is taken out
};

}  // namespace

RoofPlan hip_roof_of(const FramePlan& plan) {
  RoofPlan roof = rectangle_roof(plan.span, outside_length(plan), plan.pitch_left);
  const double depth = plan.sections.common.depth.in();
  const auto& mouth = std::get<BirdsMouth>(plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]);
  roof.heel_by = HeelBy::kHeel;
  roof.heel = Length::from_inches(depth / plan.pitch_left.cos() - mouth.seat.in() * plan.pitch_left.tan());
  const bool alike = plan.hips.pitch == plan.pitch_left;
  for (std::size_t i = 0; i < roof.sides.size(); ++i) {
    const auto side = static_cast<HipSide>(i);
    const bool end = side == HipSide::kFirstEnd || side == HipSide::kLastEnd;
    roof.sides[i].plate_height = plan.plate_left;
    roof.sides[i].overhang = plan.eave_overhang;
    if (!end || alike) continue;
    roof.sides[i].pitch = plan.hips.pitch;
    roof.sides[i].overhang =
        Length::from_inches(plan.eave_overhang.in() * plan.pitch_left.tan() / plan.hips.pitch.tan());
  }
  roof.spacing = plan.rafter_spacing;
  roof.common = plan.sections.common;
  roof.hip = roof.valley = plan.hips.hip;
  roof.ridge = plan.sections.ridge_beam;
  roof.load_psf = plan.load_psf;
  return roof;
}

Result<void> lay_out_hips(const FramePlan& plan, Layout& l) {
  const double run = end_run(plan);
  l.peak_from = l.first_out + run;
  l.peak_to = l.last_out - run;
  if (l.peak_to < l.peak_from - kSame)
    return fail(ErrorCode::kTooSmall, "bays", -1, (Length::from_inches(2 * run) - plan.sections.post.breadth).count);
  const RoofPlan asked = hip_roof_of(plan);
  auto roof = solve_roof(asked, SpacedFrom::kMiddle);
  if (!roof) {
    const Error& error = roof.error();
    const std::string field = field_of(error.where);
    return fail(field == "hips.pitch" ? ErrorCode::kImpossible : error.code, field, -1,
                field == "hips.pitch" ? 0 : error.limit);
  }
  l.roof = *std::move(roof);
  move_roof(l.roof, {l.left.wall_x, l.first_out, 0});
  return {};
}

void place_hip_rafters(Work& work, Layout& layout) { HipFramer(work, layout).run(); }

void say_hips(Work& work, const Layout& l) {
  const FramePlan& plan = work.plan;
  const bool carried = say_peaks(work, l);
  bool tied = plan.ties && plan.tie_drop <= limits::kLowTie && l.bent_count() > 2;
  for (int bent = 1; bent + 1 < l.bent_count(); ++bent) tied = tied && l.tie[at(bent)] >= 0;
  if (!tied && !carried) work.add_finding(FindingId::kCornerThrust);
}

}  // namespace bentbook
