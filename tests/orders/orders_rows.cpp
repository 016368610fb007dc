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
    write_marks("comes", s.marks);
    write_marks("put_up", s.put_up);
    write_marks("take_out", s.take_out);
  }
  for (const std::string& fault : Audit(frame, found.plan, number).run()) std::printf("fault %s\n", fault.c_str());
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 3) return 2;
  Random random(std::strtoull(argv[2], nullptr, 10));
  SearchOptions options;
  options.steps = 100;
  options.exact_up_to = 4;
  for (int number = 0; number < std::atoi(argv[1]);) {
    const Frame whole = solve_frame(random_plan(random)).value_or(Frame{});
    // A few small frames out of each.
    for (int k = 0; k < 6 && !whole.timbers.empty() && number < std::atoi(argv[1]); ++k) {
      const Frame frame =
          random_part(random, whole, static_cast<std::size_t>(random.whole(2, chance(random, 10) ? 12 : 7)));
      RaisingPlan plan;
      plan.wishes = random_wishes(random, frame);
      options.propose = chance(random, 50);
      options.improve = chance(random, 10);
      std::printf("frame %d\n", number++);
      write_frame(frame, plan);
      write_result(frame, search_order(frame, plan, options), number);
      std::printf("end\n");
    }
  }
  return 0;
} catch (...) {
  return 1;
}
