#include "book/book_shelf.h"

#include <algorithm>
#include <set>

#include "book/json_io.h"
#include "shop/log/record.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

constexpr json::FileHead kShelfHead{"shelf", 1};
constexpr std::string_view kShelfId = "book";
constexpr std::int64_t kMostTime = std::int64_t{1} << 52;
constexpr std::size_t kLongestTitle = 380;  // with a number behind it, no longer than what is read

template <class Books>
auto find_id(Books& books, std::string_view id) {
  return std::find_if(books.begin(), books.end(), [&](const ShelvedBook& b) { return b.id == id; });
}

/// "book" and a number, as with_book() gives them: no other value of the storage goes by such a key.
bool is_shelf_id(std::string_view id) {
  return id.starts_with(kShelfId) && id.size() > kShelfId.size() && id.size() <= kShelfId.size() + 16 &&
         id.find_first_not_of("0123456789", kShelfId.size()) == std::string_view::npos;
}

std::string free_title(const Shelf& shelf, std::string wanted) {
  while (wanted.size() > kLongestTitle) drop_last_character(wanted);
  const auto taken = [&](std::string_view title) {
    return std::any_of(shelf.books.begin(), shelf.books.end(),
                       [&](const ShelvedBook& b) { return b.deleted_at == 0 && b.title == title; });
  };
  std::string title = wanted;
  for (int n = 2; taken(title); ++n) title = wanted + " " + std::to_string(n);
  return title;
}

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, ShelvedBook& b) {
  fields.text("name", b.id);
  fields.text("title", b.title);
  fields.whole("changed_at", b.changed_at, 0, kMostTime);
  fields.whole("deleted_at", b.deleted_at, 0, kMostTime);
  // Written where it is not known too: one that was refused would come back from the bytes that were read.
  fields.text("identity", b.identity, std::string::npos);
  fields.whole("days_seen", b.days_seen, 0, kMostTime);
}

