#pragma once
/// Everything that this phone keeps, brought together for a copy that goes out, or set against one that came in. Books
/// and logs are read through the platform, so each of it takes a few frames: step() goes on with every answer.

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "book/backup/merge.h"
#include "screens/desks/books_desk.h"
#include "screens/desks/shop_desk.h"

namespace bentbook::screens {

class BackupDesk {
 public:
  /// Kit and places as they would be stored now.
  struct Parts {
    std::string kit, places;
    friend bool operator==(const Parts&, const Parts&) = default;
  };

  BackupDesk(Platform& platform, BooksDesk& books, ShopDesk& shop) : platform_(platform), books_(books), shop_(shop) {}

  /// Wants what lies here as it stands now; asked in every frame that shows it. While nothing changed it reads nothing.
  void want(Parts parts);
  /// What could not be read is read again.
  void again() { state_ = State::kNothing; }
  /// What is stored is read again: nothing known before holds.
  void stored_anew();
  /// Looks at an answer of the platform; the other desks look at it too.
  void see(const PlatformEvent& event);
  /// Goes on; after each answer.
  void step();

  /// What lies here, or nullptr while it is read, or cannot be.
  [[nodiscard]] const Backup* here() const { return state_ == State::kThere ? &here_ : nullptr; }
  /// How many entries its logs have.
  [[nodiscard]] std::size_t events() const { return events_; }
  /// A book or a log cannot be read from storage now.
  [[nodiscard]] bool unreadable() const { return state_ == State::kUnreadable; }
  /// Books that this version cannot read, by title: they are in the copy all the same.
  [[nodiscard]] const std::vector<std::string>& odd_books() const { return odd_books_; }

  /// The copy to the share sheet; kShared under that name says how it ended.
  void share(std::string name);
  /// Once: how the copy that was handed over ended: "" went out, else why not.
  [[nodiscard]] std::optional<std::string> take_shared() { return std::exchange(shared_, std::nullopt); }

  /// A file that was opened.
  void look_at(std::string_view bytes);
  [[nodiscard]] const Result<Backup>& file() const { return file_; }
  /// What it does to what lies here, or nullptr while that is read. `when`: as of taking_of.
  [[nodiscard]] const Taking* taking(std::string_view when);
  /// Takes books and logs in. Nothing happens while read-only, or before taking() is there.
  void take_all();
  /// Books or logs of the file are on their way to the disk.
  [[nodiscard]] bool busy() const { return busy_; }
  /// Once: everything is on the disk.
  [[nodiscard]] bool take_done() { return std::exchange(done_, false); }
  bool with_kit = false;  ///< the user wants the file's kit and entries too

 private:
  enum class State : std::uint8_t { kNothing, kReading, kThere, kUnreadable };
  /// What here_ is of; anything that changes it makes it another.
  [[nodiscard]] std::string stamp() const;
  void ask_books();
  void know_logs();
  void read_logs();
  void put_log(const Log& log);
  void finish();

  Platform& platform_;
  BooksDesk& books_;
  ShopDesk& shop_;
  State state_ = State::kNothing;
  Parts parts_;
  std::string stamp_;  ///< when it was all there
  std::string shelf_;  ///< whose books were asked for
  Backup here_;
  std::map<std::string, std::size_t> waiting_;  ///< ids of books asked for: their place in here_.books
  std::set<std::string> logs_, asked_logs_;     ///< identities whose logs are not read yet; those asked for
  bool logs_known_ = false;
  std::size_t events_ = 0;
  std::vector<std::string> odd_books_;

  std::string sharing_;
  std::optional<std::string> shared_;

  Result<Backup> file_{};
  std::optional<Taking> taking_;
  std::string taking_of_;  ///< the stamp and the day that it holds for
  bool busy_ = false, done_ = false;
};

}  // namespace bentbook::screens
