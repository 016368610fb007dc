#include <algorithm>

#include "frame/facts.h"
#include "numeric/index.h"
#include "raising/limits.h"
#include "raising/search/crew_braces.h"

namespace bentbook {
namespace {

constexpr double kClear = 6;  ///< inches between a brace's end and a joint

class Places {
 public:
  explicit Places(const Frame& frame) : frame_(frame), count_(static_cast<int>(frame.timbers.size())) {
    ground_ = first_y_ = 1e9;
    for (const Timber& t : frame.timbers) {
      if (!t.placed) continue;
      ground_ = std::min({ground_, t.at.origin.z, (t.at.origin + t.length * t.at.x).z});
      if (t.kind == TimberKind::kPost) first_y_ = std::min(first_y_, t.at.origin.y), roof_alone_ = false;
    }
  }

  std::vector<Temporary> find() {
    for (int t = 0; t < count_; ++t) {
      const Timber& it = timber(t);
      if (!it.placed) continue;
      if (it.kind == TimberKind::kPost) post_stakes(t);
      if (it.kind == TimberKind::kKingPost || it.kind == TimberKind::kQueenPost)
        for (const double part : {0.65, 0.4})
          for (const double along : {1.0, -1.0}) stake(t, part * it.length, {0, along, 0});
      if (it.kind == TimberKind::kPost || it.kind == TimberKind::kKingPost || it.kind == TimberKind::kQueenPost)
        across_bay(t);
      if (roof_alone_) props(t);
    }
    corners();
    roof_planes();
    return std::move(all_);
  }

 private:
  [[nodiscard]] const Timber& timber(int t) const { return frame_.timbers[at(t)]; }
  [[nodiscard]] Vec3 point(int t, double s) const { return timber(t).at.origin + s * timber(t).at.x; }
  [[nodiscard]] double station(int t, Vec3 where) const { return dot(where - timber(t).at.origin, timber(t).at.x); }

  /// That place on a timber or one a little below it that is no joint's.
  [[nodiscard]] double clear(int t, double s) const {
    for (int tries = 0; tries < 12; ++tries) {
      bool good = true;
      for (const int j : joints_of(frame_, t))
        good = good && libm::fabs(station(t, frame_.joints[at(j)].where) - s) > kClear;
      if (good) break;
      s -= 3;
    }
    return libm::floor(std::clamp(s, 3.0, std::max(3.0, timber(t).length - 3)) + 0.5);
  }
  void keep(Temporary brace, double length) {
    const bool thick = length > limits::kMostSlenderness * 1.5 - 1;
    brace.thickness = thick ? Length::inches(7, 2) : Length::inches(3, 2);
    if (length >= limits::kShortestBrace && length <= limits::kMostSlenderness * brace.thickness.in() - 1)
      all_.push_back(brace);
  }
  void stake(int t, double s, Vec3 toward, TemporaryKind kind = TemporaryKind::kDiagonal) {
    s = clear(t, s);
    const Vec3 p = point(t, s);
    const double height = p.z - ground_;
    if (height < 24) return;
    const Vec3 q{libm::floor(p.x + height * toward.x + 0.5), libm::floor(p.y + height * toward.y + 0.5), ground_};
    Temporary brace;
    brace.from = {timber(t).mark, Length::from_inches(s)};
    brace.kind = kind;
    brace.ground_x = Length::from_inches(q.x);
    brace.ground_y = Length::from_inches(q.y);
    brace.ground_z = Length::from_inches(q.z);
    keep(brace, norm(q - p));
  }
  void between(int a, double sa, int b, double sb) {
    sa = clear(a, sa);
    sb = clear(b, sb);
    Temporary brace;
    brace.from = {timber(a).mark, Length::from_inches(sa)};
    brace.to = {timber(b).mark, Length::from_inches(sb)};
    keep(brace, norm(point(a, sa) - point(b, sb)));
  }

