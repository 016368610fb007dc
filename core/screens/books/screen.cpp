#include "screens/books/screen.h"

#include <algorithm>
#include <string>

#include "book/book_edit.h"
#include "book/book_file.h"
#include "frame/list/csv.h"
#include "screens/books/backup.h"
#include "screens/books/new_book.h"
#include "screens/form/drawing_form.h"
#include "screens/frame/form.h"
#include "text/invisible.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

Page book_page(std::string id);
Page deleted_page();

std::int64_t days_left(const ShelvedBook& book, std::int64_t now) {
  const std::int64_t left = book.deleted_at + kKeptDeleted - now;
  return std::max(kKeptDays - book.days_seen, left < 0 ? 0 : (left + kDayMs - 1) / kDayMs);
}

// ── The shelf ─────────────────────────────────────────────────────────────────────────────────────────────────────

void shelf_rows(Context& context, const Shelf& shelf) {
  Ui& ui = context.ui;
  const float pen_width = ui.theme.target;
  for (const ShelvedBook& book : shelf.books) {
    if (book.deleted_at != 0) continue;
    const std::string key = "books." + book.id;
    const Column whole = ui.column;
    ui.column.width -= pen_width + kGap;
    const bool open = book.id == shelf.open;
    if (pick_row(ui, key, shown_name(book.title, ui.language),
                 open ? context.say(Msg::kBookOpenNow) : std::string_view{}, open))
      context.desk.open(book.id);
    const Rect pen_box{whole.x + whole.width - pen_width, whole.y, pen_width, ui.column.y - whole.y};
    ui.column.x = whole.x;
    ui.column.width = whole.width;
    if (icon_button(ui, key + ".edit", pen_box, Icon::kPen,
                    say(Msg::kBookEdit, ui.language, shown_name(book.title, ui.language))))
      context.pages.push(book_page(book.id));
  }
}

void books_screen(Context& context) {
  Ui& ui = context.ui;
  const Shelf shelf = context.desk.shelf();  // it changes under the keys
  begin_scroll(ui, "books.page", context.page);
  shelf_rows(context, shelf);
  space(ui, 16);
  if (button(ui, "books.new", context.say(Msg::kBookNew), Weight::kPrimary)) context.pages.push(books_new_page());
  if (button(ui, "books.import", context.say(Msg::kBookImport))) context.platform.open_file();
  note(ui, "books.import_note", context.say(Msg::kBookImportNote));
  copy_row(context);
  const auto deleted = static_cast<std::int64_t>(shelf.books.size()) - books_on_shelf(shelf);
  if (deleted > 0 &&
      list_row(ui, "books.deleted", context.say(Msg::kBooksDeleted), say_count(Msg::kBooksNote, ui.language, deleted)))
    context.pages.push(deleted_page());
  end_scroll(ui);
}

void deleted_screen(Context& context) {
  Ui& ui = context.ui;
  const Shelf shelf = context.desk.shelf();
  begin_scroll(ui, "deleted.page", context.page);
  body(ui, "deleted.how", context.say(Msg::kBooksDeletedHow));
  for (const ShelvedBook& book : shelf.books) {
    if (book.deleted_at == 0) continue;
    const std::string left =
        say_count(Msg::kBookDaysLeft, ui.language, days_left(book, context.platform.wall_clock_ms()));
    fact(ui, "deleted." + book.id, shown_name(book.title, ui.language), left);
    if (button(ui, "deleted." + book.id + ".restore",
               say(Msg::kBookRestore, ui.language, shown_name(book.title, ui.language))))
      context.desk.restore(book.id);
  }
  end_scroll(ui);
}

/// Asked twice: the first press only asks.
void delete_keys(Context& context, const ShelvedBook& book) {
  Ui& ui = context.ui;
  FrameMemory& memory = context.frame_memory;
  const bool asked = memory.sure_of == book.id;
  if (!asked) {
    if (button(ui, "book.delete", context.say(Msg::kBookDelete), Weight::kDestructive)) memory.sure_of = book.id;
    return;
  }
  caution(ui, "book.sure", say(Msg::kBookDeleteSure, ui.language, shown_name(book.title, ui.language)));
  if (button(ui, "book.keep", context.say(Msg::kDamagedKeep), Weight::kPrimary)) memory.sure_of.clear();
  if (!button(ui, "book.delete_now", context.say(Msg::kBookDeleteNow), Weight::kDestructive)) return;
  memory.sure_of.clear();
  context.desk.remove(book.id);
  context.toast(say(Msg::kBookDeleted, ui.language, shown_name(book.title, ui.language)), false);
  context.pages.pop();
}

