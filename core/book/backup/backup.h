#pragma once
/// Everything that a phone keeps, in one file: kit, places, every book and every book's log, each as it is stored. File
/// form in README.md beside this file. The number under which a phone counts its events is not part of it: two phones
/// never count under one.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

/// A file inside the file, and the checksum that stands beside it.
struct BackupPart {
  std::string bytes;  ///< "": nothing is stored
  std::string sum;
  friend bool operator==(const BackupPart&, const BackupPart&) = default;
};
struct BackupBook {
  std::string title, identity;  ///< as the shelf has them; identity "": not known
  std::int64_t changed_at = 0;
  std::int64_t deleted_at = 0, days_seen = 0;  ///< as ShelvedBook has them
  std::string bytes, sum;
  friend bool operator==(const BackupBook&, const BackupBook&) = default;
};
struct BackupLog {
  std::string identity;  ///< of its book
  std::string bytes;     ///< a log's file (shop/log)
  std::string sum;
  friend bool operator==(const BackupLog&, const BackupLog&) = default;
};

struct Backup {
  std::int64_t made_at = 0;  ///< milliseconds since 1970, UTC
  BackupPart kit, places;
  std::vector<BackupBook> books;  ///< in the shelf's order
  std::vector<BackupLog> logs;
  std::string sum;   ///< over all of that: what was taken out or put in shows
  std::string kept;  ///< as Kit::kept
  friend bool operator==(const Backup&, const Backup&) = default;
};

/// With every checksum made anew: what a backup is made with.
[[nodiscard]] Backup sealed(Backup backup);

/// Whether it fits its checksum.
[[nodiscard]] bool is_whole(const BackupPart& part);
[[nodiscard]] bool is_whole(const BackupBook& book);
[[nodiscard]] bool is_whole(const BackupLog& log);
/// …of the list of parts, whatever the parts themselves hold.
[[nodiscard]] bool is_complete(const Backup& backup);

/// Whether the bytes begin as such a file does.
[[nodiscard]] bool is_backup_file(std::string_view bytes);
/// Canonical bytes, checksums as they stand in the value: damage that was read is not made good by writing.
[[nodiscard]] std::string write_backup(const Backup& backup);
/// A damaged part is read all the same, its checksum tells. Errors as read_book, with where = "backup" or the member;
/// kSyntax for an identity that is none.
[[nodiscard]] Result<Backup> read_backup(std::string_view bytes);

}  // namespace bentbook