static void describe(Fields& fields, Shelf& s) {
  fields.list("books", s.books, 10'000);
  fields.text("open", s.open);
  fields.whole("next", s.next, 1, kMostTime);
  fields.whole("day", s.day, 0, kMostTime);
  if (fields.reads() || s.copied_at != 0) fields.whole("copied_at", s.copied_at, 0, kMostTime);
}

const ShelvedBook* find_book(const Shelf& shelf, std::string_view id) {
  const auto it = find_id(shelf.books, id);
  return it == shelf.books.end() ? nullptr : &*it;
}

Shelf with_book(Shelf shelf, std::string_view title, std::int64_t now) {
  ShelvedBook book;
  book.id = std::string(kShelfId) + std::to_string(shelf.next++);
  book.title = free_title(shelf, std::string(title));
  book.changed_at = now;
  shelf.open = book.id;
  shelf.books.push_back(std::move(book));
  return shelf;
}

Shelf with_shelved(Shelf shelf, ShelvedBook book) {
  book.id = std::string(kShelfId) + std::to_string(shelf.next++);
  while (book.title.size() > kLongestTitle) drop_last_character(book.title);
  if (book.deleted_at == 0) book.title = free_title(shelf, book.title);
  shelf.books.push_back(std::move(book));
  return shelf;
}

Shelf with_identity(Shelf shelf, std::string_view id, std::string_view identity) {
  const auto it = find_id(shelf.books, id);
  if (it != shelf.books.end()) it->identity = identity;
  return shelf;
}

Shelf with_title(Shelf shelf, std::string_view id, std::string_view title, std::int64_t now) {
  const auto it = find_id(shelf.books, id);
  if (it == shelf.books.end() || it->title == title) return shelf;
  it->title = free_title(shelf, std::string(title));
  it->changed_at = now;
  return shelf;
}

Shelf with_deleted(Shelf shelf, std::string_view id, std::int64_t now) {
  const auto it = find_id(shelf.books, id);
  if (it == shelf.books.end()) return shelf;
  it->deleted_at = std::max<std::int64_t>(now, 1);
  if (shelf.open == id) shelf.open.clear();
  return shelf;
}

Shelf with_restored(Shelf shelf, std::string_view id) {
  const auto it = find_id(shelf.books, id);
  if (it == shelf.books.end() || it->deleted_at == 0) return shelf;
  it->title = free_title(shelf, it->title);
  it->deleted_at = it->days_seen = 0;
  return shelf;
}

Shelf with_copied(Shelf shelf, std::int64_t now) {
  // Of books that a clock ahead had changed later the copy has all the same.
  for (const ShelvedBook& book : shelf.books) now = std::max(now, book.changed_at);
  shelf.copied_at = std::max<std::int64_t>(now, 1);
  return shelf;
}

Shelf with_changed(Shelf shelf, std::string_view id_or_identity, std::int64_t now) {
  if (shelf.copied_at == 0 || id_or_identity.empty()) return shelf;
  for (ShelvedBook& book : shelf.books)
    if ((book.id == id_or_identity || book.identity == id_or_identity) && book.changed_at <= shelf.copied_at)
      book.changed_at = std::max(now, shelf.copied_at + 1);
  return shelf;
}

int changed_since_copy(const Shelf& shelf) {
  return static_cast<int>(std::count_if(shelf.books.begin(), shelf.books.end(), [&](const ShelvedBook& b) {
    return b.deleted_at == 0 && b.changed_at > shelf.copied_at;
  }));
}

Shelf seen_on(Shelf shelf, std::int64_t now) {
  const std::int64_t day = std::max<std::int64_t>(now / kDayMs, 0);
  const auto deleted = [](const ShelvedBook& b) { return b.deleted_at != 0; };
  if (day == shelf.day || std::none_of(shelf.books.begin(), shelf.books.end(), deleted)) return shelf;
  shelf.day = day;
  for (ShelvedBook& book : shelf.books)
    if (deleted(book)) ++book.days_seen;
  return shelf;
}

std::vector<std::string> overdue(const Shelf& shelf, std::int64_t now) {
  std::vector<std::string> ids;
  for (const ShelvedBook& book : shelf.books)
    if (book.deleted_at != 0 && now - book.deleted_at > kKeptDeleted && book.days_seen >= kKeptDays)
      ids.push_back(book.id);
  return ids;
}

std::vector<std::string> orphaned(const Shelf& shelf, const std::vector<std::string>& ids) {
  std::vector<std::string> identities;
  const Shelf rest = without(shelf, ids);
  for (const std::string& id : ids) {
    const ShelvedBook* gone = find_book(shelf, id);
    if (gone == nullptr || gone->identity.empty()) continue;
    const bool needed = std::any_of(rest.books.begin(), rest.books.end(),
                                    [&](const ShelvedBook& b) { return b.identity == gone->identity; });
    if (!needed) identities.push_back(gone->identity);
  }
  return identities;
}

Shelf without(Shelf shelf, const std::vector<std::string>& ids) {
  std::erase_if(shelf.books,
                [&](const ShelvedBook& b) { return std::find(ids.begin(), ids.end(), b.id) != ids.end(); });
  return shelf;
}

std::string write_shelf(const Shelf& shelf) { return json::write_file(kShelfHead, described_as_is(shelf), shelf.kept); }

Result<Shelf> read_shelf(std::string_view bytes) {
  Shelf shelf;
  std::string spot;
  if (auto ok = json::read_file(kShelfHead, bytes, described(shelf), &spot); !ok) {
    Error error = ok.error();
    if (!spot.empty()) error.where = spot;
    return tl::unexpected(error);
  }
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < shelf.books.size(); ++i) {
    ShelvedBook& book = shelf.books[i];
    const std::string where = "books." + std::to_string(i) + ".name";
    if (!is_shelf_id(book.id)) return fail(ErrorCode::kSyntax, where);
    // To erase the one would take the other's bytes.
    if (!ids.insert(book.id).second) return fail(ErrorCode::kConflict, where);
    // Not known: it is learned again when the book is opened.
    if (!is_book_id(book.identity)) book.identity.clear();
  }
  shelf.kept = bytes;
  return shelf;
}

}  // namespace bentbook
