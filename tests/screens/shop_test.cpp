// The Shop place by finger: ticks that are made by holding, pending until they are on disk, kept over a restart, passed
// on and taken in. What a crew may count on stands in the tests' names; numbers are those of the demo's own sheet.
#include <catch_amalgamated.hpp>
#include <set>

#include "bed.h"
#include "book/book.h"
#include "book/places.h"
#include "model/shop_model.h"
#include "shop/log/chunk.h"
#include "shop/log/log_file.h"
#include "words/strings.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct ShopBed : Bed {
  explicit ShopBed(float width = 390, float height = 844) : Bed(width, height) { tap("place.shop"); }
  /// A finger that stays.
  void hold(std::string_view key, double ms) {
    see(key);
    const Rect r = item(key).rect;
    finger(TouchPhase::kDown, r.x + r.w / 2, r.y + r.h / 2);
    for (double t = 0; t < ms; t += 50) frame(50);
    finger(TouchPhase::kUp, r.x + r.w / 2, r.y + r.h / 2);
    rest();
  }
  /// The same through the mirror, whatever lies over it.
  void hold_by_name(std::string_view key) {
    app.act({Action::Kind::kHold, std::string(key), {}, 0});
    rest();
  }
  void open_post() {
    tap("shop.all");
    tap("shop.timber.P-A1");
  }
  /// The card on which a timber's plate is seated, the plate that was fitted there numbered.
  void open_seat(const std::string& mark, const std::string& seat, const std::string& number) {
    press("shop.all");
    press("shop.timber." + mark);
    commit_text("shop.plate." + seat, number);
    press("shop.step." + seat);
  }
  /// On the first post, by a full disk.
  void refuse_a_tick() {
    open_post();
    platform.slow_disk = true;
    hold("shop.next.tick", 700);
    answer_appends("quota");
    rest();
    REQUIRE(shows("notice.tick_failed"));
  }
  [[nodiscard]] std::vector<Event> events() const {
    std::vector<Event> out;
    for (const auto& a : platform.on_disk)
      for (const LogRecord& r : a.records) out.push_back(*read_event(r.bytes));
    return out;
  }
  void reopen(ShopBed& next) const {
    next.platform.saves = platform.saves;
    next.platform.on_disk = platform.on_disk;
    next.app.load(platform.stored("kit"), platform.stored("places"));
    next.rest();
    next.tap("place.shop");
  }
};

}  // namespace

TEST_CASE("the shop's pages: every key stands once and has a name", "[screens][shop]") {
  const std::string language(language_tag(static_cast<Language>(GENERATE(range<std::size_t>(0, kLanguageCount)))));
  ShopBed bed(320, 568);
  bed.speak(language, 320, 568);
  const auto sound = [&] { CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty()); };
  sound();
  for (const char* row :
       {"shop.all", "shop.place.saw", "shop.place.layout", "shop.bent.1", "shop.rules", "shop.pass"}) {
    INFO(row);
    bed.tap(row);
    sound();
    bed.tap("bar.back");
  }
  bed.open_post();
  sound();
  bed.tap("shop.next.open");
  sound();
}

TEST_CASE("a tick wants a hold: a touch makes none", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.tap("shop.next.tick");
  CHECK(bed.events().empty());
  bed.hold("shop.next.tick", 700);
  REQUIRE(bed.events().size() == 1);
  CHECK(bed.events().front().action == EventAction::kDone);
  CHECK(bed.events().front().timber == "P-A1");
}

TEST_CASE("a tick shows as pending until it is on disk", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.platform.slow_disk = true;
  bed.hold("shop.next.tick", 700);
  REQUIRE(bed.platform.appends.size() == 1);
  const std::string row = "shop.step." + read_event(bed.platform.appends[0].records[0].bytes)->step;
  CHECK(bed.value(row).find("being saved") != std::string::npos);
  CHECK(bed.value("bar.menu") == "Saving…");
  bed.answer_appends();
  bed.rest();
  CHECK(bed.value(row).find("being saved") == std::string::npos);
}

