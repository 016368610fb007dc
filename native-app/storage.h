#pragma once
/// What the app keeps on a desktop: one file a key in the user's data folder, replaced whole, never half written.

#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "records.h"

namespace bentbook::desktop {

/// A key that is none (is_key of ui/platform.h) has no file: nothing is read, written or taken away there.
class Storage {
 public:
  /// In $XDG_DATA_HOME/bentbook, else ~/.local/share/bentbook; makes the folder.
  Storage();
  ~Storage();
  Storage(const Storage&) = delete;
  Storage& operator=(const Storage&) = delete;

  /// One writer: true if no other window holds the folder. Asked again, it tries again.
  bool take_writing();
  /// Lets another window write: nothing is written here any more.
  void leave_writing();
  [[nodiscard]] const std::string& folder() const { return folder_; }
  /// The bytes of a key; "" where there is no such file. Nothing: there may be one, and it cannot be read now.
  [[nodiscard]] std::optional<std::string> read(std::string_view key) const;
  /// Writes beside, flushes to the disk, renames. Nothing when it went well, else "quota", "closed" or "other".
  [[nodiscard]] std::optional<std::string_view> write(std::string_view key, std::string_view bytes) const;
  /// Puts records ("device sequence line" each) at the end of a log's file and flushes them to the disk, or none of
  /// them. Failures as of write().
  [[nodiscard]] std::optional<std::string_view> append(std::string_view log, std::string_view lines) const;
  /// What was appended to a log, in whole lines; nothing as of read().
  [[nodiscard]] std::optional<std::set<Record>> read_records(std::string_view log) const;
  /// Takes a key's file away, or a log's.
  void erase(std::string_view key) const;
  void erase_log(std::string_view log) const;
  /// Puts a file that the user asked for into ~/Downloads, or the home folder; a name in use gets a number.
  [[nodiscard]] bool hand_out(std::string_view name, std::string_view bytes) const;

 private:
  /// Where a value or a log lies; nothing: the key is none.
  [[nodiscard]] std::optional<std::string> path_of(std::string_view key, const char* kind) const;
  void take_away(const std::optional<std::string>& path) const;
  std::string folder_;
  int lock_ = -1;
};

}  // namespace bentbook::desktop
