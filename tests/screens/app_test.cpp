#include <catch_amalgamated.hpp>

#include "bed.h"
#include "book/kit.h"
#include "book/places.h"
#include "ui/gesture.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

void to_settings(Bed& bed) {
  bed.tap("bar.menu");
  bed.tap("menu.settings");
}

}  // namespace

TEST_CASE("a first visit shows the caution, then a worked roof", "[screens]") {
  Bed bed(390, 844, false);
  REQUIRE(bed.shows("welcome.caution"));
  REQUIRE_FALSE(bed.shows("bar.menu"));
  bed.tap("welcome.understood");
  REQUIRE(bed.shows("place.rafter"));
  REQUIRE(bed.item("place.rafter").checked);
  REQUIRE(read_kit(bed.platform.stored("kit"))->settings.caution_seen);
}

TEST_CASE("nothing is drawn while nothing changes", "[screens]") {
  Bed bed;
  bed.rest();
  REQUIRE(bed.frame() < 0);
  const auto revision = bed.app.registry().revision();
  bed.app.mouse_move(5, 5);
  REQUIRE(bed.rest() <= 4);
  REQUIRE(bed.frame(60000) < 0);
  REQUIRE(bed.app.registry().revision() == revision);
}

TEST_CASE("every key stands once, has a name and is large enough for a finger", "[screens]") {
  const auto [width, height] =
      GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844}, std::pair<float, float>{844, 390},
               std::pair<float, float>{820, 1180}, std::pair<float, float>{568, 320});
  CAPTURE(width, height);
  Bed bed(width, height);
  for (const char* place : {"place.angles", "place.rafter"}) {
    bed.tap(place);
    CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
  }
  bed.tap("bar.menu");
  CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
  for (const char* page : {"menu.saws", "menu.settings", "menu.help"}) {
    bed.tap(page);
    CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
    bed.tap("bar.back");
  }
}

TEST_CASE("a pushed page comes back by the key at the bottom left, and by Escape", "[screens]") {
  Bed bed;
  bed.tap("bar.menu");
  bed.tap("menu.help");
  REQUIRE(bed.item("page.title").name == "Help");
  const Rect back = bed.item("bar.back").rect;
  REQUIRE(back.x < 48);
  REQUIRE(back.y > 844 / 2);
  bed.tap("bar.back");
  REQUIRE(bed.shows("menu.help"));
  bed.key(Key::kEscape);
  REQUIRE(bed.item("page.title").name == "Rafter");
}

TEST_CASE("a finger scrolls a page and presses nothing; the wheel does too", "[screens]") {
  Bed bed(320, 568);
  bed.tap("bar.menu");
  bed.tap("menu.help");
  const ScrollArea before = bed.app.registry().scroll_areas().front();
  REQUIRE(before.max_offset > 200);
  bed.drag(160, 400, 160, 200);
  const float scrolled = bed.app.registry().scroll_areas().front().offset;
  REQUIRE(scrolled > 150);
  bed.app.mouse_move(160, 300);
  bed.app.mouse_wheel(0, -1);
  bed.rest();
  REQUIRE(bed.app.registry().scroll_areas().front().offset > scrolled);
}

TEST_CASE("the wheel scrolls a new page at once, with the pointer where it lay", "[screens]") {
  Bed bed(320, 568);
  bed.tap("place.raising");
  bed.app.mouse_move(160, 300);
  bed.app.mouse_wheel(0, -1);
  bed.rest();
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);
  bed.press("raising.loads");
  REQUIRE(bed.app.registry().scroll_areas().front().offset == 0);
  bed.app.mouse_wheel(0, -1);
  bed.rest();
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);
}

TEST_CASE("settings change the screen at once and are stored", "[screens]") {
  Bed bed;
  to_settings(bed);
  bed.tap("settings.glove");
  REQUIRE(bed.item("settings.glove").checked);
  bed.rest();
  REQUIRE(bed.item("bar.lock").rect.w >= 64);
  REQUIRE(read_kit(bed.platform.stored("kit"))->settings.glove);
  bed.tap("settings.theme.2");
  REQUIRE(bed.app.dark());
  bed.tap("settings.language.2");
  REQUIRE(bed.app.language() == "es");
  REQUIRE(bed.item("page.title").name == "Ajustes");
  bed.tap("settings.awake");
  REQUIRE(bed.platform.awake);
  bed.set_number("settings.text", 200);
  REQUIRE(read_kit(bed.platform.stored("kit"))->settings.text_percent == 200);
  bed.rest();
}