void notes_field(Context& context) {
  Ui& ui = context.ui;
  const std::string shown(shown_name(context.desk.book().notes, ui.language));
  const auto words = text_field(ui, "book.notes", context.say(Msg::kBookNotes), shown);
  if (words && *words != shown) edit_book(context, [&](Book& next) { next.notes = *words; });
}

void book_screen(Context& context) {
  Ui& ui = context.ui;
  const ShelvedBook* found = find_book(context.desk.shelf(), context.subject);
  if (found == nullptr || found->deleted_at != 0) return context.pages.pop();
  const ShelvedBook book = *found;
  begin_scroll(ui, "book.page", context.page);
  const std::string shown_title(shown_name(book.title, ui.language));
  if (const auto title = text_field(ui, "book.title", context.say(Msg::kBookTitle), shown_title))
    if (*title != shown_title) context.desk.rename(book.id, *title);
  if (book.id == context.desk.shelf().open && context.desk.state() == BooksDesk::State::kOpen) notes_field(context);
  if (button(ui, "book.share", context.say(Msg::kBookShare), Weight::kPrimary)) context.desk.share(book.id);
  if (button(ui, "book.copy", context.say(Msg::kBookCopy))) {
    context.desk.copy(book.id);
    context.toast(say(Msg::kBookCopied, ui.language, shown_name(book.title, ui.language)), false);
    context.pages.pop();
  }
  space(ui, 16);
  delete_keys(context, book);
  end_scroll(ui);
}

// ── A file ────────────────────────────────────────────────────────────────────────────────────────────────────────

void timbers_part(Context& context, std::string_view bytes) {
  Ui& ui = context.ui;
  if (!book_is_open(context)) return;
  const Voice voice = voice_of(context);
  const CsvTimbers read = read_timbers_csv(bytes, BareUnit::kInch, context.desk.book().species);
  fact(ui, "import.timbers", context.say(Msg::kImportGood), std::to_string(read.timbers.size()));
  std::size_t said = 0;
  for (const CsvTrouble& trouble : read.troubles) {
    if (said == 20) break;
    refusal(ui, "import.trouble." + std::to_string(said++),
            say(Msg::kBookCsvLine, ui.language,
                {{"line", std::to_string(trouble.line)},
                 {"column", trouble.column},
                 {"reason", frame_error_text(trouble.error, voice)}}));
  }
  if (read.troubles.size() > said)
    note(ui, "import.more", say(Msg::kFrameMoreFindings, ui.language, std::to_string(read.troubles.size() - said)));
  if (read.timbers.empty()) return;
  const auto count = static_cast<std::int64_t>(read.timbers.size());
  if (!button(ui, "import.take_timbers", say_count(Msg::kImportTakeTimbers, ui.language, count), Weight::kPrimary))
    return;
  edit_book(context, [&](Book& book) { book = with_all_added(std::move(book), read.timbers); });
  context.toast(say_count(Msg::kImportTaken, ui.language, count), true);
  context.pages.begin(Place::kFrame);
}

bool is_json(std::string_view bytes) {
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && bytes[first] == '{';
}

void import_screen(Context& context) {
  Ui& ui = context.ui;
  const std::string name = context.file.key, bytes = context.file.text;
  begin_scroll(ui, "import.page", context.page);
  heading(ui, "import.name", name.empty() ? context.say(Msg::kImportTitle) : std::string_view(name));
  if (!is_json(bytes)) {
    timbers_part(context, bytes);
    return end_scroll(ui);
  }
  std::string refused;
  const Result<Book> book = read_book(bytes, &refused);
  if (!book) {
    refusal(ui, "import.refused", frame_error_text(book.error(), voice_of(context)));
    body(ui, "import.left", context.say(Msg::kImportLeft));
    return end_scroll(ui);
  }
  fact(ui, "import.title", context.say(Msg::kBookTitle), made_visible(book->title));
  if (!refused.empty()) refusal(ui, "import.identity", context.say(Msg::kBookIdentityFresh));
  const bool take = button(ui, "import.take_book", context.say(Msg::kImportTakeBook), Weight::kPrimary);
  end_scroll(ui);
  if (!take) return;
  context.desk.make(*book);
  context.pages.begin(Place::kFrame);
}

Page book_page(std::string id) { return {"book", Msg::kBook, book_screen, std::move(id)}; }
Page deleted_page() { return {"books.deleted", Msg::kBooksDeleted, deleted_screen}; }

}  // namespace

std::int64_t books_on_shelf(const Shelf& shelf) {
  std::int64_t n = 0;
  for (const ShelvedBook& book : shelf.books) n += book.deleted_at == 0 ? 1 : 0;
  return n;
}

Page books_page() { return {"books", Msg::kBooks, books_screen}; }
Page books_import_page() { return {"books.import", Msg::kImportTitle, import_screen}; }

}  // namespace bentbook::screens
