// Books under random edits.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <string>
#include <vector>

#include "book/book_edit.h"
#include "book/book_file.h"
#include "book/field.h"
#include "book/history.h"
#include "book/json_text.h"
#include "frame/list/csv.h"
#include "frame/list/csv_write.h"
#include "model/book_model.h"
#include "plans.h"

using namespace bentbook;

namespace {

HandTimber random_hand(Random& random) {
  HandTimber t;
  t.mark = "X-" + std::to_string(random.whole(1, 9));
  t.kind = static_cast<TimberKind>(random.whole(0, kTimberKinds - 1));
  t.wood.nominal = t.wood.design =
      t.wood.actual = {Length{random.whole(400'000'000, 2'400'000'000)}, random_inches(random, 4, 12, 16)};
  t.length = random_inches(random, 24, 240, 64);
  t.a = {Angle{random.whole(-40 * Angle::kPerDegree, 40 * Angle::kPerDegree)}, {}};
  if (chance(random, 50)) t.b.tilt = Angle::degrees(random.whole(-30, 30));
  for (int i = static_cast<int>(random.whole(0, 3)); i > 0; --i) {
    HandFeature f;
    f.kind = chance(random, 50) ? FeatureKind::kMortise : FeatureKind::kHole;
    f.face = static_cast<Face>(random.whole(1, 4));
    f.station = random_inches(random, 1, 200, 32);
    f.offset = random_inches(random, 0, 8, 16);
    f.along = f.across = f.diameter = random_inches(random, 1, 4, 16);
    f.depth = random_inches(random, 0, 3, 16);
    t.features.push_back(f);
  }
  return t;
}

RaisingPlan random_raising(Random& random) {
  RaisingPlan plan;
  const auto mark = [&] { return "P-A" + std::to_string(random.whole(1, 9)); };
  const auto weight = [&] { return Weight{random.whole(0, 1'000 * Weight::kPerPound)}; };
  for (int i = static_cast<int>(random.whole(0, 4)); i > 0; --i) {
    RaisingStep step{{mark(), mark()}, {"T1"}, {}, static_cast<int>(random.whole(1, 5)), chance(random, 50), {}, {}};
    if (chance(random, 50)) step.set_first.push_back({mark(), static_cast<HeldBy>(random.whole(0, 3))});
    step.by = static_cast<LiftBy>(random.whole(0, 7));
    plan.steps.push_back(std::move(step));
    Temporary t;
    t.name = "T" + std::to_string(i);
    t.kind = static_cast<TemporaryKind>(random.whole(0, 2));
    t.from = {mark(), random_inches(random, 0, 100, 16)};
    if (chance(random, 50)) t.to = {mark(), random_inches(random, 0, 100, 16)};
    t.ground_x = random_inches(random, 0, 300, 16);
    t.rated = weight();
    plan.temporaries.push_back(t);
    plan.assemblies.push_back({"bent", {mark(), mark(), mark()}});
    plan.wishes.push_back(
        {static_cast<WishKind>(random.whole(0, 3)), {mark()}, {mark()}, static_cast<int>(random.whole(1, 9))});
    plan.crane.chart.push_back({random_inches(random, 100, 900, 8), weight()});
    plan.gear.push_back({"sling", static_cast<GearKind>(random.whole(0, 2)), random_inches(random, 10, 200, 8),
                         weight(), weight(), static_cast<int>(random.whole(0, 8))});
    plan.holds.push_back(
        {static_cast<JointKind>(random.whole(0, kJointKinds - 1)), chance(random, 50), true, false, "tried \"it\""});
  }
  plan.crane.present = chance(random, 50);
  plan.crane_two = plan.crane;
  plan.telehandler.x = random_inches(random, 0, 300, 16);
  plan.gin_pole = {chance(random, 50), weight(), "who \"rated\" it"};
  plan.poles = chance(random, 50);
  plan.bents = static_cast<BentsGoUp>(random.whole(0, 2));
  plan.crew.entered = chance(random, 50);
  plan.loads.wind_mph = static_cast<int>(random.whole(0, 60));
  plan.posts_anchored = chance(random, 50);
  plan.fasten = static_cast<FastenWhen>(random.whole(0, 1));
  plan.ratings = {weight(), weight(), weight(), weight(), "the engineer's letter"};
  plan.spare = chance(random, 50);
  plan.kings = static_cast<KingPosts>(random.whole(0, 1));
  plan.truck.carries = weight();
  return plan;
}

Book random_edit(Random& random, Book book) {
  const std::string mark = "P-" + std::string(chance(random, 50) ? "A" : "E") + std::to_string(random.whole(1, 4));
  switch (random.whole(0, 9)) {
    case 0: {
      Override o = override_of(book, mark);
      o.removed = chance(random, 50);
      o.has_section = chance(random, 50);
      o.section = {random_inches(random, 6, 10, 8), random_inches(random, 6, 10, 8)};
      return with_override(std::move(book), o);
    }
    case 1:
      return with_added(std::move(book), random_hand(random));
    case 2:
      return without_added(std::move(book), "X-" + std::to_string(random.whole(1, 9)));
    case 3:
      return with_note(std::move(book), mark, chance(random, 30) ? "" : "note " + std::to_string(random.whole(1, 5)));
    case 4:
      return with_bay(std::move(book), static_cast<int>(random.whole(-1, 1)), random_inches(random, 90, 150, 4));
    case 5:
      return without_bay(std::move(book), static_cast<int>(random.whole(0, 2)));
    case 6:
      return with_joint(std::move(book), static_cast<Meeting>(random.whole(0, kMeetings - 1)),
                        random_end_joint(random, MortiseTenon{}));
    case 7: {
      FramePlan plan = random_plan(random);
      plan.added = book.frame.added;
      book.frame = std::move(plan);
      return book;
    }
    case 8:
      book.raising = random_raising(random);
      return book;
    default:
      book.frame.span = random_inches(random, 140, 300, 64);
      return book;
  }
}

/// Paths of all members of a JSON value that hold no object, by the places of their items; a slope is one member.
void add_paths(const rapidjson::Value& value, const std::string& path, std::vector<std::string>& out) {
  if (value.IsObject() && !(value.HasMember("form") && value.HasMember("rise"))) {
    for (const auto& member : value.GetObject())
      add_paths(member.value, path.empty() ? member.name.GetString() : path + "." + member.name.GetString(), out);
  } else if (value.IsArray()) {
    for (rapidjson::SizeType i = 0; i < value.Size(); ++i) add_paths(value[i], path + "." + std::to_string(i), out);
  } else {
    out.push_back(path);
  }
}

std::vector<std::string> paths_of(const Book& book) {
  rapidjson::Document document;
  REQUIRE(parse_json_object(document, write_book(book), "book"));
  document.RemoveMember("file");
  document.RemoveMember("version");
  std::vector<std::string> paths;
  add_paths(document, {}, paths);
  return paths;
}

/// Another value that may stand there.
FieldValue another(Random& random, const Field& field) {
  switch (field.kind()) {
    case FieldKind::kText:
      return "text " + std::to_string(random.whole(0, 99));
    case FieldKind::kFlag:
      return chance(random, 50);
    case FieldKind::kCount:
      return random.whole(field.least, std::min<std::int64_t>(field.most, 1000));
    case FieldKind::kNumber:
      return static_cast<double>(random.whole(1, 2));
    case FieldKind::kLength:
      return Length{random.whole(field.length.min.count, field.length.max.count)};
    case FieldKind::kSlope:
      return Slope::in_12(random_inches(random, 1, 12, 8));
    case FieldKind::kAngle:
      return Angle{random.whole(field.angle.min.nano_degrees, field.angle.max.nano_degrees)};
    case FieldKind::kWeight:
      return Weight{random.whole(0, Weight::kLimit)};
    case FieldKind::kChoice:
      return Choice{static_cast<int>(random.whole(0, static_cast<std::int64_t>(field.words.size()) - 1))};
  }
  return false;
}

}  // namespace

TEST_CASE("every member of a book's file is a field: what is put there stands there and in the file", "[book][field]") {
  Random random(5405);
  Book book = demo_book();
  for (int n = 0; n < property_cases() / 10'000; ++n) {
    book = random_edit(random, std::move(book));
    for (const std::string& path : paths_of(book)) {
      const auto field = field_at(book, path);
      if (!field) FAIL("no field " << path);
      auto same = with_field(book, path, field->value);
      // That somebody entered the crew is kept, were it the one that stood there.
      if (same && path.starts_with("raising.crew.")) same->raising.crew.entered = book.raising.crew.entered;
      if (!same || !(*same == book)) FAIL("what stands there is put there: " << path);
      if (!chance(random, 3)) continue;
      const FieldValue value = another(random, *field);
      const auto next = with_field(book, path, value);
      // A saw's or a style's own rule may refuse it.
      if (!next) continue;
      if (!(field_at(*next, path)->value == value)) FAIL("is not what was put there: " << path);
      const auto read = read_book(write_book(*next));
      if (!read) FAIL("does not come back: " << path << " " << read.error().where);
      const auto again = field_at(*read, path);
      if (!again || !(again->value == value)) FAIL("is another after the file: " << path);
    }
  }
}

TEST_CASE("undo of anything restores the book, redo brings the edit back", "[book]") {
  Random random(5401);
  History<Book> history(demo_book());
  for (int n = 0; n < property_cases() / 200; ++n) {
    const Book before = history.now();
    history.commit(random_edit(random, before));
    const Book after = history.now();
    if (after == before) continue;
    history.undo();
    if (!(history.now() == before)) FAIL("edit " << n);
    history.redo();
    if (!(history.now() == after)) FAIL("edit " << n);
    if (chance(random, 20)) history.undo();
  }
}

TEST_CASE("any book is saved, loaded and saved again byte for byte", "[book]") {
  Random random(5402);
  Book book = demo_book();
  for (int n = 0; n < property_cases() / 200; ++n) {
    book = random_edit(random, std::move(book));
    const std::string bytes = write_book(book);
    auto again = read_book(bytes);
    if (!again) FAIL("edit " << n << ": " << again.error().where);
    if (write_book(*again) != bytes) FAIL("edit " << n);
    again->kept = book.kept;
    if (!(*again == book)) FAIL("edit " << n);
    if (chance(random, 10)) book.kept = bytes;
  }
}

TEST_CASE("solving again after an edit gives what solving afresh gives", "[book]") {
  Random random(5403);
  Book book = demo_book();
  BookModel model = solve(book);
  for (int n = 0; n < property_cases() / 2000; ++n) {
    const Book next = random_edit(random, book);
    model = solve_again(next, book, model);
    book = next;
    const BookModel fresh = solve(book);
    REQUIRE(model.frame->has_value() == fresh.frame->has_value());
    if (!*model.frame) continue;
    REQUIRE((*model.frame)->timbers.size() == (*fresh.frame)->timbers.size());
    const FrameTotals a = totals_of(**model.frame), b = totals_of(**fresh.frame);
    REQUIRE(a.weight_lb == b.weight_lb);
    REQUIRE(a.weight_lb - a.weight_lb == 0);
  }
}

TEST_CASE("lists of good timbers go out and come back, whatever their measures", "[csv]") {
  Random random(5404);
  for (int n = 0; n < property_cases() / 500; ++n) {
    std::vector<HandTimber> timbers;
    for (int i = 0; i < 3; ++i) {
      timbers.push_back(random_hand(random));
      timbers.back().mark = "T" + std::to_string(i);
      timbers.back().species = common_species()[static_cast<std::size_t>(random.whole(0, 9))];
    }
    const CsvTimbers got = read_timbers_csv(write_timbers_csv(timbers), BareUnit::kInch, common_species());
    // Those that make no timber are told, the others come back as they were.
    std::size_t at = 0;
    for (const HandTimber& t : timbers)
      if (at < got.timbers.size() && got.timbers[at].mark == t.mark && !(got.timbers[at++] == t)) FAIL("list " << n);
    if (at != got.timbers.size() || (got.troubles.empty() && at != 3)) FAIL("list " << n);
  }
}
