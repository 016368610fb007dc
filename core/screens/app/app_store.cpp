#include <utility>

#include "book/demo.h"
#include "screens/app/app_inside.h"

namespace bentbook::screens {
namespace {

/// What is stored, or a fresh value where nothing is; unusable bytes are kept aside untouched.
template <class Value>
Value read_stored(Stored& store, std::string_view bytes, Result<Value> (*read)(std::string_view), Value fresh) {
  store.read_anew();
  if (bytes.empty()) return fresh;
  Result<Value> value = read(bytes);
  if (value) return std::move(*value);
  store.found_unusable(value.error().code, bytes);
  return fresh;
}

}  // namespace

void App::Impl::load(std::string_view kit_bytes, std::string_view places_bytes) {
  kit = History<Kit>(read_stored<Kit>(kit_store, kit_bytes, read_kit, first_kit()));
  places = History<Places>(read_stored<Places>(places_store, places_bytes, read_places, demo_places()));
  pages.go(places.now().active);
  keypad.close();
  desk.load();
  shop.stored_anew();
  backup.stored_anew();
}

void App::Impl::save(Stored& store) {
  if (read_only) return;
  if (&store != &kit_store && &store != &places_store) return desk.save(store);
  store.save(platform, bytes_of(store));
}

std::vector<Stored*> App::Impl::stores() {
  std::vector<Stored*> all = desk.stores();
  all.insert(all.begin(), {&kit_store, &places_store});
  return all;
}

std::string App::Impl::bytes_of(const Stored& store) const {
  if (&store == &kit_store) return write_kit(kit.now());
  if (&store != &places_store) return desk.bytes_of(store);
  Places now = places.now();
  now.active = pages.place();
  return write_places(now);
}

void App::Impl::change(Places next) {
  next.active = places.now().active;  // where one is, is no edit
  if (next == places.now()) return;
  places.commit(std::move(next));
  last_change = Toast::Undoes::kPlaces;
  toast.undoes = Toast::Undoes::kNothing;
  save(places_store);
  woken();
}

void App::Impl::change_kit(Kit next) {
  if (next == kit.now()) return;
  kit.commit(std::move(next));
  last_change = Toast::Undoes::kKit;
  toast.undoes = Toast::Undoes::kNothing;
  save(kit_store);
  woken();
}

void App::Impl::apply_book() {
  if (!next_book) return;
  desk.change(*std::exchange(next_book, std::nullopt));
  last_change = Toast::Undoes::kBook;
  woken();
}

bool App::Impl::edits_book() const { return pages.place() == Place::kFrame || pages.place() == Place::kRaising; }

bool App::Impl::can_undo() const {
  if (pages.place() == Place::kShop) return false;  // taking back a tick is an event of its own
  return edits_book() ? desk.can_undo() : places.can_undo();
}

bool App::Impl::can_redo() const {
  if (pages.place() == Place::kShop) return false;
  return edits_book() ? desk.can_redo() : places.can_redo();
}

void App::Impl::undo() {
  word_steps();
  const std::string words = step_words.undo;
  take_back(edits_book() ? Toast::Undoes::kBook : Toast::Undoes::kPlaces);
  say_step(words);
}

void App::Impl::redo() {
  word_steps();
  const std::string words = step_words.redo;
  if (edits_book()) {
    desk.redo();
  } else {
    places.redo();
    save(places_store);
  }
  say_step(words);
}

void App::Impl::take_back(Toast::Undoes what) {
  if (what == Toast::Undoes::kBook) {
    desk.undo();
  } else if (what == Toast::Undoes::kKit) {
    kit.undo();
    save(kit_store);
  } else {
    places.undo();
    save(places_store);
  }
  keypad.close();
  woken();
}

BackupDesk::Parts App::Impl::parts() const {
  const auto bytes = [&](const Stored& store) { return store.unusable ? store.raw : bytes_of(store); };
  return {bytes(kit_store), bytes(places_store)};
}

void App::Impl::shared(const PlatformEvent& event) {
  backup.see(event);
  const std::optional<std::string> ended = backup.take_shared();
  if (!ended || *ended == "cancelled") return;
  const Msg words = ended->empty() ? Msg::kBackupOut : Msg::kBackupFailed;
  toast = {std::string(text(words, language())), Toast::Undoes::kNothing, now_ms + 5000};
}

void App::Impl::stored_event(const PlatformEvent& event) {
  if (event.kind == EventKind::kAppended) desk.log_grew(event.key);
  backup.see(event);
  take_stored(event);
  backup.step();
  if (backup.take_done())
    toast = {std::string(text(Msg::kBackupDone, language())), Toast::Undoes::kNothing, now_ms + 5000};
}

void App::Impl::take_stored(const PlatformEvent& event) {
  if (pieces.take(event) || shop.take(event) || desk.take(event)) {
    if (desk.take_fresh_identity())
      toast = {std::string(text(Msg::kBookIdentityFresh, language())), Toast::Undoes::kNothing, now_ms + 10'000};
    return;
  }
  Stored& store = event.key == kit_store.key ? kit_store : places_store;
  if (event.key == store.key) store.answered(event);
}

Language App::Impl::wanted_language() const {
  const std::string& told = kit.now().settings.language;
  return language_of(told.empty() ? viewport.language : told);
}

Language App::Impl::language() const {
  const Language wanted = wanted_language();
  return has_words(wanted) ? wanted : Language{};
}

bool App::Impl::dark() const {
  const bentbook::Theme wanted = kit.now().settings.theme;
  return wanted == bentbook::Theme::kNight || (wanted == bentbook::Theme::kFollow && viewport.prefers_dark);
}

}  // namespace bentbook::screens