TEST_CASE("the theme and the language follow the device until told otherwise", "[screens]") {
  Bed bed;
  Viewport v;
  v.prefers_dark = true;
  v.language = "es-MX";
  bed.view(v);
  REQUIRE(bed.app.dark());
  REQUIRE(bed.app.language() == "es");
}

TEST_CASE("saved is said when it is, failed when it failed", "[screens]") {
  Bed bed;
  to_settings(bed);
  bed.tap("settings.glove");
  REQUIRE(bed.value("bar.menu") == "Saving…");
  const auto answer = [&bed](EventKind kind, const char* why) {
    const auto saves = bed.platform.saves;
    for (const auto& s : saves) bed.app.on({kind, s.key, why, s.revision});
    bed.rest();
  };
  answer(EventKind::kSaveFailed, "quota");
  REQUIRE(bed.value("bar.menu") == "Not saved");
  REQUIRE(bed.shows("notice.save_failed"));
  const auto before = bed.platform.saves.size();
  bed.tap("notice.save_again");
  REQUIRE(bed.platform.saves.size() == before + 1);
  answer(EventKind::kSaved, "");
  REQUIRE(bed.value("bar.menu") == "Saved");
  REQUIRE_FALSE(bed.shows("notice.save_failed"));
}

TEST_CASE("stored bytes that cannot be read are never written over unasked", "[screens]") {
  Bed bed(390, 844, false);
  bed.app.load("{\"what\": ", "");
  bed.rest();
  bed.tap("welcome.understood");
  REQUIRE(bed.platform.stored("kit").empty());
  REQUIRE(bed.shows("notice.damaged"));
  to_settings(bed);
  bed.tap("settings.glove");
  REQUIRE(bed.platform.stored("kit").empty());
  bed.tap("notice.share_stored");
  REQUIRE(bed.platform.shared.size() == 1);
  bed.tap("notice.replace");
  bed.tap("notice.keep");
  REQUIRE(bed.platform.stored("kit").empty());
  bed.tap("notice.replace");
  bed.tap("notice.replace_now");
  REQUIRE(read_kit(bed.platform.stored("kit"))->settings.glove);
  REQUIRE_FALSE(bed.shows("notice.damaged"));
}

TEST_CASE("what was stored comes back", "[screens]") {
  std::string kit, places;
  {
    Bed bed;
    bed.tap("place.angles");
    to_settings(bed);
    bed.tap("settings.theme.2");
    kit = bed.platform.stored("kit");
    places = bed.platform.stored("places");
  }
  Bed bed(390, 844, false);
  bed.app.load(kit, places);
  bed.rest();
  REQUIRE_FALSE(bed.shows("welcome.caution"));
  REQUIRE(bed.item("place.angles").checked);
  REQUIRE(bed.app.dark());
}

TEST_CASE("with the rain lock on only scrolling and the ring live; a hold of 800 ms opens it", "[screens]") {
  Bed bed(320, 568);
  to_settings(bed);
  bed.tap("bar.lock");
  REQUIRE(bed.shows("lock.release"));
  const auto saves = bed.platform.saves.size();
  REQUIRE_FALSE(bed.item("settings.glove").enabled);
  bed.press("settings.glove");
  const Rect glove = bed.item("settings.theme.2").rect;
  bed.tap_at(glove.x + 5, glove.y + 5);
  bed.key(Key::kEscape);
  REQUIRE(bed.platform.saves.size() == saves);
  REQUIRE(bed.item("page.title").name == "Settings");
  bed.drag(200, 400, 200, 200);
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);

  const Rect ring = bed.item("lock.release").rect;
  const auto hold = [&](double ms) {
    bed.finger(TouchPhase::kDown, ring.x + 40, ring.y + ring.h / 2);
    for (double t = 0; t < ms; t += 20) bed.frame(20);
    bed.finger(TouchPhase::kUp, ring.x + 40, ring.y + ring.h / 2);
    bed.rest();
  };
  hold(600);
  REQUIRE(bed.shows("lock.release"));
  hold(1000);
  REQUIRE_FALSE(bed.shows("lock.release"));
  bed.tap("bar.lock");
  bed.app.act({Action::Kind::kHold, "lock.release", {}, 0});
  bed.rest();
  REQUIRE_FALSE(bed.shows("lock.release"));
}

