#pragma once
/// The shelf: which books there are, stored app-wide under "shelf"; each book's own bytes lie under its id. What is
/// deleted stays for 30 days. Time is passed in: milliseconds since 1970, UTC.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

struct ShelvedBook {
  std::string id;  ///< a key of the storage: "book" and a number
  std::string title;
  std::int64_t changed_at = 0;
  std::int64_t deleted_at = 0;  ///< 0: it stands on the shelf
  std::int64_t days_seen = 0;   ///< days on which the app was opened since then
  std::string identity;         ///< Book::identity, by which its log is kept; "": not known yet
  friend bool operator==(const ShelvedBook&, const ShelvedBook&) = default;
};

struct Shelf {
  std::vector<ShelvedBook> books;  ///< in the order in which they were made
  std::string open;                ///< id of the open one; "" none
  std::int64_t next = 1;           ///< number of the next id: never used twice
  std::int64_t day = 0;            ///< since 1970, the last one counted into days_seen
  std::int64_t copied_at = 0;      ///< a copy of everything (backup/) went out last; 0: none yet
  std::string kept;                ///< as Kit::kept
  friend bool operator==(const Shelf&, const Shelf&) = default;
};

inline constexpr std::int64_t kDayMs = std::int64_t{24} * 60 * 60 * 1000, kKeptDays = 30,
                              kKeptDeleted = kKeptDays * kDayMs;

/// The book of that id, deleted or not; nullptr: none.
[[nodiscard]] const ShelvedBook* find_book(const Shelf& shelf, std::string_view id);

/// A new book on the shelf, opened; its id is the shelf's last one. A title that stands there already gets a number.
[[nodiscard]] Shelf with_book(Shelf shelf, std::string_view title, std::int64_t now);
/// A book from elsewhere, with its days if it is deleted: it gets the next id, and is the shelf's last one. What is
/// open stays open.
[[nodiscard]] Shelf with_shelved(Shelf shelf, ShelvedBook book);
[[nodiscard]] Shelf with_identity(Shelf shelf, std::string_view id, std::string_view identity);
[[nodiscard]] Shelf with_title(Shelf shelf, std::string_view id, std::string_view title, std::int64_t now);
/// Off the shelf, kept for 30 days, and back on it. The open one is closed when it goes.
[[nodiscard]] Shelf with_deleted(Shelf shelf, std::string_view id, std::int64_t now);
[[nodiscard]] Shelf with_restored(Shelf shelf, std::string_view id);

/// A copy of everything went out at that time.
[[nodiscard]] Shelf with_copied(Shelf shelf, std::int64_t now);
/// The book of that id, or those of that identity, were changed. Told once between two copies: nothing else asks.
[[nodiscard]] Shelf with_changed(Shelf shelf, std::string_view id_or_identity, std::int64_t now);
/// How many books have changed or come since the last copy; deleted ones do not count.
[[nodiscard]] int changed_since_copy(const Shelf& shelf);

/// The app is opened at that time: a day more for what is deleted, if it is another day than the last one.
[[nodiscard]] Shelf seen_on(Shelf shelf, std::int64_t now);
/// Ids of the books whose 30 days are over, by the clock and by the days on which the app was opened: a clock that is
/// wrong for once, ahead or behind, takes nothing away. Their bytes are to be erased, and then they are dropped from
/// the shelf.
[[nodiscard]] std::vector<std::string> overdue(const Shelf& shelf, std::int64_t now);
/// Identities of those whose logs nobody needs any more: no other book of the shelf is the same building.
[[nodiscard]] std::vector<std::string> orphaned(const Shelf& shelf, const std::vector<std::string>& ids);
[[nodiscard]] Shelf without(Shelf shelf, const std::vector<std::string>& ids);

[[nodiscard]] std::string write_shelf(const Shelf& shelf);
/// Errors as read_book, with where = "shelf" or the member.
[[nodiscard]] Result<Shelf> read_shelf(std::string_view bytes);

}  // namespace bentbook