TEST_CASE("a tick that the storage refused is said, kept on screen and handed over again", "[screens][shop]") {
  ShopBed bed;
  bed.refuse_a_tick();
  CHECK(bed.events().empty());
  bed.tap("notice.tick_again");
  bed.answer_appends();
  bed.rest();
  CHECK_FALSE(bed.shows("notice.tick_failed"));
  CHECK(bed.events().size() == 1);
}

TEST_CASE("ticks are there after a restart, and a taken-back one is an event of its own", "[screens][shop]") {
  ShopBed bed;
  bed.press("shop.who");
  bed.commit_text("shop.who", "Ana");
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  bed.hold("shop.next.tick", 700);
  const std::vector<Event> told = bed.events();
  REQUIRE(told.size() == 2);
  CHECK(told[0].who == "Ana");
  CHECK(told[1].sequence == 2);
  CHECK(told[0].step != told[1].step);
  ShopBed again;
  bed.reopen(again);
  again.open_post();
  CHECK(again.value("shop.step." + told[0].step).find("Ana") != std::string::npos);
  again.tap("shop.step." + told[0].step);
  again.hold("shop.step.claim.0.back", 700);
  REQUIRE(again.events().size() == 3);
  CHECK(again.events()[2].action == EventAction::kTakenBack);
  CHECK(again.events()[2].sequence == 3);
}

TEST_CASE("one tick of four ticks off all its steps, each with its numbers", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.hold("shop.tick.cut", 700);
  const auto told = bed.events();
  REQUIRE(told.size() >= 2);
  for (const Event& e : told) CHECK(e.action == EventAction::kDone);
  CHECK_FALSE(bed.shows("shop.tick.cut"));
}

TEST_CASE("done on a card is the tick, and the next card comes up", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.tap("shop.next.open");
  const std::string first = bed.item("shop.step.title").name;
  bed.hold("shop.step.tick", 700);
  REQUIRE(bed.events().size() == 1);
  const std::string second = bed.item("shop.step.title").name;
  CHECK(second != first);
  bed.hold("shop.step.tick", 700);
  REQUIRE(bed.events().size() == 2);
  CHECK(bed.events()[0].step != bed.events()[1].step);
  bed.tap("shop.step.before");
  CHECK(bed.item("shop.step.title").name == second);
  CHECK_FALSE(bed.shows("shop.step.tick"));
  bed.tap("shop.step.on");  // to what is open
  CHECK(bed.shows("shop.step.tick"));
}

TEST_CASE("any timber and its next cut in four touches, its number on the card", "[screens][shop]") {
  ShopBed bed;
  bed.tap("place.frame");
  bed.tap("bar.find");
  bed.tap("go_to.kind.P");
  bed.tap("go_to.mark.P-A2");
  REQUIRE(bed.item("sheet.heading").name.starts_with("P-A2"));
  bed.tap("sheet.cuts");
  CHECK(bed.item("shop.step.place").name.starts_with("P-A2"));
  CHECK(bed.shows("shop.step.square"));
  CHECK(bed.shows("shop.step.tick"));
}

TEST_CASE("a timber's next step is set by the same words and numbers as on its card", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  const auto set = [&] {
    std::vector<std::string> said;
    for (const Item& i : bed.app.registry().items())
      if (i.key.starts_with("shop.step.number") || i.key.starts_with("shop.step.square") ||
          i.key.starts_with("shop.step.bore"))
        said.push_back(i.key + " " + i.name + " " + i.value);
    return said;
  };
  for (int step = 0; step < 6 && bed.shows("shop.next.tick"); ++step) {
    const auto on_the_page = set();
    CHECK_FALSE(on_the_page.empty());
    bed.tap("shop.next.open");
    CHECK(set() == on_the_page);
    bed.press("bar.back");
    bed.hold_by_name("shop.next.tick");
  }
}

TEST_CASE("a held timber is not ticked, and the shop leads to it", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  // One quiet line until it is wanted.
  CHECK_FALSE(bed.shows("shop.hold_reason.0"));
  bed.press("shop.stop");
  bed.press("shop.hold_reason.0");
  bed.hold("shop.hold_now", 700);
  REQUIRE(bed.events().size() == 1);
  CHECK(bed.events()[0].note == std::string(text(Msg::kHoldCheck, Language::kEn)));
  CHECK_FALSE(bed.shows("shop.next.tick"));
  CHECK_FALSE(bed.shows("shop.tick.cut"));
  bed.press("shop.next.open");
  CHECK_FALSE(bed.shows("shop.step.tick"));
  CHECK(bed.shows("shop.step.stopped"));
  for (int i = 0; i < 3; ++i) bed.tap("bar.back");
  bed.tap("shop.held");
  CHECK(bed.shows("shop.timber.P-A1"));
  CHECK_FALSE(bed.shows("shop.timber.P-A2"));
}