TEST_CASE("a second tab reads and says so", "[screens]") {
  Bed bed;
  to_settings(bed);
  bed.app.on({EventKind::kReadOnly, {}, {}, 1});
  bed.rest();
  REQUIRE(bed.shows("notice.read_only"));
  REQUIRE_FALSE(bed.item("settings.glove").enabled);
  const auto saves = bed.platform.saves.size();
  bed.press("settings.glove");
  REQUIRE(bed.platform.saves.size() == saves);
  bed.tap("bar.back");
  REQUIRE(bed.shows("menu.help"));
  bed.tap("notice.write_here");
  REQUIRE(bed.platform.wants_to_write);
  bed.app.on({EventKind::kReadOnly, {}, {}, 2});
  bed.rest();
  REQUIRE(bed.shows("notice.unread"));
  bed.app.on({EventKind::kReadOnly, {}, {}, 3});
  bed.rest();
  REQUIRE(bed.shows("notice.newer"));
  REQUIRE_FALSE(bed.item("bar.menu").name.empty());
  bed.app.on({EventKind::kReadOnly, {}, {}, 0});
  bed.rest();
  REQUIRE_FALSE(bed.shows("notice.read_only"));
}

TEST_CASE("a new version is offered and taken only when told to", "[screens]") {
  Bed bed;
  bed.app.on({EventKind::kNewVersion, {}, {}, 0});
  bed.rest();
  REQUIRE_FALSE(bed.platform.updated);
  bed.tap("notice.use_new_version");
  REQUIRE(bed.platform.updated);
}

TEST_CASE("a saw is added, described by the keypad, renamed, deleted, and brought back", "[screens]") {
  Bed bed;
  bed.tap("bar.menu");
  bed.tap("menu.saws");
  const std::size_t had = first_kit().saws.size();
  bed.tap("saws.add");
  REQUIRE(bed.item("page.title").name == "Saw");
  bed.tap("saw.reach");
  REQUIRE(bed.shows("keypad.done"));
  bed.tap_keypad({"digit.6"});
  bed.tap("keypad.done");
  const auto saw = [&bed, had] { return read_kit(bed.platform.stored("kit"))->saws.at(had); };
  REQUIRE(saw().reach == Length::inches(6));
  bed.tap("saw.tilt");
  bed.tap_keypad({"digit.5", "digit.0", "point", "digit.5", "done"});
  REQUIRE(saw().max_tilt == Angle::from_degrees(50.5));

  bed.tap("saw.name");
  REQUIRE(bed.platform.text_requests.size() == 1);
  REQUIRE(bed.platform.text_requests[0].key == "saw.name");
  bed.app.on({EventKind::kTextCommitted, "saw.name", "Old faithful", 0});
  bed.rest();
  REQUIRE(saw().name == "Old faithful");

  bed.tap("saw.delete");
  REQUIRE(read_kit(bed.platform.stored("kit"))->saws.size() == had);
  REQUIRE(bed.item("page.title").name == "Saws");
  bed.tap("toast.undo");
  REQUIRE(saw().name == "Old faithful");
}

TEST_CASE("a toast goes by itself and asks for the frame that takes it away", "[screens]") {
  Bed bed;
  bed.tap("bar.menu");
  bed.tap("menu.saws");
  bed.tap("saws.0.edit");
  bed.tap("saw.delete");
  REQUIRE(bed.shows("toast"));
  const double wish = bed.frame();
  REQUIRE(wish > 0);
  bed.frame(wish + 1);
  REQUIRE_FALSE(bed.shows("toast"));
  bed.rest();
  REQUIRE(bed.frame() < 0);
}

