#pragma once
/// A member's end against a receiver's face, seen in the plane of the member's axis and the face's normal.
///   t along the face, q into the receiver from the shoulder plane, w across both (through the member's axis: 0)
/// The member's edges go on into the receiver along t = t₀ + k q, k the tangent of its angle off square to the face.

#include "frame/joints/end_joint.h"
#include "frame/placing/work.h"

namespace bentbook {

/// How a square end's tenon stands: its breadth along the receiver's grain, or plumb.
enum class TenonStands : std::uint8_t { kWithGrain, kPlumb };

struct EndView {
  TenonStands stands = TenonStands::kWithGrain;  ///< said before one looks
  int member = -1, receiver = -1;
  End end = End::kA;
  Face face = Face::kTop;  ///< of the receiver
  bool opposed = false;
  double most = 1e9;
  double relish = 0;
  Vec3 u, n, t, w, o;
  double cos = 1, k = 0;
  double turn = 1;    ///< t = turn · v / cos + k q for the member's edge at v
  double proud = 0;   ///< the receiver's real face lies at q = −proud
  double behind = 0;  ///< wood of the receiver behind the shoulder plane
  Axis mw = Axis::kY, mv = Axis::kZ;
  Range v, wide;  ///< the member's wood along v and w
  double t_lo = 0, t_hi = 0;
  AxisOf rn, rw;      ///< the receiver's axes along n and w
  double rw_at = 0;   ///< the receiver's coordinate where w = 0
  Range rw_wood;      ///< the receiver's wood in w; huge along its grain
  double middle = 0;  ///< w: middle of the wood that both have, by design
  double common = 0;  ///< …and its size
  [[nodiscard]] bool square() const { return k == 0; }
  [[nodiscard]] Vec3 at(double tt, double q, double ww) const { return o + tt * t - q * n + ww * w; }
  /// On the member's line at height v.
  [[nodiscard]] Vec3 on_edge(double vv, double q, double ww) const { return at(turn * vv / cos + k * q, q, ww); }
};

/// False where neither of the member's sides lies square to the face: a joint of this house cannot be cut there.
[[nodiscard]] bool see_end(Work& work, const EndMeeting& meeting, double housing, EndView& view);

/// An outline in (t, q) taken out of the member between two w.
struct Tq {
  double t = 0, q = 0;
};
[[nodiscard]] Pocket member_pocket(Work& work, const EndView& view, std::initializer_list<Tq> outline, Range ww);
/// The same out of the receiver: swept across where the receiver's sides allow it, else (square ends) swept inward.
[[nodiscard]] Pocket receiver_pocket(Work& work, const EndView& view, std::initializer_list<Tq> outline, Range ww);

/// Measures of a feature on the receiver's face, from t, w and depth.
[[nodiscard]] Feature receiver_feature(Work& work, const EndView& view, FeatureKind kind, Range tt, Range ww,
                                       double depth);
[[nodiscard]] Feature member_feature(Work& work, const EndView& view, FeatureKind kind, Range ww, double depth);

/// What lies between these w, from the member's or the receiver's reference face. The receiver's must lie across it
/// (gauges_receiver).
[[nodiscard]] Gauged gauge_member(Work& work, const EndView& view, Range ww);
[[nodiscard]] Gauged gauge_receiver(Work& work, const EndView& view, Range ww);
[[nodiscard]] inline bool gauges_receiver(const EndView& view) { return view.rw.aligned && view.rw.axis != Axis::kX; }
/// Fences for the tenon's near side and its mortise's.
void set_fences(Work& work, const EndView& view, Range cheeks);

/// Cuts the member's end to the shoulder plane moved `beyond` into the receiver.
void cut_to_shoulder(Work& work, const EndView& view, double beyond);

/// The part of the shoulder within these t and w, as a bearing contact.
void shoulder_contact(Work& work, const EndView& view, Range tt, Range ww);
/// A wall in w, part of the (t, q) plane; `side` ±1: which way it looks.
void add_cheek(Work& work, const EndView& view, double w, double side, Tq a, Tq b, Tq c, Tq d);
/// Walls that run along the member's edges at both ends of a mortise or housing, from q.lo to q.hi. `nosed`: the upper
/// one is square to the face instead.
void add_end_walls(Work& work, const EndView& view, Range tt, Range q, Range ww, bool nosed);
/// Let in by the housing: the receiver loses the member's whole footprint down to the shoulder plane.
void cut_housing(Work& work, const EndView& view);
struct TenonSize {
  double thickness = 0, length = 0;
};
/// A tenon as asked, brought down with a warning to what the wood of both allows, `clearance` left at the mortise's
/// bottom.
[[nodiscard]] TenonSize fit_tenon(Work& work, const EndView& view, TenonSize asked, double clearance, double longest);
/// Pegs through the receiver's cheeks and a tenon of this width and length; the hole in the tenon stands nearer to its
/// shoulder by the drawbore. None where the receiver's grain runs across the tenon's cheeks.
void bore_pegs(Work& work, const EndView& view, const PinPattern& peg, int pegs, double drawbore, Range tt,
               double length);

/// Begins the joint of an end that is cut to the receiver's face, moved into it by `housing`, and looks at it; false,
/// with a finding, where it cannot be cut.
[[nodiscard]] bool begin_end_joint(Work& work, const EndMeeting& meeting, JointKind kind, double housing,
                                   EndView& view);

}  // namespace bentbook