TEST_CASE("one saw setting for many alike timbers is ticked with one hold", "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.place.saw");
  bed.press("shop.later");
  bed.hold("shop.setting.0.all", 700);
  const std::vector<Event> told = bed.events();
  REQUIRE(told.size() >= 2);
  for (const Event& e : told) {
    CHECK(e.action == EventAction::kDone);
    CHECK_FALSE(e.value.empty());
  }
}

TEST_CASE("what is alike on many timbers is ticked with one hold at any workplace, each on its own timber",
          "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.place.layout");
  std::string row;
  for (const Item& item : bed.app.registry().items())
    if (row.empty() && item.key.find(".alike.") != std::string::npos) row = item.key;
  REQUIRE_FALSE(row.empty());
  CHECK_FALSE(bed.shows(row + ".all"));  // looked at first
  bed.press(row);
  bed.hold(row + ".all", 700);
  const std::vector<Event> told = bed.events();
  REQUIRE(told.size() >= 2);
  std::set<std::string> timbers;
  for (const Event& e : told) timbers.insert(e.timber);
  CHECK(timbers.size() == told.size());
}

TEST_CASE("a workplace opens with what can be made now; what comes after other work is folded in one row",
          "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.place.saw");
  // Nothing is laid out yet: all of it waits, and it is said for what.
  REQUIRE(bed.shows("shop.later"));
  CHECK(bed.item("shop.later").value == "Layout");
  CHECK_FALSE(bed.shows("shop.setting.0.all"));
  const std::string first = bed.item("shop.first.layout").name;
  CHECK(first.starts_with("Lay out first: "));
  CHECK(first.ends_with(" timbers"));
  bed.press("shop.later");
  CHECK(bed.shows("shop.setting.0.all"));
  bed.press("shop.later");
  CHECK_FALSE(bed.shows("shop.setting.0.count"));
  bed.press("shop.first.layout");
  CHECK(bed.item("shop.place.title").name == "Layout");
  bed.press("bar.back");
  bed.press("bar.back");
  // One post laid out: its ends are what is to be sawn now, the others wait behind them.
  bed.press("shop.all");
  bed.press("shop.timber.P-A1");
  bed.hold_by_name("shop.next.tick");
  bed.press("bar.back");
  bed.press("bar.back");
  bed.press("shop.place.saw");
  REQUIRE(bed.shows("shop.later"));  // as it was left: folded
  int of_post = 0;
  for (const Item& item : bed.app.registry().items())
    if (item.key.starts_with("shop.setting.")) {
      INFO(item.key);
      of_post += item.key.find("P-A1") != std::string::npos ? 1 : 0;
      CHECK(item.key.find("alike") == std::string::npos);
      CHECK(item.name.find("P-A2") == std::string::npos);
    }
  CHECK(of_post > 0);
}

TEST_CASE("what is the same on several timbers is one row at a workplace, unfolded by a tap", "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.place.saw");
  bed.press("shop.later");
  const auto rows = [&] {
    std::vector<std::string> keys;
    for (const Item& item : bed.app.registry().items())
      if (item.key.starts_with("shop.setting.") && item.name.find(" · ") != std::string::npos)
        keys.emplace_back(item.key);
    return keys;
  };
  const std::vector<std::string> folded = rows();
  const auto alike = std::find_if(folded.begin(), folded.end(),
                                  [](const std::string& key) { return key.find(".alike.") != std::string::npos; });
  REQUIRE(alike != folded.end());
  CHECK(bed.item(*alike).name.find(", ") != std::string::npos);
  CHECK(bed.item(*alike).value.find("cuts") != std::string::npos);
  const std::size_t before = folded.size();
  bed.press(*alike);
  CHECK(rows().size() >= before + 2);
  bed.press(*alike);
  CHECK(rows().size() == before);
}