TEST_CASE("the keypad fits every screen, and its keys every finger", "[screens]") {
  const auto [width, height] =
      GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844}, std::pair<float, float>{844, 390},
               std::pair<float, float>{820, 1180}, std::pair<float, float>{568, 320});
  const bool glove = GENERATE(false, true);
  CAPTURE(width, height, glove);
  Bed bed(width, height);
  if (glove) {
    to_settings(bed);
    bed.tap("settings.glove");
    bed.tap("bar.back");
    bed.tap("bar.back");
  }
  bed.tap("bar.menu");
  bed.tap("menu.saws");
  bed.tap("saws.0.edit");
  bed.tap("saw.reach");
  REQUIRE(bed.shows("keypad.done"));
  const float target = glove && height > 400 ? 64 : 48;
  for (const Item& item : bed.app.registry().items()) {
    if (!item.key.starts_with("keypad.")) continue;
    INFO(item.key);
    CHECK(item.rect.x >= 0);
    CHECK(item.rect.y >= 0);
    CHECK(item.rect.x + item.rect.w <= width);
    CHECK(item.rect.y + item.rect.h <= height);
    if (item.key.starts_with("keypad.digit.")) {
      CHECK(item.rect.w >= target);
      CHECK(item.rect.h >= target);
    }
  }
  // What is being changed stays in sight.
  CHECK(bed.item("saw.reach").rect.h >= 24);
}

TEST_CASE("the tape is read where the finger stands on it", "[screens]") {
  Bed bed;
  bed.tap("bar.menu");
  bed.tap("menu.saws");
  bed.tap("saws.0.edit");
  bed.tap("saw.reach");
  bed.tap_keypad({"digit.3"});
  const Rect tape = bed.item("keypad.tape").rect;
  const auto at = [&tape](float inch) { return tape.x + 14 + (tape.w - 28) * inch; };
  bed.drag(at(0.1F), tape.y + 20, at(0.376F), tape.y + 20);
  REQUIRE(bed.item("keypad.tape").number == 6);
  REQUIRE(bed.value("keypad.entry") == "3 3⁄8″");
  bed.set_number("keypad.tape", 8);
  REQUIRE(bed.value("keypad.entry") == "3 1⁄2″");
  bed.set_text("keypad.entry", "2' 1/2\"");
  REQUIRE(bed.value("keypad.echo").find("2′ 0 1⁄2″") != std::string::npos);
  bed.key(Key::kEscape);
  REQUIRE_FALSE(bed.shows("keypad.done"));
}

TEST_CASE("a measure on the drawing is changed by the keypad, stored, taken back and done again", "[screens]") {
  Bed bed(320, 568);
  const auto span = [&bed] { return read_places(bed.platform.stored("places"))->rafter.span; };
  REQUIRE_FALSE(bed.shows("bar.undo"));
  bed.tap("rafter.span");
  bed.tap_keypad({"digit.2", "digit.4"});
  // The drawing follows before it is done.
  REQUIRE(bed.value("rafter.span") == "24′ 0″");
  bed.tap("keypad.done");
  REQUIRE(bed.value("rafter.span") == "24′ 0″");
  REQUIRE(span() == Length::feet(24));
  bed.tap("bar.undo");
  REQUIRE(bed.value("rafter.span") == "16′ 0″");
  REQUIRE(span() == Length::feet(16));
  REQUIRE_FALSE(bed.shows("bar.undo"));
  bed.tap("bar.redo");
  REQUIRE(span() == Length::feet(24));
}

TEST_CASE("undo and redo say what they do", "[screens]") {
  Bed bed;
  bed.tap("rafter.span");
  bed.tap_keypad({"digit.2", "digit.4", "done"});
  REQUIRE(bed.item("bar.undo").name == "Undo: Span: 24′ 0″ to 16′ 0″");
  bed.tap("bar.undo");
  REQUIRE(bed.item("toast").name == "Span: 24′ 0″ to 16′ 0″");
  REQUIRE(bed.item("bar.redo").name == "Redo: Span: 16′ 0″ to 24′ 0″");
  bed.tap("bar.redo");
  REQUIRE(bed.item("toast").name == "Span: 16′ 0″ to 24′ 0″");
}

