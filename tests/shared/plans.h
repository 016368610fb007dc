#pragma once
/// Random frame plans: most of what a plan can say, in sizes that a frame is built in.

#include <optional>

#include "frame/placing/solve_frame.h"
#include "frame/plan.h"
#include "random.h"

namespace bentbook {

inline Length random_inches(Random& random, int least, int most, int per_inch) {
  return Length::inches(
      random.whole(static_cast<std::int64_t>(least) * per_inch, static_cast<std::int64_t>(most) * per_inch), per_inch);
}

inline bool chance(Random& random, int percent) { return random.whole(1, 100) <= percent; }

inline Section random_section(Random& random, Section about) {
  // Now and then two inches more or less.
  if (chance(random, 70)) return about;
  about.depth = about.depth + Length::inches(random.whole(-1, 1));
  about.breadth = about.breadth + Length::inches(random.whole(-1, 1));
  return about;
}

inline JointType random_end_joint(Random& random, JointType tenon) {
  switch (random.whole(0, 3)) {
    case 0: {
      KnifePlate plate;
      plate.open = static_cast<SlotOpen>(random.whole(0, 3));
      plate.let_in = chance(random, 50);
      plate.base_width = random_inches(random, 3, 5, 2);
      plate.base_height = random_inches(random, 4, 6, 2);
      plate.width = random_inches(random, 3, 5, 2);
      plate.reach = random_inches(random, 4, 8, 2);
      return plate;
    }
    case 1:
      return HousedButt{random_inches(random, 0, 1, 4)};
    case 2:
      if (auto* t = std::get_if<MortiseTenon>(&tenon)) {
        t->housing = chance(random, 50) ? Length{} : random_inches(random, 0, 1, 8);
        t->shoulder_top = chance(random, 50) ? Length{} : Length::inches(1);
        t->shoulder_bottom = chance(random, 70) ? Length{} : Length::inches(1);
      }
      return tenon;
    default:
      return tenon;
  }
}

/// Rough or thin wood, another section, or nothing at all in place of some timbers.
inline void set_apart(Random& random, FramePlan& p) {
  const Frame frame = solve_frame(p).value_or(Frame{});
  if (frame.timbers.empty()) return;
  for (int i = static_cast<int>(random.whole(1, 6)); i > 0; --i) {
    const Timber& t =
        frame.timbers[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame.timbers.size()) - 1))];
    Override o;
    o.mark = t.mark;
    bool twice = false;
    for (const Override& other : p.overrides) twice = twice || other.mark == o.mark;
    if (twice) continue;
    if (chance(random, 15)) {
      o.removed = true;
    } else {
      o.has_wood = true;
      o.wood = t.wood;
      o.wood.actual.breadth = o.wood.actual.breadth + Length::inches(random.whole(-3, 3), 8);
      o.wood.actual.depth = o.wood.actual.depth + Length::inches(random.whole(-3, 3), 8);
      o.wood.top_is_reference = chance(random, 70);
      o.wood.near_is_reference = chance(random, 50);
      if (t.kind == TimberKind::kTie || t.kind == TimberKind::kBrace || t.kind == TimberKind::kJoist) {
        o.has_joint_a = chance(random, 50);
        o.joint_a = random_end_joint(random, default_joint(Meeting::kBraceEnd));
      }
      if (t.kind == TimberKind::kPost) o.pier_level = Length::inches(random.whole(-24, 4), 8);
    }
    p.overrides.push_back(o);
  }
}

