#pragma once
/// The desk: the shelf of books, and the one that lies open with its model and what can be undone. It reads and writes
/// through the platform; every edit is handed over to be stored at once.

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "book/backup/merge.h"
#include "book/book.h"
#include "book/book_shelf.h"
#include "book/history.h"
#include "model/book_model.h"
#include "screens/app/stored.h"

namespace bentbook::screens {

class BooksDesk {
 public:
  enum class State : std::uint8_t {
    kWaiting,     ///< the shelf or the book is being read
    kOpen,        ///< book() and model() are there
    kNone,        ///< no book is open
    kUnreadable,  ///< the open one's bytes cannot be read: error() says why, they are left alone
  };

  explicit BooksDesk(Platform& platform) : platform_(platform) {}
  /// Reads the shelf and the open book again. Nothing stored: the demo lies there.
  void load();
  /// Answers of the platform that are the desk's own; false: it is none.
  bool take(const PlatformEvent& event);
  void set_read_only(bool on) { read_only_ = on; }

  [[nodiscard]] State state() const { return state_; }
  [[nodiscard]] const Shelf& shelf() const { return shelf_; }
  [[nodiscard]] const Error& error() const { return error_; }
  [[nodiscard]] const Book& book() const { return history_.now(); }
  /// What the open book is called: the shelf says it, so that undo does not take a new name back.
  [[nodiscard]] const std::string& title() const;
  [[nodiscard]] const BookModel& model() const { return model_; }
  /// A book that is not committed (what stands in the keypad), and its model, solved once.
  struct Preview {
    const Book& book;
    const BookModel& model;
  };
  [[nodiscard]] Preview preview(Book book);

  void change(Book next);
  [[nodiscard]] bool can_undo() const { return state_ == State::kOpen && history_.can_undo(); }
  [[nodiscard]] bool can_redo() const { return state_ == State::kOpen && history_.can_redo(); }
  /// What these lead to; nullptr: nothing.
  [[nodiscard]] const Book* before() const { return can_undo() ? history_.before() : nullptr; }
  [[nodiscard]] const Book* after() const { return can_redo() ? history_.after() : nullptr; }
  void undo() { step(true); }
  void redo() { step(false); }

  /// A new book on the shelf, opened. Its title gets a number where it stands there already.
  void make(Book book);
  void open(std::string_view id);
  void copy(std::string_view id);   ///< …and open the copy
  void share(std::string_view id);  ///< its file to the share sheet
  void rename(std::string_view id, std::string_view title);
  void remove(std::string_view id);  ///< kept for 30 days; another one is opened
  void restore(std::string_view id);

  /// Books from elsewhere: each stands on the shelf once all of them are stored.
  void take_in(const std::vector<Taking::Fresh>& books);
  /// They are not stored yet, or that failed (their stores say so).
  [[nodiscard]] bool taking_in() const { return !coming_.empty() || shelf_store_.saved < shelf_store_.revision; }
  /// A copy of everything went out.
  void copied();
  /// The log of that building has grown.
  void log_grew(std::string_view identity);
  /// Bytes of a book that need not be asked for: it lies open, or was not stored yet.
  [[nodiscard]] std::optional<std::string> bytes_at_hand(std::string_view id) const;

  /// Once: the book just opened had an identity that is none and was given a fresh one.
  [[nodiscard]] bool take_fresh_identity() { return std::exchange(fresh_identity_, false); }

  [[nodiscard]] Stored& shelf_store() { return shelf_store_; }
  [[nodiscard]] Stored& book_store() { return book_store_; }
  /// These two, and the books that were closed before they were stored.
  [[nodiscard]] std::vector<Stored*> stores();
  [[nodiscard]] std::string bytes_of(const Stored& store) const;
  /// Writes again what failed.
  void save(Stored& store);
  /// The shelf could not be read, and the user gives it up: an empty one in its place. Books that lie in storage under
  /// ids of the old one are never written over.
  void replace_shelf();

 private:
  enum class Want : std::uint8_t { kOpen, kCopy, kShare };
  struct Wanted {
    std::string id;
    Want want = Want::kOpen;
  };
  /// A book that another one took the place of before it was stored.
  struct Left {
    Stored store;
    std::string bytes;
  };
  /// A book from elsewhere on its way to the disk.
  struct Arriving {
    Stored store;
    ShelvedBook shelved;
    std::string bytes;
  };
  [[nodiscard]] Left* left(const Stored& store);
  void shelve_arrived();
  void note_change(std::string_view id_or_identity);
  void leave_book();
  void shelf_loaded(const std::string& bytes);
  void book_loaded(const std::string& id, const std::string& bytes);
  void put_down(std::string id, Book book, bool on_disk);
  void first_shelf();
  void drop_overdue();
  void save_book();
  void save_shelf();
  void step(bool back);
  void solve_from(const Book& was);
  void want(std::string_view id, Want what);
  void share_bytes(std::string_view title, std::string bytes);
  [[nodiscard]] std::string any_on_shelf() const;
  [[nodiscard]] std::string new_identity() const;
  /// The open book under the name that it has now.
  [[nodiscard]] Book titled() const;

  Platform& platform_;
  State state_ = State::kWaiting;
  Shelf shelf_;
  History<Book> history_{Book{}};
  BookModel model_;
  std::optional<Book> previewed_;
  BookModel preview_model_;
  Error error_;
  Stored shelf_store_{"shelf"}, book_store_{""};
  std::vector<Wanted> wanted_;
  std::string handed_over_;  ///< bytes of the open book's last save
  std::vector<Left> left_;
  std::vector<Arriving> coming_;
  bool read_only_ = false;
  bool shelf_asked_ = false;
  bool fresh_identity_ = false;
  bool on_disk_ = false;  ///< the open book's bytes were written or read
};

}  // namespace bentbook::screens