TEST_CASE("a short word lies over no key of the keypad", "[screens]") {
  Bed bed(320, 568);
  bed.tap("rafter.span");
  bed.tap_keypad({"digit.2", "digit.4", "done"});
  bed.tap("bar.undo");
  bed.tap("rafter.span");
  if (!bed.shows("toast")) return;
  const Rect toast = bed.item("toast").rect;
  for (const Item& item : bed.app.registry().items())
    if (item.key.starts_with("keypad.")) CHECK(toast.y + toast.h <= item.rect.y);
}

TEST_CASE("that the phone may clear the storage is said where one looks after it, at the page's foot", "[screens]") {
  Bed bed;
  bed.app.on({EventKind::kNotPersistent, {}, {}, 0});
  bed.rest();
  REQUIRE_FALSE(bed.shows("notice.not_persistent"));
  to_settings(bed);
  const Rect notice = bed.item("notice.not_persistent").rect;
  REQUIRE(notice.y > 422);
  bed.tap("notice.understood");
  REQUIRE_FALSE(bed.shows("notice.not_persistent"));
  // At the next start too.
  CHECK(read_kit(bed.platform.stored("kit"))->settings.storage_seen);
  bed.app.on({EventKind::kNotPersistent, {}, {}, 0});
  bed.rest();
  CHECK_FALSE(bed.shows("notice.not_persistent"));
}

TEST_CASE("usual pitches and those entered stand above the keys, none that the frame refuses", "[screens]") {
  Bed bed;
  bed.tap("place.frame");
  bed.tap("frame.bent.pitch_left");
  std::string all;
  for (int i = 0; bed.shows("keypad.usual." + std::to_string(i)); ++i)
    all += bed.item("keypad.usual." + std::to_string(i)).name + "\n";
  CHECK(all.find("9:12") != std::string::npos);
  for (const Item& item : bed.app.registry().items())
    if (item.key.starts_with("keypad.usual.")) {
      bed.tap(item.key);
      break;
    }
  CHECK_FALSE(bed.shows("keypad.done"));
  CHECK_FALSE(bed.shows("frame.refused"));
  CHECK(bed.shows("bar.undo"));
}

TEST_CASE("a usual section sets both measures at once", "[screens]") {
  Bed bed;
  bed.tap("place.frame");
  bed.tap("frame.row.sections");
  bed.tap("sections.post.depth");
  bed.tap("keypad.usual.0");
  CHECK(bed.value("sections.post.breadth") == bed.value("sections.post.depth"));
  bed.tap("bar.undo");
  CHECK_FALSE(bed.shows("bar.undo"));
}

TEST_CASE("one key walks span, length, height and pitch of a new frame", "[screens]") {
  Bed bed(320, 568);
  bed.tap("place.frame");
  bed.tap("frame.row.books");
  bed.tap("books.new");
  bed.tap("new.span");
  bed.tap_keypad({"digit.2", "digit.0", "next"});
  bed.tap_keypad({"digit.3", "digit.6", "next"});
  bed.tap_keypad({"digit.1", "digit.0", "next"});
  CHECK_FALSE(bed.shows("keypad.next"));
  bed.tap_keypad({"digit.9", "done"});
  CHECK(bed.value("new.span") == "20′ 0″");
  CHECK(bed.value("new.length") == "36′ 0″");
  CHECK(bed.value("new.plate") == "10′ 0″");
  CHECK(bed.value("new.pitch") == "9:12");
}

TEST_CASE("one key walks the frame's own measures", "[screens]") {
  Bed bed;
  bed.tap("place.frame");
  bed.tap("frame.bent.span");
  bed.tap_keypad({"digit.2", "digit.0"});
  int nexts = 0;
  for (; bed.shows("keypad.next") && nexts < 20; ++nexts) bed.tap("keypad.next");
  CHECK(nexts >= 3);
  CHECK(bed.shows("keypad.form.0"));
  bed.tap("keypad.done");
  CHECK(bed.value("frame.bent.span") == "20′ 0″");
}

