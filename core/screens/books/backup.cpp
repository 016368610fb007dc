#include "screens/books/backup.h"

#include <string>

#include "screens/form/drawing_form.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"
#include "words/shop_words.h"

namespace bentbook::screens {
namespace {

std::string day_of(const Context& context, std::int64_t wall_ms) {
  return day_text(wall_ms, context.platform.clock_ahead_minutes(wall_ms), context.ui.language);
}

// ── Out ───────────────────────────────────────────────────────────────────────────────────────────────────────────

/// What lies here, or nullptr, said why.
const Backup* all_here(Context& context) {
  Ui& ui = context.ui;
  context.backup.want(context.parts());
  if (const Backup* here = context.backup.here()) return here;
  if (context.backup.unreadable()) {
    refusal(ui, "copy.unreadable", context.say(Msg::kBackupUnreadable));
    if (button(ui, "copy.again", context.say(Msg::kSaveAgain))) context.backup.again();
  } else if (context.desk.shelf_store().unusable) {
    refusal(ui, "copy.unreadable", context.say(Msg::kDamagedShelf));
  } else {
    note(ui, "copy.reading", context.say(Msg::kBackupReading));
  }
  return nullptr;
}

void copy_screen(Context& context) {
  Ui& ui = context.ui;
  begin_scroll(ui, "copy.page", context.page);
  body(ui, "copy.what", context.say(Msg::kBackupWhat));
  const Backup* here = all_here(context);
  if (here != nullptr) {
    fact(ui, "copy.books", context.say(Msg::kBooks), std::to_string(here->books.size()), true);
    if (const std::size_t events = context.backup.events(); events > 0)
      fact(ui, "copy.events", context.say(Msg::kShopEvents), std::to_string(events));
    std::size_t i = 0;
    for (const std::string& title : context.backup.odd_books())
      refusal(ui, "copy.odd." + std::to_string(i++),
              say(Msg::kBackupOdd, ui.language, foreign_title(title, ui.language)));
    space(ui, 8);
    if (button(ui, "copy.share", context.say(Msg::kBackupShare), Weight::kPrimary))
      context.backup.share("Bentbook " + date_text(here->made_at, context.platform.clock_ahead_minutes(here->made_at)) +
                           ".json");
  }
  end_scroll(ui);
}

// ── In ────────────────────────────────────────────────────────────────────────────────────────────────────────────

void book_row(Context& context, const ComingBook& book, const std::string& key) {
  Ui& ui = context.ui;
  const std::string what = coming_text(book, ui.language), title = foreign_title(book.title, ui.language);
  if (book.coming == Coming::kDamaged)
    refusal(ui, key, title + ": " + what);
  else
    fact(ui, key, title.empty() ? context.say(Msg::kBook) : std::string_view(title), what);
}

void log_rows(Context& context, const Taking& taking, const Backup& file) {
  Ui& ui = context.ui;
  for (std::size_t i = 0; i < taking.logs.size(); ++i) {
    const ComingLog& log = taking.logs[i];
    const std::string key = "take.log." + std::to_string(i), title = coming_log_name(file, log.identity, ui.language);
    if (log.damaged) refusal(ui, key + ".damaged", title + ": " + std::string(context.say(Msg::kBackupLogDamaged)));
    if (!log.fresh.empty())
      fact(ui, key, title, say_count(Msg::kBackupLogNew, ui.language, static_cast<std::int64_t>(log.fresh.size())));
  }
}

void part_rows(Context& context, const Taking& taking) {
  Ui& ui = context.ui;
  struct Part {
    ItemKey key;
    Msg name;
    ComingPart coming;
  };
  for (const Part& part : {Part{"take.kit", Msg::kBackupKitName, taking.kit},
                           Part{"take.places", Msg::kBackupPlacesName, taking.places}}) {
    if (part.coming == ComingPart::kTaken) fact(ui, part.key, context.say(part.name), context.say(Msg::kBackupTaken));
    if (part.coming == ComingPart::kDamaged)
      refusal(ui, part.key, std::string(context.say(part.name)) + ": " + std::string(context.say(Msg::kBackupDamaged)));
  }
  const bool asks = taking.kit == ComingPart::kAsked || taking.places == ComingPart::kAsked;
  bool& wanted = context.backup.with_kit;
  if (asks && toggle(ui, "take.with_kit", context.say(Msg::kBackupKit), wanted)) wanted = !wanted;
}

bool does_something(const Taking& taking, bool with_kit) {
  return !taking.fresh.empty() || taking.fresh_events() > 0 || is_taken(taking.kit, with_kit) ||
         is_taken(taking.places, with_kit);
}

void take_all(Context& context, const Taking& taking, const Backup& file) {
  const bool wanted = context.backup.with_kit;
  const Kit kit = taken_kit(context.kit, file, taking.kit, wanted);
  const Places places = taken_places(context.places, file, taking.places, wanted);
  context.backup.take_all();
  if (!(kit == context.kit)) context.change_kit(kit);
  if (!(places == context.places)) context.change(places);
}

void take_rows(Context& context, const Taking& taking, const Backup& file) {
  Ui& ui = context.ui;
  if (!taking.complete) refusal(ui, "take.incomplete", context.say(Msg::kBackupIncomplete));
  for (std::size_t i = 0; i < taking.books.size(); ++i)
    book_row(context, taking.books[i], "take.book." + std::to_string(i));
  log_rows(context, taking, file);
  part_rows(context, taking);
  if (!does_something(taking, context.backup.with_kit))
    return body(ui, "take.nothing", context.say(Msg::kBackupNothing));
  space(ui, 8);
  if (button(ui, "take.all", context.say(Msg::kBackupTake), Weight::kPrimary)) take_all(context, taking, file);
}

void take_in_screen(Context& context) {
  Ui& ui = context.ui;
  begin_scroll(ui, "take.page", context.page);
  const Result<Backup>& file = context.backup.file();
  if (!file) {
    refusal(ui, "take.refused", frame_error_text(file.error(), voice_of(context)));
    body(ui, "take.left", context.say(Msg::kImportLeft));
  } else if (context.backup.busy()) {
    note(ui, "take.storing", context.say(Msg::kBackupTaking));
  } else {
    const std::string day = day_of(context, file->made_at);
    fact(ui, "take.made", context.say(Msg::kBackupMade), day);
    if (all_here(context) != nullptr)
      if (const Taking* taking = context.backup.taking(day)) take_rows(context, *taking, *file);
  }
  end_scroll(ui);
}

}  // namespace

void copy_row(Context& context) {
  const Shelf& shelf = context.desk.shelf();
  std::string note(context.say(Msg::kBackupNone));
  if (shelf.copied_at != 0) {
    const std::string day = day_of(context, shelf.copied_at);
    const int changed = changed_since_copy(shelf);
    note = changed == 0 ? say(Msg::kBackupLast, context.ui.language, {{"day", day}})
                        : say_count(Msg::kBackupChanged, context.ui.language, changed, {{"day", day}});
  }
  if (list_row(context.ui, "books.copy", context.say(Msg::kBackup), note)) context.pages.push(books_copy_page());
}

Page books_copy_page() { return {"books.copy", Msg::kBackupTitle, copy_screen}; }
Page books_take_in_page() { return {"books.take_in", Msg::kBackupTakeIn, take_in_screen}; }

}  // namespace bentbook::screens
