#pragma once
/// The shop's desk: the log of the open book and what stands in the shop by it. A tick shows at once and is pending
/// until the platform says that it is on disk. The log is read from storage beyond the snapshot alone; the whole of it
/// only where somebody asks (passing it on, a snapshot that does not fit).

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "screens/app/stored.h"
#include "shop/log/log_file.h"
#include "shop/log/state.h"
#include "shop/log/writers.h"
#include "ui/platform.h"

namespace bentbook::screens {

/// Where what a log folds to is kept beside it.
[[nodiscard]] inline std::string shop_snapshot_key(std::string_view identity) {
  return std::string(identity) + ".shop";
}
/// Where it is kept whose events are left out.
[[nodiscard]] inline std::string left_out_key(std::string_view identity) { return std::string(identity) + ".out"; }

class ShopDesk {
 public:
  enum class State : std::uint8_t {
    kNone,     ///< no book
    kReading,  ///< the log is being read
    kOpen,
    kUnreadable,  ///< storage gives nothing: nothing is ticked
  };

  explicit ShopDesk(Platform& platform) : platform_(platform) {}
  /// The book whose shop is looked at, by its identity; the same one again changes nothing.
  void open(std::string_view identity);
  /// Reads it all again (another tab wrote); logs that read_other() brought before that are dropped.
  void stored_anew();
  /// Answers of the platform that are this desk's own; false: it is none.
  bool take(const PlatformEvent& event);
  void set_read_only(bool on) { read_only_ = on; }

  [[nodiscard]] State state() const { return state_; }
  [[nodiscard]] const ShopState& shop() const { return shop_; }
  /// Grows with every change of shop().
  [[nodiscard]] std::uint64_t turn() const { return turn_; }
  [[nodiscard]] std::string_view book() const { return book_; }
  /// Records in storage that are no events; they are left where they are.
  [[nodiscard]] int damaged() const { return damaged_; }

  /// Not yet on disk: handed over, or failed ("" if none did, else "quota", "closed", "other").
  [[nodiscard]] bool pending(EventId id) const;
  [[nodiscard]] bool pending() const { return !waiting_.empty(); }
  [[nodiscard]] const std::string& failure() const { return failure_; }
  /// Hands over again what failed.
  void retry();

  /// Puts an event of this phone into the log: device, numbers and wall time are filled in. Errors as check_event, and
  /// kConflict ("shop"): no log is open, or another tab writes.
  [[nodiscard]] Result<EventId> add(Event event);
  /// Takes up what another phone sent, all of it in one transaction; how many events were new. kConflict ("book"):
  /// another building's. The whole log must be there.
  [[nodiscard]] Result<int> merge(const Log& other);

  /// Asks for the log of any building; the shop that is looked at stays. Once it is read, take_other() has it.
  void read_other(std::string_view identity);
  struct OtherLog {
    Log log;  ///< with what was ticked here and is not in storage yet
    bool unreadable = false;
  };
  [[nodiscard]] std::optional<OtherLog> take_other();
  /// This phone's number is known: without it nothing is taken in. It is asked for where it is not.
  [[nodiscard]] bool knows_device();
  /// Events from elsewhere into the log of any building, in one transaction; they wait like ticks until they are on the
  /// disk. Nothing without this phone's number.
  void take_in(const std::string& identity, std::vector<Event> fresh);

  /// The whole log, or nullptr while it is being read: ask again with the next frame. What is left out is in it.
  [[nodiscard]] const Log* whole_log();

  /// Devices whose events do not count in shop(). This phone's own always do.
  [[nodiscard]] const Devices& left_out() const { return left_out_; }
  /// Another choice of them; the whole log must be there.
  void leave_out(Devices devices);

 private:
  void read_again();
  /// An event keeps the book that it was said of: it waits on while another one lies open.
  struct Waiting {
    std::int64_t ticket = 0;
    std::string book;
    std::vector<Event> events;
    bool failed = false;
  };
  /// A question to the storage that is not answered yet.
  struct Asked {
    std::string book;
    bool other = false;  ///< by read_other()
  };
  void ask_log(const std::vector<LogRecord>& known);
  /// The oldest question about that log: answers come in the order of the questions. True: read_other()'s.
  [[nodiscard]] bool is_others_answer(const PlatformEvent& event);
  void logged(const PlatformEvent& event);
  void read_beyond(const ShopState& snapshot);
  void read_whole();
  void appended(const PlatformEvent& event);
  void hand_over(Waiting& waiting);
  [[nodiscard]] bool this_book_waits() const;
  void take_up_waiting(const std::vector<Event>& stored);
  void number(Event& event) const;
  void take_device(std::uint64_t device);
  void take_up(const Event& event);
  [[nodiscard]] ShopState folded() const { return left_out_.empty() ? fold(log_) : fold(without(log_, left_out_)); }
  void changed() { ++turn_; }
  void keep_snapshot();
  [[nodiscard]] std::string snapshot_key() const { return shop_snapshot_key(book_); }

  Platform& platform_;
  State state_ = State::kNone;
  std::string book_;
  ShopState shop_;
  Log log_;
  bool whole_ = false;     ///< log_ holds every event
  bool reading_ = false;   ///< an answer to read_log is on its way
  bool snapshot_ = false;  ///< …of what lies beyond shop_
  bool read_only_ = false;
  std::uint64_t device_ = 0;
  Devices left_out_;
  std::vector<Waiting> waiting_;
  std::vector<Asked> asked_;
  std::vector<OtherLog> others_;
  bool device_asked_ = false;
  std::string failure_;
  std::int64_t ticket_ = 0;
  std::int64_t snapshots_ = 0, choices_ = 0, devices_ = 0;  ///< revisions handed over
  std::uint64_t snapshot_events_ = 0;                       ///< events that the last snapshot holds
  std::uint64_t turn_ = 0;
  int damaged_ = 0;
};

}  // namespace bentbook::screens