TEST_CASE("going to another place is kept but is no edit", "[screens]") {
  Bed bed;
  bed.tap("place.angles");
  REQUIRE(read_places(bed.platform.stored("places"))->active == bentbook::Place::kAngles);
  REQUIRE_FALSE(bed.shows("bar.undo"));
}

TEST_CASE("a pushed page starts at its top; the one below is found where it was left", "[screens]") {
  Bed bed(320, 568);
  bed.tap("rafter.row.timber");
  bed.tap("bar.back");
  const float left_at = bed.app.registry().scroll_areas().front().offset;
  REQUIRE(left_at > 0);
  bed.tap("bar.menu");
  bed.tap("menu.help");
  bed.drag(160, 400, 160, 200);
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);
  bed.tap("bar.back");
  bed.tap("menu.help");
  REQUIRE(bed.app.registry().scroll_areas().front().offset == 0);
  bed.tap("bar.back");
  bed.tap("bar.back");
  REQUIRE(bed.app.registry().scroll_areas().front().offset == Catch::Approx(left_at).margin(1));
}

TEST_CASE("Tab and Enter reach what a finger reaches", "[screens]") {
  Bed bed(390, 844, false);
  bed.key(Key::kTab);
  bed.key(Key::kEnter);
  REQUIRE_FALSE(bed.shows("welcome.understood"));
}

TEST_CASE("after a touch nothing stays lit and no press is repeated", "[screens]") {
  Bed bed;
  to_settings(bed);
  bed.tap("settings.glove");
  const auto saves = bed.platform.saves.size();
  for (int i = 0; i < 30; ++i) bed.frame();
  REQUIRE(bed.platform.saves.size() == saves);
  REQUIRE(bed.frame() < 0);
}

TEST_CASE("an answer that is held can be copied, shared and read in the other units", "[screens]") {
  Bed bed;
  bed.tap("place.angles");
  bed.see("angles.plumb_cut");
  const Rect at = bed.item("angles.plumb_cut").rect;
  bed.finger(TouchPhase::kDown, at.x + 20, at.y + at.h / 2);
  bed.frame();
  bed.frame(Gesture::kLongPressMs);
  bed.finger(TouchPhase::kUp, at.x + 20, at.y + at.h / 2);
  bed.rest();
  REQUIRE(bed.shows("held.value"));
  CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
  const std::string value = bed.value("held.value"), other = bed.value("held.other");
  CHECK(value.ends_with("°"));
  CHECK(other.ends_with(":12"));
  bed.tap("held.other.copy");
  REQUIRE(bed.platform.copied == std::vector{other});
  bed.app.on({EventKind::kCopied, {}, {}, 1});
  bed.rest();
  CHECK(bed.item("toast").name == "Copied");
  bed.press("held.share");
  REQUIRE(bed.platform.shared.size() == 1);
  CHECK(bed.platform.shared[0] == bed.item("held.value").name + ": " + value + " (" + other + ")");
  bed.press("bar.back");
  CHECK(bed.shows("angles.plumb_cut"));
  bed.app.act({Action::Kind::kHold, "angles.plumb_cut", {}, 0});  // as the mirror says it
  bed.rest();
  CHECK(bed.value("held.value") == value);
}

TEST_CASE("peak, bird’s mouth and tail are opened on the roof, or from rows where type is large", "[screens]") {
  const int percent = GENERATE(100, 200);
  CAPTURE(percent);
  Bed bed;
  if (percent == 200) {
    to_settings(bed);
    bed.set_number("settings.text", 200);
    bed.tap("place.rafter");
  }
  bed.tap("place.rafter");
  const std::string where = percent == 200 ? "rafter.row." : "rafter.part.";
  for (const auto& [part, title] : {std::pair{"peak", "Peak"}, {"foot", "Bird\u2019s mouth"}, {"tail", "Tail"}}) {
    CAPTURE(part);
    bed.tap(where + part);
    CHECK(bed.item("page.title").name == title);
    bed.press("bar.back");
  }
}
