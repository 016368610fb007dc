#include <utility>

#include "book/demo.h"
#include "screens/app_inside.h"

namespace bentbook::screens {
namespace {

/// What is stored, or a fresh value where nothing is; unusable bytes are kept aside untouched.
template <class Value>
Value read_stored(Stored& store, std::string_view bytes, Result<Value> (*read)(std::string_view), Value fresh) {
  store.unusable.reset();
  store.raw.clear();
  store.failure.clear();
  store.saved = store.revision;
  if (bytes.empty()) return fresh;
  Result<Value> value = read(bytes);
  if (value) return std::move(*value);
  store.unusable = value.error().code;
  store.raw = bytes;
  return fresh;
}

}  // namespace

void App::Impl::load(std::string_view kit_bytes, std::string_view places_bytes) {
  kit = History<Kit>(read_stored<Kit>(kit_store, kit_bytes, read_kit, first_kit()));
  places = History<Places>(read_stored<Places>(places_store, places_bytes, read_places, demo_places()));
  pages.go(places.now().active);
  keypad.close();
}

void App::Impl::save(Stored& store) {
  if (read_only || store.unusable) return;
  store.failure.clear();
  ++store.revision;
  if (&store == &kit_store) return platform.save(store.key, store.revision, write_kit(kit.now()));
  Places now = places.now();
  now.active = pages.place();
  platform.save(store.key, store.revision, write_places(now));
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

void App::Impl::take_back(Toast::Undoes what) {
  if (what == Toast::Undoes::kKit) {
    kit.undo();
    save(kit_store);
  } else {
    places.undo();
    save(places_store);
  }
  keypad.close();
  woken();
}

void App::Impl::saved_event(const PlatformEvent& event) {
  Stored& store = event.key == kit_store.key ? kit_store : places_store;
  if (event.kind == EventKind::kSaved) {
    if (event.number > store.saved) store.saved = event.number;
    if (store.saved == store.revision) store.failure.clear();
  } else if (event.number == store.revision) {
    store.failure = event.text.empty() ? "other" : event.text;
  }
}

Language App::Impl::language() const {
  const std::string& told = kit.now().settings.language;
  return language_of(told.empty() ? viewport.language : told);
}

bool App::Impl::dark() const {
  const bentbook::Theme wanted = kit.now().settings.theme;
  return wanted == bentbook::Theme::kNight || (wanted == bentbook::Theme::kFollow && viewport.prefers_dark);
}

}  // namespace bentbook::screens