  /// A ridge, hip or valley of a roof on walls: upright from the deck, and askew against it going over.
  void props(int t) {
    const Timber& it = timber(t);
    const bool ridge = it.kind == TimberKind::kRidgeBeam;
    if (!ridge && it.kind != TimberKind::kHipRafter && it.kind != TimberKind::kValleyRafter) return;
    for (const double part : {0.85, 0.15}) {
      if (part < 0.5 && !ridge) break;
      const double s = part * it.length;
      stake(t, s, {}, TemporaryKind::kProp);
      for (const Vec3& toward : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0}}) stake(t, s, toward);
    }
  }
  void post_stakes(int t) {
    const double high = 0.85 * timber(t).length;
    // At an end bent outside the building first: inside, the next bent lies and swings up.
    const double along = timber(t).at.origin.y <= first_y_ + 12 ? -1 : 1;
    for (const double s : {high, std::min(high, limits::kHandReach)}) {
      stake(t, s, {0, along, 0});
      stake(t, s, {0, -along, 0});
      stake(t, s, {timber(t).at.origin.x < 0 ? -1.0 : 1.0, 0, 0});
      if (high <= limits::kHandReach) break;
    }
  }
  /// To the next upright of its line.
  void across_bay(int t) {
    const Timber& it = timber(t);
    int next = -1;
    for (int u = 0; u < count_; ++u) {
      const Timber& o = timber(u);
      const bool in_line = o.placed && o.kind == it.kind && libm::fabs(o.at.origin.x - it.at.origin.x) <= 12 &&
                           o.at.origin.y > it.at.origin.y + 12;
      if (in_line && (next < 0 || o.at.origin.y < timber(next).at.origin.y)) next = u;
    }
    if (next < 0) return;
    between(t, 12, next, 0.8 * timber(next).length);
    between(next, 12, t, 0.8 * it.length);
  }

  [[nodiscard]] bool knee_braced(int a, int b) const {
    for (int t = 0; t < count_; ++t) {
      if (timber(t).kind != TimberKind::kBrace) continue;
      bool to_a = false, to_b = false;
      for (const int j : joints_of(frame_, t)) {
        to_a = to_a || frame_.joints[at(j)].receiver == a;
        to_b = to_b || frame_.joints[at(j)].receiver == b;
      }
      if (to_a && to_b) return true;
    }
    return false;
  }
  [[nodiscard]] static bool takes_nails(const Timber& t) {
    return t.placed && t.length >= 48 && t.kind != TimberKind::kBrace && t.kind != TimberKind::kCommonRafter;
  }
  /// A false knee brace where there is no other.
  void corners() {
    for (const Joint& joint : frame_.joints) {
      const int m = joint.member, r = joint.receiver;
      const Timber &a = timber(m), &b = timber(r);
      if (!takes_nails(a) || !takes_nails(b) || libm::fabs(dot(a.at.x, b.at.x)) > 0.5 || knee_braced(m, r)) continue;
      const double sa = station(m, joint.where), sb = station(r, joint.where);
      const auto inside = [](double s, const Timber& t) { return s > 3 && s < t.length - 3; };
      for (const double leg : {72.0, 40.0})
        for (const double da : {leg, -leg})
          for (const double db : {leg, -leg})
            if (inside(sa + da, a) && inside(sb + db, b)) between(m, sa + da, r, sb + db);
    }
  }
  /// A rafter to its plate, in the roof's plane.
  void roof_planes() {
    for (const Joint& joint : frame_.joints) {
      if (joint.meeting != Meeting::kRafterPlate) continue;
      const int m = joint.member, r = joint.receiver;
      const double sa = station(m, joint.where) + 60, sb = station(r, joint.where);
      for (const double db : {60.0, -60.0})
        if (sa < timber(m).length && sb + db > 3 && sb + db < timber(r).length - 3) between(m, sa, r, sb + db);
    }
  }

  const Frame& frame_;
  int count_ = 0;
  double ground_ = 0, first_y_ = 0;
  bool roof_alone_ = true;  ///< no post in it
  std::vector<Temporary> all_;
};

}  // namespace

std::vector<Temporary> crew_places(const Frame& frame) { return Places(frame).find(); }

}  // namespace bentbook