TEST_CASE("a held timber is let go only by name and with a reason", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.press("shop.stop");
  bed.press("shop.hold_why");
  bed.commit_text("shop.hold_why", "check in the heart");
  bed.hold("shop.hold_now", 700);
  REQUIRE(bed.shows("shop.hold"));
  CHECK_FALSE(bed.shows("shop.release"));
  bed.press("shop.release_why");
  bed.commit_text("shop.release_why", "turned end for end");
  CHECK(bed.shows("shop.release_needs"));
  bed.tap("bar.back");
  bed.tap("bar.back");
  bed.press("shop.who");
  bed.commit_text("shop.who", "Ana");
  bed.open_post();
  bed.press("shop.release_why");
  bed.commit_text("shop.release_why", "turned end for end");
  bed.hold("shop.release", 700);
  CHECK_FALSE(bed.shows("shop.hold"));
  CHECK(bed.events().back().note == "turned end for end");
}

TEST_CASE("another phone's log is taken in by file, and only once", "[screens][shop]") {
  ShopBed one, two;
  one.open_post();
  one.hold("shop.next.tick", 700);
  one.tap("bar.back");
  one.tap("bar.back");
  one.press("shop.pass");
  one.press("pass.share");
  const std::string file = one.platform.shared_bytes;
  REQUIRE(read_log(file));
  two.app.on({EventKind::kFileOpened, "log.txt", file, 0});
  two.rest();
  two.tap("receive.take");
  CHECK(two.events() == one.events());
  two.app.on({EventKind::kFileOpened, "log.txt", file, 0});
  two.rest();
  CHECK(two.shows("receive.nothing"));
  two.app.on({EventKind::kFileOpened, "log.txt", file.substr(0, file.size() - 4), 0});
  two.rest();
  CHECK(two.shows("receive.refused"));
  CHECK(two.events() == one.events());
}

TEST_CASE("codes go from screen to camera in any order, twice if need be", "[screens][shop]") {
  ShopBed one, two;
  one.open_post();
  one.hold("shop.tick.cut", 700);
  one.tap("bar.back");
  one.tap("bar.back");
  one.press("shop.pass");
  one.press("pass.share");
  const auto pieces = make_chunks(one.platform.shared_bytes);
  REQUIRE(pieces);
  two.tap("shop.pass");
  two.tap("pass.scan");
  CHECK(two.platform.scanning);
  for (auto piece = pieces->rbegin(); piece != pieces->rend(); ++piece)
    for (int twice = 0; twice < 2; ++twice) {
      two.app.on({EventKind::kScanned, "scan", *piece, 0});
      two.rest();
    }
  CHECK_FALSE(two.platform.scanning);
  two.tap("receive.take");
  CHECK(two.events() == one.events());
}

TEST_CASE("a label's code opens its timber", "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.pass");
  bed.app.on({EventKind::kScanned, "scan", label_text({"demo", "P-A2"}), 0});
  bed.rest();
  CHECK(bed.shows("shop.next"));
  CHECK(bed.item("shop.mark").name.find("P-A2") != std::string::npos);
}

TEST_CASE("the lead leaves a step out for a kind of timber, and brings it back", "[screens][shop]") {
  ShopBed bed;
  bed.tap("shop.rules");
  bed.tap("rules.kind.post");
  REQUIRE(bed.shows("rules.step.finish"));
  bed.tap("rules.step.finish");
  bed.tap("rules.drop");
  bed.tap("bar.back");
  CHECK_FALSE(bed.shows("rules.step.finish"));
  bed.tap("rules.dropped.finish");
  bed.tap("rules.restore");
  bed.tap("bar.back");
  CHECK(bed.shows("rules.step.finish"));
}

TEST_CASE("a tick that the storage refused stays with its book while another one lies open", "[screens][shop]") {
  ShopBed bed;
  bed.refuse_a_tick();
  const std::string first = bed.app.registry().find("bar.menu") != nullptr ? "demo" : "";
  bed.press("place.frame");
  bed.press("frame.row.books");
  bed.press("books.new");
  bed.press("new.list");
  bed.press("place.shop");
  bed.rest();
  REQUIRE(bed.shows("notice.tick_failed"));
  bed.press("notice.tick_again");
  REQUIRE(bed.platform.appends.size() == 1);
  CHECK(bed.platform.appends[0].log == first);
  bed.answer_appends();
  bed.rest();
  CHECK_FALSE(bed.shows("notice.tick_failed"));
  CHECK(bed.events().size() == 1);
}

