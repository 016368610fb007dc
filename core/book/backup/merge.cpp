#include "book/backup/merge.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "book/book_file.h"
#include "book/demo.h"
#include "shop/log/log_file.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

constexpr std::size_t kLongestDated = 340;  // of a title, with its day and a number still no longer than what is read

/// A book's bytes without what the shelf says of it. Nothing where they cannot be read.
std::optional<std::string> bare(std::string_view bytes, bool nameless) {
  auto book = read_book(bytes);
  if (!book) return std::nullopt;
  book->title.clear();
  if (nameless) book->identity = "0";  // not empty: an empty one is left out of the file or not, by what was read
  return write_book(*book);
}

std::string identity_in(std::string_view bytes) {
  const auto book = read_book(bytes);
  return book ? book->identity : std::string{};
}

/// The books here, read once.
struct HereBook {
  const ShelvedBook* shelved = nullptr;
  const std::string* bytes = nullptr;
  std::string identity;
};

std::vector<HereBook> books_here(const Backup& here, const Shelf& shelf) {
  std::vector<HereBook> books;
  const std::size_t n = std::min(here.books.size(), shelf.books.size());
  books.reserve(n);
  for (std::size_t i = 0; i < n; ++i)
    books.push_back({&shelf.books[i], &here.books[i].bytes, identity_of(shelf.books[i], here.books[i].bytes)});
  return books;
}

bool same_book(const std::string& a, const std::string& b, bool nameless) {
  if (a == b) return true;
  const auto bare_a = bare(a, nameless), bare_b = bare(b, nameless);
  return bare_a && bare_b && *bare_a == *bare_b;
}

Coming coming_of(const BackupBook& book, const std::string& identity, const std::vector<HereBook>& here) {
  if (!is_whole(book)) return Coming::kDamaged;
  bool known = false, binned = false;
  for (const HereBook& own : here) {
    // One that was never opened has no name yet; opened here it got one.
    const bool nameless = identity.empty() || own.identity.empty();
    if (!nameless && own.identity != identity) continue;
    known = known || !nameless;
    if (!same_book(*own.bytes, book.bytes, nameless)) continue;
    if (own.shelved->deleted_at == 0 || book.deleted_at != 0) return Coming::kSame;
    binned = true;
  }
  if (binned) return Coming::kBinned;
  if (!known) return Coming::kNew;
  return book.deleted_at != 0 ? Coming::kStays : Coming::kBeside;
}

std::string dated(std::string title, std::string_view when) {
  while (title.size() > kLongestDated) drop_last_character(title);
  title += " (";
  title += when;
  return title + ")";
}

void take_book(Taking& taking, const BackupBook& book, const std::vector<HereBook>& here, std::string_view when) {
  const std::string identity = book.identity.empty() ? identity_in(book.bytes) : book.identity;
  ComingBook coming{coming_of(book, identity, here), book.title, book.deleted_at != 0, std::nullopt};
  if (coming.coming != Coming::kDamaged)
    if (const auto read = read_book(book.bytes); !read) coming.unreadable = read.error().code;
  if (coming.coming == Coming::kNew || coming.coming == Coming::kBeside) {
    ShelvedBook shelved;
    shelved.title = coming.coming == Coming::kBeside ? dated(book.title, when) : book.title;
    shelved.changed_at = book.changed_at;
    shelved.deleted_at = book.deleted_at;
    shelved.days_seen = book.days_seen;
    shelved.identity = identity;
    taking.fresh.push_back({std::move(shelved), book.bytes});
  }
  taking.books.push_back(std::move(coming));
}

void take_log(Taking& taking, const BackupLog& log, const Backup& here) {
  // Each line has a checksum of its own.
  const LogScan theirs = scan_log(log.bytes);
  const bool of_the_book = !log.identity.empty() && theirs.log.book == log.identity;
  ComingLog coming{log.identity, {}, !is_whole(log) || !theirs.troubles.empty() || !of_the_book};
  if (of_the_book) {
    Log own{log.identity, {}};
    for (const BackupLog& one : here.logs)
      if (one.identity == log.identity)
        if (auto read = read_log(one.bytes)) own = *std::move(read);
    std::set_difference(theirs.log.events.begin(), theirs.log.events.end(), own.events.begin(), own.events.end(),
                        std::back_inserter(coming.fresh), before);
  }
  taking.logs.push_back(std::move(coming));
}

// What does not make a kit or entries somebody's own.

Kit without_looks(Kit kit) {
  kit.kept.clear();
  kit.settings.theme = Theme::kFollow;
  kit.settings.language.clear();
  kit.settings.caution_seen = kit.settings.storage_seen = false;
  return kit;
}

Places without_page(Places places) {
  places.kept.clear();
  places.active = demo_places().active;
  return places;
}

/// `same`: the value here, read; `fresh`: as the app comes.
template <class Value>
ComingPart part_of(const BackupPart& part, const BackupPart& own, Result<Value> (*read)(std::string_view),
                   Value (*bare_value)(Value), const Value& first) {
  if (!is_whole(part)) return ComingPart::kDamaged;
  if (part.bytes.empty()) return ComingPart::kNothing;
  const auto theirs = read(part.bytes);
  if (!theirs) return ComingPart::kDamaged;
  const auto ours = own.bytes.empty() ? Result<Value>(first) : read(own.bytes);
  if (!ours) return ComingPart::kNothing;  // what lies here cannot be read: the user decides about that first
  if (bare_value(*theirs) == bare_value(*ours)) return ComingPart::kNothing;
  return bare_value(*ours) == bare_value(first) ? ComingPart::kTaken : ComingPart::kAsked;
}

}  // namespace

bool is_taken(ComingPart coming, bool wanted) {
  return coming == ComingPart::kTaken || (coming == ComingPart::kAsked && wanted);
}

std::int64_t Taking::fresh_events() const {
  std::int64_t n = 0;
  for (const ComingLog& log : logs) n += static_cast<std::int64_t>(log.fresh.size());
  return n;
}

std::string identity_of(const ShelvedBook& shelved, std::string_view bytes) {
  return shelved.identity.empty() ? identity_in(bytes) : shelved.identity;
}

Taking taking_of(const Backup& file, const Backup& here, const Shelf& shelf, std::string_view when) {
  Taking taking;
  taking.complete = is_complete(file);
  const std::vector<HereBook> own = books_here(here, shelf);
  taking.books.reserve(file.books.size());
  for (const BackupBook& book : file.books) take_book(taking, book, own, when);
  taking.logs.reserve(file.logs.size());
  for (const BackupLog& log : file.logs) take_log(taking, log, here);
  taking.kit = part_of<Kit>(file.kit, here.kit, read_kit, without_looks, without_looks(first_kit()));
  taking.places = part_of<Places>(file.places, here.places, read_places, without_page, without_page(demo_places()));
  return taking;
}

Kit taken_kit(const Kit& here, const Backup& file, ComingPart coming, bool wanted) {
  if (!is_taken(coming, wanted)) return here;
  auto kit = read_kit(file.kit.bytes);
  if (!kit) return here;
  kit->settings.caution_seen = here.settings.caution_seen;
  kit->settings.storage_seen = here.settings.storage_seen;
  if (!wanted) {
    kit->settings.theme = here.settings.theme;
    kit->settings.language = here.settings.language;
  }
  return *std::move(kit);
}

Places taken_places(const Places& here, const Backup& file, ComingPart coming, bool wanted) {
  if (!is_taken(coming, wanted)) return here;
  auto places = read_places(file.places.bytes);
  if (!places) return here;
  places->active = here.active;
  return *std::move(places);
}

}  // namespace bentbook
