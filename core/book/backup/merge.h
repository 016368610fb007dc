#pragma once
/// What a backup does to what lies here: nothing of either is lost, and taken in a second time it changes nothing.
/// Values in, values out; who stores them says when.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/backup/backup.h"
#include "book/book_shelf.h"
#include "book/kit.h"
#include "book/places.h"
#include "shop/log/event.h"

namespace bentbook {

/// What happens to a book of the file.
enum class Coming : std::uint8_t {
  kNew,      ///< comes onto the shelf, or among the deleted ones with its days
  kBeside,   ///< the building lies here and differs: comes beside, its title says from when
  kSame,     ///< is here as it is there, whatever it is called
  kBinned,   ///< …but deleted here, and stays so
  kStays,    ///< deleted there, here in another state: the one here stays
  kDamaged,  ///< does not fit its checksum: left out
};
inline constexpr std::array<std::string_view, 6> kComingWords = {"new", "beside", "same", "binned", "stays", "damaged"};
static_assert(kComingWords.size() == static_cast<std::size_t>(Coming::kDamaged) + 1);

struct ComingBook {
  Coming coming = Coming::kNew;
  std::string title;                    ///< in the file
  bool deleted = false;                 ///< in the file
  std::optional<ErrorCode> unreadable;  ///< newer or no book: it comes byte for byte all the same
};

/// …to the log of one building.
struct ComingLog {
  std::string identity;
  std::vector<Event> fresh;  ///< that are not here
  bool damaged = false;      ///< not all of it could be read; `fresh` is of what could
};

/// …to the kit, and to the last entries.
enum class ComingPart : std::uint8_t {
  kNothing,  ///< the file has none, or the same
  kTaken,    ///< here it is as the app came: taken
  kAsked,    ///< both are somebody's: only where the user says so
  kDamaged,
};

struct Taking {
  std::vector<ComingBook> books;  ///< as the file has them
  std::vector<ComingLog> logs;
  ComingPart kit = ComingPart::kNothing, places = ComingPart::kNothing;
  bool complete = true;  ///< false: parts of the file are missing
  /// What is to be stored, each with the title that it gets; the shelf gives them ids (with_shelved).
  struct Fresh {
    ShelvedBook book;
    std::string bytes;
  };
  std::vector<Fresh> fresh;
  [[nodiscard]] std::int64_t fresh_events() const;
};

/// `here`: what lies here as a backup of it, its books one for one those of `shelf`. `when`: day of the file, as it
/// stands behind a title ("28 Nov").
[[nodiscard]] Taking taking_of(const Backup& file, const Backup& here, const Shelf& shelf, std::string_view when);

/// Whether it is taken; `wanted`: the user says so.
[[nodiscard]] bool is_taken(ComingPart coming, bool wanted);
/// The kit here after that. Language and theme stay unless the user said that the file's are wanted.
[[nodiscard]] Kit taken_kit(const Kit& here, const Backup& file, ComingPart coming, bool wanted);
[[nodiscard]] Places taken_places(const Places& here, const Backup& file, ComingPart coming, bool wanted);

/// Of a book's bytes: the shelf's own, else what they say; "" where they cannot be read.
[[nodiscard]] std::string identity_of(const ShelvedBook& shelved, std::string_view bytes);

}  // namespace bentbook
