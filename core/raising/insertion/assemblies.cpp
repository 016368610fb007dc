#include "raising/insertion/assemblies.h"

#include <algorithm>
#include <string>

#include "frame/facts.h"
#include "numeric/sorting.h"
#include "raising/insertion/blocking_graph.h"

namespace bentbook {
namespace {

const Timber& timber_at(const Frame& frame, int t) { return frame.timbers[static_cast<std::size_t>(t)]; }

/// Two of one set by the joints among them.
bool joined(const Blocking::Graph& in, int t, const std::vector<int>& others) {
  return std::any_of(in.joints[static_cast<std::size_t>(t)].begin(), in.joints[static_cast<std::size_t>(t)].end(),
                     [&](int j) {
                       const Joint& joint = in.frame.joints[static_cast<std::size_t>(j)];
                       const int other = other_timber(joint, t);
                       return std::find(others.begin(), others.end(), other) != others.end();
                     });
}

/// Grows from the first timber by what is joined to it; what keeps the whole from going together is left out.
std::vector<int> put_together(Blocking& blocking, const Blocking::Graph& in, std::vector<int> parts) {
  std::vector<int> set{parts[0]};
  parts.erase(parts.begin());
  for (bool more = true; more;) {
    more = false;
    std::vector<int> left;
    for (const int t : parts) {
      (joined(in, t, set) ? set : left).push_back(t);
      more = more || set.back() == t;
    }
    parts = left;
  }
  AssemblySequence tried = blocking.assemble(set);
  while (!tried.possible && set.size() > 1) {
    // The last of those that hold each other is left out: added ones and braces come after posts and ties.
    const int out = *std::max_element(tried.stuck.begin(), tried.stuck.end());
    set.erase(std::find(set.begin(), set.end(), out));
    tried = blocking.assemble(set);
  }
  sort_up(set);
  return set;
}

class Proposer {
 public:
  Proposer(const Frame& frame, Blocking& blocking, const Blocking::Graph& in)
      : frame_(frame), blocking_(blocking), in_(in), taken_(frame.timbers.size(), 0) {
    hipped_ = std::any_of(frame.timbers.begin(), frame.timbers.end(),
                          [](const Timber& t) { return t.kind == TimberKind::kHipRafter; });
  }

  void add(const std::string& name, std::vector<int> parts) {
    parts.erase(
        std::remove_if(parts.begin(), parts.end(),
                       [&](int t) { return taken_[static_cast<std::size_t>(t)] != 0 || !timber_at(frame_, t).placed; }),
        parts.end());
    if (parts.size() < 2) return;
    const std::vector<int> set = put_together(blocking_, in_, parts);
    if (set.size() < 2) return;
    Assembly made;
    made.name = name;
    for (const int t : set) {
      taken_[static_cast<std::size_t>(t)] = 1;
      made.marks.push_back(timber_at(frame_, t).mark);
    }
    found.push_back(made);
  }

  /// By kind: posts first, then what lies in their plane. Posts that nothing level joins, as under a hipped end's
  /// plate, are no bent.
  void add_bent(int bent) {
    std::vector<int> parts;
    for (int t = 0; t < static_cast<int>(frame_.timbers.size()); ++t)
      if (raised_with_bent(timber_at(frame_, t), bent)) parts.push_back(t);
    const auto level = [&](int t) {
      const TimberKind kind = timber_at(frame_, t).kind;
      return kind == TimberKind::kTie || kind == TimberKind::kGirt;
    };
    if (hipped_ && std::none_of(parts.begin(), parts.end(), level)) return;
    sort_by(parts, [&](int a, int b) { return timber_at(frame_, a).kind < timber_at(frame_, b).kind; });
    add("B" + std::to_string(bent), parts);
  }

  void add_wall(char line) {
    std::vector<int> parts;
    for (const TimberKind kind : {TimberKind::kPost, TimberKind::kPlate, TimberKind::kGirt, TimberKind::kBrace})
      for (int t = 0; t < static_cast<int>(frame_.timbers.size()); ++t) {
        const Timber& it = timber_at(frame_, t);
        const bool along = kind != TimberKind::kBrace || it.place.bay >= 0;
        if (it.kind == kind && it.place.line == line && along) parts.push_back(t);
      }
    add(std::string("W") + line, parts);
  }

  void add_pairs() {
    int number = 0;
    for (const Joint& joint : frame_.joints) {
      // Two hips of one end lean against each other as a pair of rafters does: one alone falls aside.
      const Timber &a = timber_at(frame_, joint.member), &b = timber_at(frame_, joint.receiver);
      const bool hips =
          a.kind == TimberKind::kHipRafter && b.kind == a.kind && a.place.bent >= 0 && a.place.bent == b.place.bent;
      if (joint.meeting != Meeting::kRafterPeak && !hips) continue;
      std::vector<int> parts{joint.member, joint.receiver};
      for (const Joint& other : frame_.joints)
        if (other.meeting == Meeting::kCollarRafter &&
            (other.receiver == joint.member || other.receiver == joint.receiver) &&
            std::find(parts.begin(), parts.end(), other.member) == parts.end())
          parts.push_back(other.member);
      add("R" + std::to_string(++number), parts);
    }
  }

  std::vector<Assembly> found;

 private:
  const Frame& frame_;
  Blocking& blocking_;
  const Blocking::Graph& in_;
  std::vector<char> taken_;
  bool hipped_ = false;
};

std::vector<int> bents_of(const Frame& frame) {
  std::vector<int> bents;
  for (const Timber& t : frame.timbers)
    if (t.kind == TimberKind::kPost && t.place.bent >= 0 &&
        std::find(bents.begin(), bents.end(), t.place.bent) == bents.end())
      bents.push_back(t.place.bent);
  return bents;
}

}  // namespace

std::vector<Assembly> propose_assemblies(const Frame& frame, Blocking& blocking, AssemblyStyle style) {
  const Blocking::Graph& in = blocking.graph();
  Proposer proposer(frame, blocking, in);
  if (style == AssemblyStyle::kBents) {
    for (const int bent : bents_of(frame)) proposer.add_bent(bent);
  } else {
    for (const char line : {'A', 'E'}) proposer.add_wall(line);
  }
  proposer.add_pairs();
  return proposer.found;
}

}  // namespace bentbook