TEST_CASE("one step is held by name and reason and released the same way", "[screens][shop]") {
  ShopBed bed;
  bed.commit_text("shop.who", "Ana");
  bed.open_post();
  bed.tap("shop.next.open");
  bed.press("shop.stop");
  bed.commit_text("shop.hold_why", "knot in the shoulder");
  bed.hold("shop.hold_now", 700);
  REQUIRE(bed.events().size() == 1);
  CHECK(bed.events()[0].action == EventAction::kHeld);
  CHECK_FALSE(bed.events()[0].step.empty());
  REQUIRE(bed.shows("shop.hold"));
  bed.commit_text("shop.release_why", "cut away");
  bed.hold("shop.release", 700);
  REQUIRE(bed.events().size() == 2);
  CHECK(bed.events()[1].action == EventAction::kReleased);
  CHECK(bed.events()[1].step == bed.events()[0].step);
  CHECK_FALSE(bed.shows("shop.hold"));
}

TEST_CASE("times are told by the clock on the wall", "[screens][shop]") {
  ShopBed bed;
  bed.platform.clock_ahead = -300;
  bed.platform.wall_clock = 1'764'000'000'000;  // 2025-11-24 16:00 UTC
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  CHECK(bed.value("shop.step." + bed.events()[0].step).find("11-24 11:00") != std::string::npos);
}

TEST_CASE("the 3D view tells how far the shop is, by pattern and in figures", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.hold("shop.tick.cut", 700);
  bed.press("place.frame");
  bed.press("frame.row.view");
  CHECK_FALSE(bed.shows("view.legend.1"));
  bed.press("view.progress");
  CHECK(bed.value("view.legend.1") == "1");
  CHECK(bed.value("view.legend.5") == "0");
  const int timbers = std::stoi(bed.value("view.legend.0")) + 1;
  bed.press("place.shop");
  bed.press("bar.back");
  bed.press("shop.timber.P-A2");
  bed.press("shop.stop");
  bed.commit_text("shop.hold_why", "check along the heart");
  bed.hold_by_name("shop.hold_now");
  bed.press("place.frame");
  CHECK(bed.value("view.legend.5") == "1");
  CHECK(bed.value("view.legend.0") == std::to_string(timbers - 2));
}

/// Every end of the demo that a plate is seated in: the timber's mark and the step.
std::vector<std::pair<std::string, std::string>> plate_seats() {
  const Book book = demo_book();
  const BookModel model = solve(book);
  std::vector<std::pair<std::string, std::string>> seats;
  const std::vector<TimberWork> works = work_of(book, model, {}).value();
  for (const TimberWork& work : works)
    for (const WorkStep& step : work.steps)
      if (step.work == StepWork::kSeatPlate)
        seats.emplace_back((**model.frame).timbers[static_cast<std::size_t>(work.timber)].mark, step.id);
  return seats;
}

TEST_CASE("a plate in hand is compared with the one that was fitted here", "[screens][shop]") {
  ShopBed bed;
  const auto [mark, seat] = plate_seats().front();
  bed.open_seat(mark, seat, "17");
  CHECK(bed.shows("shop.pair.how"));
  bed.commit_text("shop.pair.number", "18");
  CHECK(bed.item("shop.pair.answer").name.find("17") != std::string::npos);
  // The wrong plate in hand stops the step, until the right one is.
  CHECK(bed.item("shop.plate_stops").name.find("plate 18 is not the one for this end. 17 belongs here.") !=
        std::string::npos);
  CHECK(bed.shows("shop.step.stopped"));
  CHECK_FALSE(bed.shows("shop.step.tick"));
  bed.commit_text("shop.pair.number", "17");
  CHECK(bed.item("shop.pair.answer").name.find("17 belongs here") != std::string::npos);
  CHECK(bed.shows("shop.step.tick"));
  CHECK_FALSE(bed.shows("shop.plate_stops"));
}

