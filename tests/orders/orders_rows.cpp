/// Random small frames with wishes, the orders found for them, and what the audit (audit.h) has against those, as text
/// for tests/orders/order_audit.py, which looks at supports and wishes as graphs of its own.
///   orders_rows COUNT SEED

#include <cstdio>
#include <cstdlib>

#include "audit.h"
#include "frame/placing/solve_frame.h"
#include "raising/search/search.h"
#include "raising_rules.h"

using namespace bentbook;

namespace {

const std::string& any_mark(Random& random, const Frame& frame) {
  return frame.timbers[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame.timbers.size()) - 1))]
      .mark;
}

/// None in a third; now and then more than can be kept.
std::vector<Wish> random_wishes(Random& random, const Frame& frame) {
  std::vector<Wish> wishes;
  for (int i = static_cast<int>(random.whole(-1, 3)); i > 0; --i) {
    Wish w;
    w.kind = static_cast<WishKind>(random.whole(0, 3));
    if (w.kind == WishKind::kTogether && chance(random, 60)) w.kind = WishKind::kBefore;
    w.marks.push_back(any_mark(random, frame));
    if (w.kind == WishKind::kTogether || chance(random, 20)) w.marks.push_back(any_mark(random, frame));
    if (w.kind == WishKind::kBefore) w.others.push_back(any_mark(random, frame));
    w.number = static_cast<int>(random.whole(1, 2));
    wishes.push_back(w);
  }
  return wishes;
}

void write_marks(const char* word, const std::vector<std::string>& marks) {
  std::printf("%s", word);
  for (const std::string& mark : marks) std::printf(" %s", mark.c_str());
  std::printf("\n");
}

void write_frame(const Frame& frame, const RaisingPlan& plan) {
  for (const Timber& t : frame.timbers)
    std::printf("timber %s %d %d\n", t.mark.c_str(), t.kind == TimberKind::kPost ? 1 : 0, t.place.bent);
  for (const Joint& j : frame.joints)
    std::printf("joint %s %s %d\n", frame.timbers[static_cast<std::size_t>(j.carried)].mark.c_str(),
                frame.timbers[static_cast<std::size_t>(j.carrier)].mark.c_str(), static_cast<int>(j.bearing));
  for (const Wish& w : plan.wishes) {
    std::printf("wish %d %d\n", static_cast<int>(w.kind), w.number);
    write_marks("marks", w.marks);
    write_marks("others", w.others);
  }
}

void write_result(const Frame& frame, const FoundOrder& found, int number) {
  std::printf("result %s\n", found.found ? "found" : found.cycle.empty() ? "none" : "cycle");
  for (const Assembly& a : found.plan.assemblies) write_marks("assembly", a.marks);
  if (!found.cycle.empty()) write_marks("cycle", found.cycle);
  std::printf("cost %d %d %d\n", found.cost.temporaries, found.bound.temporaries,
              !found.found || found.bound <= found.cost ? 1 : 0);
  for (const RaisingStep& s : found.plan.steps) {
    std::printf("step %d\n", s.day);
    std::vector<std::string> set;
    for (const SetPiece& piece : s.set_first) set.push_back(piece.mark);
    write_marks("set_first", set);
    write_marks("comes", s.marks);
    write_marks("put_up", s.put_up);
    write_marks("take_out", s.take_out);
  }
  for (const std::string& fault : Audit(frame, found.plan, number).run()) std::printf("fault %s\n", fault.c_str());
}

/// Bents, plates and what braces them, of one or two bays: with its pegs driven it stands whole.
Frame random_box(Random& random) {
  while (true) {
    FramePlan plan = default_plan(Length::feet(random.whole(12, 24)), Length::feet(random.whole(8, 24)),
                                  Length::feet(random.whole(8, 12)), Slope::in_12(Length::inches(random.whole(6, 12))));
    plan.sections.post = random_section(random, plan.sections.post);
    if (chance(random, 50)) plan.girts.clear();
    plan.tie_drop = random_inches(random, 12, 30, 2);
    if (chance(random, 30)) plan.form = RoofForm::kLeanTo;
    if (chance(random, 20)) plan.sills = true;
    const Frame whole = solve_frame(plan).value_or(Frame{});
    std::vector<int> keep;
    for (std::size_t t = 0; t < whole.timbers.size(); ++t)
      for (const TimberKind kind : {TimberKind::kPost, TimberKind::kTie, TimberKind::kPlate, TimberKind::kBrace,
                                    TimberKind::kGirt, TimberKind::kSill})
        if (whole.timbers[t].kind == kind) keep.push_back(static_cast<int>(t));
    // A king post's braces go with it.
    std::erase_if(keep, [&](int t) {
      return std::any_of(whole.joints.begin(), whole.joints.end(), [&](const Joint& j) {
        return j.member == t && std::count(keep.begin(), keep.end(), j.receiver) == 0;
      });
    });
    if (!keep.empty()) return part_of(whole, keep);
  }
}

/// A few timbers that are joined; nearly always they fall without a temporary, and no order can end.
Frame small_part(Random& random) {
  while (true) {
    const Frame whole = solve_frame(random_plan(random)).value_or(Frame{});
    if (!whole.timbers.empty())
      return random_part(random, whole, static_cast<std::size_t>(random.whole(2, chance(random, 10) ? 12 : 7)));
  }
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 3) return 2;
  Random random(std::strtoull(argv[2], nullptr, 10));
  SearchOptions options;
  options.steps = 100;
  options.exact_up_to = 4;
  for (int number = 0; number < std::atoi(argv[1]); ++number) {
    const bool box = number % 6 == 0;
    const Frame frame = box ? random_box(random) : small_part(random);
    RaisingPlan plan;
    plan.wishes = random_wishes(random, frame);
    plan.fasten = box ? FastenWhen::kWithStep : FastenWhen::kLater;
    plan.ratings.peg = Weight::pounds(random.whole(15, 40) * 100);
    plan.spare = box && chance(random, 50);
    options.propose = box || chance(random, 50);
    options.improve = chance(random, 10);
    std::printf("frame %d\n", number);
    write_frame(frame, plan);
    write_result(frame, search_order(frame, plan, options), number);
    std::printf("end\n");
  }
  return 0;
} catch (...) {
  return 1;
}