inline FramePlan random_plan(Random& random) {
  FramePlan p;
  p.form = chance(random, 20) ? RoofForm::kLeanTo : RoofForm::kGable;
  p.span = random_inches(random, 12 * 12, 30 * 12, 4);
  p.bays.clear();
  const int bays = static_cast<int>(random.whole(1, 3));
  for (int i = 0; i < bays; ++i) p.bays.push_back({random_inches(random, 7 * 12, 14 * 12, 4), i + 2});
  p.plate_left = random_inches(random, 100, 168, 4);
  p.plate_right = chance(random, 70) ? p.plate_left : p.plate_left + random_inches(random, -18, 18, 4);
  p.pitch_left = Slope::in_12(random_inches(random, 4, 14, 2));
  p.pitch_right = chance(random, 70) ? p.pitch_left : Slope::in_12(random_inches(random, 4, 14, 2));
  p.eave_overhang = random_inches(random, 0, 24, 2);
  p.gable_overhang = random_inches(random, 0, 24, 2);
  p.roof = chance(random, 50) ? RoofFrame::kCommons : RoofFrame::kPrincipals;
  p.rafter_spacing = random_inches(random, 24, 60, 1);
  p.purlin_spacing = random_inches(random, 24, 60, 1);
  p.peak = chance(random, 60) ? Peak::kRidgeBeam : Peak::kPair;
  p.on_ties = static_cast<OnTies>(random.whole(0, 2));
  p.ties = chance(random, 90);
  p.tie_drop = random_inches(random, 12, 30, 2);
  p.collars = chance(random, 25);
  p.collar_rise = random_inches(random, 12, 60, 2);
  p.loft = chance(random, 40);
  p.joist_spacing = random_inches(random, 18, 36, 1);
  p.sills = chance(random, 40);
  p.girts.clear();
  for (int i = static_cast<int>(random.whole(0, 2)); i > 0; --i)
    p.girts.push_back(Length::inches(random.whole(30, 40) * i));
  p.end_girts = chance(random, 40);
  p.braces = chance(random, 75);
  p.brace_leg_post = random_inches(random, 18, 36, 2);
  p.brace_leg_beam = random_inches(random, 18, 36, 2);
  p.stock_most = Length::feet(random.whole(14, 30));
  p.stand_off = chance(random, 50) ? Length{} : Length::inches(1);
  PlanSections& s = p.sections;
  for (Section* section : {&s.sill, &s.post, &s.plate, &s.tie, &s.girt, &s.joist, &s.king_post, &s.queen_post,
                           &s.collar, &s.ridge_beam, &s.principal, &s.common, &s.purlin, &s.brace})
    *section = random_section(random, *section);
  for (const Meeting m : {Meeting::kTiePost, Meeting::kGirtPost, Meeting::kPurlinRafter, Meeting::kJoistTie,
                          Meeting::kBraceEnd, Meeting::kRafterRidge, Meeting::kCollarRafter})
    if (chance(random, 50)) {
      JointType& joint = p.joints[static_cast<std::size_t>(m)];
      joint = random_end_joint(random, default_joint(m == Meeting::kRafterRidge ? Meeting::kBraceEnd : m));
    }
  if (chance(random, 20)) p.joints[static_cast<std::size_t>(Meeting::kCollarRafter)] = HalfLap{};
  if (chance(random, 30))
    p.joints[static_cast<std::size_t>(Meeting::kRafterRidge)] = BirdsMouth{random_inches(random, 2, 3, 4)};
  if (chance(random, 50)) p.joints[static_cast<std::size_t>(Meeting::kRafterPeak)] = RafterPeak{false};
  std::get<BirdsMouth>(p.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]).seat = random_inches(random, 2, 4, 4);
  if (chance(random, 40)) set_apart(random, p);
  return p;
}

/// Hipped ends over most of what a plan can say of its walls, the peaks over king posts or not. Not in random_plan:
/// what else is drawn stays as it is.
inline FramePlan random_hip_plan(Random& random) {
  FramePlan p = random_plan(random);
  p.overrides.clear();
  p.form = RoofForm::kHip;
  p.plate_right = p.plate_left;
  p.pitch_right = p.pitch_left;
  p.sections.common.breadth = Length::inches(4);
  p.hips = usual_hips(p);
  if (chance(random, 40)) p.hips.hip = {Length::inches(8), Length::inches(10)};
  // Tails as roof_to_check has them: a hip's heel runs out of a shorter one.
  p.eave_overhang = random_inches(random, 6, 24, 2);
  const bool other = chance(random, 30);
  const std::optional<Slope> end = other ? std::optional(Slope::in_12(random_inches(random, 6, 12, 1))) : std::nullopt;
  const bool square = !other && chance(random, 15);
  const Length length = square ? p.span : p.span * 2 + random_inches(random, 0, 20 * 12, 4);
  const FramePlan usual = default_hip_plan(p.span, length, p.plate_left, p.pitch_left, SizedBy::kInches, end);
  p.bays = usual.bays;
  p.hips.pitch = usual.hips.pitch;
  if (!square && chance(random, 20)) {
    p.bays.front().width = p.bays.front().width - Length::inches(20);
    p.bays[1].width = p.bays[1].width + Length::inches(20);
  }
  p.hips.end_posts = chance(random, 70);
  p.hips.dragon_ties = chance(random, 40);
  if (chance(random, 60)) p.on_ties = OnTies::kKingPosts;
  return p;
}

/// Half-dovetails at some of the meetings that can take them. Not in random_plan: what else is drawn stays as it is.
inline void draw_half_dovetails(Random& random, FramePlan& p) {
  for (const Meeting m : {Meeting::kTiePost, Meeting::kGirtPost, Meeting::kJoistTie}) {
    if (!chance(random, 40)) continue;
    HalfDovetail d;
    d.through = chance(random, 60);
    d.length = random_inches(random, 2, 6, 4);
    d.thickness = random_inches(random, 1, 3, 4);
    d.one_in = static_cast<int>(random.whole(5, 12));
    d.play = random_inches(random, 0, 1, 8);
    d.housing = chance(random, 50) ? Length{} : random_inches(random, 0, 1, 8);
    d.pegs = static_cast<int>(random.whole(0, 1));
    p.joints[static_cast<std::size_t>(m)] = d;
  }
}

}  // namespace bentbook