TEST_CASE("the number on the plate is asked for where the plate is seated; later cards say it", "[screens][shop]") {
  ShopBed bed;
  const auto [mark, seat] = plate_seats().front();
  bed.open_seat(mark, seat, "17");
  bed.press("shop.step.after");
  CHECK_FALSE(bed.shows("shop.pair.number"));
  CHECK_FALSE(bed.shows("shop.pair.answer"));
  bed.press("shop.pair.ask");
  REQUIRE(bed.shows("shop.pair.number"));
  bed.commit_text("shop.pair.number", "17");
  for (int card = 0; card < 6; ++card) {
    bed.press("shop.step.after");
    CAPTURE(card, bed.item("shop.step.title").name);
    CHECK_FALSE(bed.shows("shop.pair.number"));
    CHECK_FALSE(bed.shows("shop.pair.ask"));
    CHECK(bed.item("shop.pair.answer").name.find("17 belongs here") != std::string::npos);
  }
}

TEST_CASE("a plate number that stands at two ends stops both", "[screens][shop]") {
  ShopBed bed;
  const auto seats = plate_seats();
  REQUIRE(seats.size() > 2);
  const auto& [mark, seat] = seats.front();
  const auto& [other, other_seat] = seats.back();
  REQUIRE(mark != other);
  bed.press("shop.all");
  bed.press("shop.timber." + mark);
  bed.commit_text("shop.plate." + seat, "17");
  bed.press("bar.back");
  bed.press("shop.timber." + other);
  bed.commit_text("shop.plate." + other_seat, "17");
  bed.press("shop.step." + other_seat);
  CHECK(bed.item("shop.plate_stops").name.find("here and at " + mark) != std::string::npos);
  CHECK_FALSE(bed.shows("shop.step.tick"));
}

TEST_CASE("the bench gives slot, gauge, depth and pins in four taps, with no book", "[screens][shop]") {
  const auto [width, height] =
      GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844}, std::pair<float, float>{844, 390},
               std::pair<float, float>{820, 1180}, std::pair<float, float>{568, 320});
  CAPTURE(width, height);
  Bed bed(width, height);
  REQUIRE(bed.shows("place.shop"));
  bed.tap("place.shop");  // 1
  bed.see("shop.bench");
  bed.tap("shop.bench");  // 2
  bed.see("bench.sections.1");
  CHECK(bed.item("bench.sections.1").checked);  // an 8 x 8 and 1/4 in stand there to begin with
  bed.tap("bench.sections.2");                  // 3
  bed.see("bench.plates.1");
  bed.tap("bench.plates.1");  // 4
  CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
  // (8 - 3/8 - 1/16) / 2 = 3 25/32.
  CHECK(bed.value("bench.gauge") == "3 25\u204432\u2033");
  CHECK(bed.value("bench.slot") == "7\u204416\u2033");
  CHECK(bed.value("bench.depth") == "7 3\u20444\u2033");
  CHECK(bed.value("bench.pin") == "6\u2033");
  CHECK(read_places(bed.platform.stored("places"))->bench.section.depth == Length::inches(10));
}

TEST_CASE("a measure on the bench's drawing is tapped and typed", "[screens][shop]") {
  Bed bed;
  bed.tap("place.shop");
  bed.tap("shop.bench");
  bed.see("bench.end.plate.thickness");
  bed.tap("bench.end.plate.thickness");
  bed.type("3/8");
  bed.tap("keypad.done");
  CHECK(bed.value("bench.slot") == "7\u204416\u2033");
}

