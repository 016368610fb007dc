#include "book/book_shelf.h"

#include <algorithm>

#include "book/json_io.h"

namespace bentbook {
namespace {

constexpr int kVersion = 1;
constexpr const char* kFile = "shelf";
constexpr std::int64_t kMostTime = std::int64_t{1} << 52;

template <class Books>
auto find_id(Books& books, std::string_view id) {
  return std::find_if(books.begin(), books.end(), [&](const ShelvedBook& b) { return b.id == id; });
}

std::string free_title(const Shelf& shelf, std::string_view wanted) {
  const auto taken = [&](std::string_view title) {
    return std::any_of(shelf.books.begin(), shelf.books.end(),
                       [&](const ShelvedBook& b) { return b.deleted_at == 0 && b.title == title; });
  };
  std::string title(wanted);
  for (int n = 2; taken(title); ++n) title = std::string(wanted) + " " + std::to_string(n);
  return title;
}

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, ShelvedBook& b) {
  io.text("name", b.id);
  io.text("title", b.title);
  io.whole("changed_at", b.changed_at, 0, kMostTime);
  io.whole("deleted_at", b.deleted_at, 0, kMostTime);
  if (Io::kReads || !b.identity.empty()) io.text("identity", b.identity, 64);
}

template <class Io>
static void describe(Io& io, Shelf& s) {
  io.list("books", s.books, 10'000);
  io.text("open", s.open);
  io.whole("next", s.next, 1, kMostTime);
}

const ShelvedBook* find_book(const Shelf& shelf, std::string_view id) {
  const auto it = find_id(shelf.books, id);
  return it == shelf.books.end() ? nullptr : &*it;
}

Shelf with_book(Shelf shelf, std::string_view title, std::int64_t now) {
  ShelvedBook book;
  book.id = "book" + std::to_string(shelf.next++);
  book.title = free_title(shelf, title);
  book.changed_at = now;
  shelf.open = book.id;
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
  it->title = free_title(shelf, title);
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
  it->deleted_at = 0;
  return shelf;
}

std::vector<std::string> overdue(const Shelf& shelf, std::int64_t now) {
  std::vector<std::string> ids;
  for (const ShelvedBook& book : shelf.books)
    if (book.deleted_at != 0 && now - book.deleted_at > kKeptDeleted) ids.push_back(book.id);
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

std::string write_shelf(const Shelf& shelf) {
  json::Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(kFile), document.GetAllocator());
  document.AddMember("version", kVersion, document.GetAllocator());
  json::Writer writer(document, document.GetAllocator());
  Shelf copy = shelf;
  describe(writer, copy);
  json::keep_unknown(document, shelf.kept);
  return json_text(document);
}

Result<Shelf> read_shelf(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
  if (auto ok = json::check_head(document, kFile, kVersion); !ok) return tl::unexpected(ok.error());
  Shelf shelf;
  Error error;
  std::string spot;
  json::Reader reader(document, error, &spot);
  describe(reader, shelf);
  if (!error.where.empty()) return fail(error.code, spot, error.at, error.limit);
  shelf.kept = bytes;
  return shelf;
}

}  // namespace bentbook