TEST_CASE("one name's events are left out of the shop, named by who and when, and taken in again", "[screens][shop]") {
  ShopBed bed;
  bed.press("shop.who");
  bed.commit_text("shop.who", "Ana");
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  Log hostile{std::string("demo"), {}};
  for (std::uint64_t i = 0; i < 300; ++i) {
    Event e;
    e.device = 500 + i;
    e.logical = i + 2;
    e.wall = 1'764'000'000'000;
    e.who = "Mallet";
    e.timber = "P-A1";
    e.step = "label";
    hostile.events.push_back(e);
  }
  bed.app.on({EventKind::kFileOpened, "bad.log", write_log(hostile), 0});
  bed.rest();
  bed.tap("receive.take");
  REQUIRE(bed.shows("shop.conflicts"));
  bed.press("shop.writers");
  CHECK(bed.item("writers.0").name.find("Mallet") != std::string::npos);
  CHECK(bed.item("writers.0").value.find("300") != std::string::npos);
  CHECK(bed.item("writers.0").value.find("11-24") != std::string::npos);
  bed.tap("writers.0");
  bed.hold("writer.leave_out", 700);
  bed.tap("bar.back");
  bed.tap("bar.back");
  CHECK_FALSE(bed.shows("shop.conflicts"));
  // After a restart too.
  ShopBed again;
  bed.reopen(again);
  CHECK_FALSE(again.shows("shop.conflicts"));
  again.press("shop.writers");
  again.tap("writers.0");
  again.hold("writer.take_in", 700);
  again.tap("bar.back");
  again.tap("bar.back");
  CHECK(again.shows("shop.conflicts"));
  // Nothing of it was lost meanwhile, and this phone's own tick neither.
  again.tap("shop.pass");
  CHECK(again.value("pass.events") == "301");
}

TEST_CASE("a step that very many phones finished shows the first of them", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  const Event own = bed.events()[0];
  Log hostile{std::string("demo"), {}};
  for (std::uint64_t i = 0; i < 5000; ++i) {
    Event e = own;
    e.device = 500 + i;
    e.sequence = 1;
    e.logical = i + 2;
    hostile.events.push_back(e);
  }
  bed.app.on({EventKind::kFileOpened, "bad.log", write_log(hostile), 0});
  bed.rest();
  bed.tap("receive.take");
  bed.open_post();
  bed.press("shop.step." + own.step);
  CHECK(bed.shows("shop.step.claim.0"));
  CHECK(bed.shows("shop.step.claim.19"));
  CHECK_FALSE(bed.shows("shop.step.claim.20"));
  CHECK(bed.item("shop.step.claims_more").name.find("4981") != std::string::npos);
  bed.tap("place.shop");
  CHECK(bed.shows("shop.conflicts"));
}

TEST_CASE("a record in storage whose time nothing explains stops no tick", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  Event far;
  far.device = 9;
  far.logical = kLastTime;
  far.timber = "P-A1";
  far.step = "label";
  std::string line = write_event(far);
  line.pop_back();
  bed.platform.on_disk.push_back({"demo", 99, {{"0000000000000009", 1, line}}});
  ShopBed again;
  bed.reopen(again);
  CHECK(again.shows("shop.damaged"));
  again.open_post();
  again.hold("shop.next.tick", 700);
  CHECK(again.platform.on_disk.size() == bed.platform.on_disk.size() + 1);
}

TEST_CASE("a copied phone counts under a number of its own once it has met its twin; no tick is lost",
          "[screens][shop]") {
  ShopBed one;
  one.open_post();
  one.hold("shop.next.tick", 700);
  ShopBed two;
  one.reopen(two);
  two.platform.wall_clock += 60'000;
  two.open_post();
  for (ShopBed* bed : {&one, &two}) {
    bed->hold("shop.next.tick", 700);
    REQUIRE(bed->events().size() == 2);
  }
  const Event twin = one.events()[1], own = two.events()[1];
  REQUIRE(twin.id() == own.id());
  REQUIRE_FALSE(twin == own);
  two.app.on({EventKind::kFileOpened, "log.txt", write_log({"demo", one.events()}), 0});
  two.rest();
  two.tap("receive.take");
  REQUIRE(two.events().size() == 3);
  CHECK(two.events()[2] == twin);
  two.tap("place.shop");
  two.open_post();
  two.hold("shop.next.tick", 700);
  REQUIRE(two.events().size() == 4);
  const Event next = two.events()[3];
  CHECK(next.device != own.device);
  CHECK(next.sequence == 1);
  CHECK(next.logical > own.logical);
  CHECK(two.platform.stored("device") == id_text(next.id()).substr(0, 16));
}

TEST_CASE("a tick that was refused takes the next number where another window has used its own", "[screens][shop]") {
  ShopBed bed;
  bed.refuse_a_tick();
  Event other{0xb1, 1, 1, 5, EventAction::kDone, "Bo", "P-A2", "own.1", {}, {}};
  REQUIRE(bed.platform.stored("device") == id_text(other.id()).substr(0, 16));
  std::string line = write_event(other);
  line.pop_back();
  bed.platform.on_disk.push_back({"demo", 0, {{id_text(other.id()).substr(0, 16), 1, line}}});
  bed.app.load(bed.platform.stored("kit"), bed.platform.stored("places"));
  bed.rest();
  bed.press("notice.tick_again");
  bed.answer_appends();
  bed.rest();
  const std::vector<Event> events = bed.events();
  REQUIRE(events.size() == 2);
  CHECK(events[1].sequence == 2);
  CHECK(events[1].logical > other.logical);
}

TEST_CASE("a snapshot of another log is not used: the log is read whole", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.hold("shop.next.tick", 700);
  Log many{"demo", {}};
  for (std::uint64_t n = 1; n <= 300; ++n)
    add_event(many, {0xa7, n, n, 5, EventAction::kDone, "Bo", "P-A2", "own." + std::to_string(n), {}, {}});
  bed.app.on({EventKind::kFileOpened, "log.txt", write_log(many), 0});
  bed.rest();
  bed.tap("receive.take");
  REQUIRE_FALSE(bed.platform.stored("demo.shop").empty());
  ShopBed next;
  next.platform.saves = bed.platform.saves;
  next.platform.on_disk = {bed.platform.on_disk.front()};
  next.app.load(bed.platform.stored("kit"), bed.platform.stored("places"));
  next.platform.begins_with_known = false;
  next.rest();
  next.tap("place.shop");
  next.open_post();
  next.hold("shop.next.tick", 700);
  CHECK(next.events().back().sequence == 2);
  CHECK(next.events().back().logical == 2);
}

TEST_CASE("the next card is read from its top", "[screens][shop]") {
  Bed bed(320, 568);
  bed.tap("place.shop");
  bed.tap("shop.all");
  bed.tap("shop.timber.P-A1");
  bed.tap("shop.next.open");
  bed.tap("shop.step.after");
  bed.press("shop.stop");
  bed.see("shop.hold_why");
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);
  bed.tap("shop.step.after");
  CHECK(bed.app.registry().scroll_areas().front().offset == 0);
}

TEST_CASE("the bench names what has no room and takes the most that has", "[screens][shop]") {
  Bed bed;
  bed.tap("place.shop");
  bed.tap("shop.bench");
  bed.tap("bench.plate.pins.plug");
  bed.type("5");
  bed.tap("keypad.done");
  // (8 - 5/16) / 2 = 3 27/32, said to the settings' sixteenth, never more.
  CHECK(bed.item("bench.refused").name.find("Kept free for a plug: 3 13\u204416\u2033 at most") != std::string::npos);
  bed.tap("bench.use_limit");
  CHECK_FALSE(bed.shows("bench.refused"));
  CHECK(bed.value("bench.pin") == bed.value("bench.slot"));
}

TEST_CASE("a label's card says the mark to write, a trial's card whom and what it is tried with", "[screens][shop]") {
  ShopBed bed;
  bed.open_post();
  bed.press("shop.step.label");
  CHECK(bed.value("shop.step.word") == "P-A1");
  bed.press("bar.back");
  bed.press("shop.step.fit/b");
  CHECK(bed.item("shop.step.word").name == "Mortise and tenon");
  CHECK(bed.value("shop.step.word").starts_with("L-"));
}

TEST_CASE("on a narrow phone a card's cautions are a line that names the danger, the rest a tap away",
          "[screens][shop]") {
  ShopBed bed(320, 568);
  bed.open_post();
  bed.press("shop.step.end_cut/a");
  const Rect folded = bed.item("shop.step.caution").rect;
  CHECK(bed.item("shop.step.caution").name.find("Kickback") != std::string::npos);
  CHECK(folded.h <= 56);
  bed.press("shop.step.caution");
  CHECK(bed.item("shop.step.caution").rect.h > folded.h);
  CHECK(bed.item("shop.step.caution").name.find("stand out of the blade") != std::string::npos);
}
