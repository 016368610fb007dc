#include "screens/desks/shop_desk.h"

#include <algorithm>
#include <utility>

#include "numeric/sorting.h"
#include "shop/log/explained.h"
#include "shop/log/record.h"
#include "shop/log/snapshot.h"
#include "text/hex.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kDeviceKey = "device";
/// Events after which the state is kept anew.
constexpr std::uint64_t kSnapshotEvery = 256;

std::string device_text(std::uint64_t device) {
  std::string text;
  put_hex(text, device, 16);
  return text;
}

LogRecord record_of(const Event& event) {
  std::string line = write_event(event);
  line.pop_back();  // its line feed
  return {device_text(event.device), static_cast<std::int64_t>(event.sequence), std::move(line)};
}

/// The events of a log's records in order, none twice; how many lines were none.
std::vector<Event> events_of(std::string_view lines, int& damaged) {
  std::vector<Event> events;
  damaged = 0;
  while (const auto line = take_line(lines)) {
    if (auto event = read_event(*line))
      events.push_back(std::move(*event));
    else
      ++damaged;
  }
  sort_by(events, before);
  events.erase(std::unique(events.begin(), events.end()), events.end());
  return events;
}

/// Without those that neither the state nor the others explain; how many they were goes on top of `damaged`.
std::vector<Event> explained_only(std::vector<Event> events, Explained explained, int& damaged) {
  const auto all = events.size();
  std::erase_if(events, [&](const Event& e) { return !explained.take(e); });
  damaged += static_cast<int>(all - events.size());
  return events;
}

/// Beyond what a snapshot says of its devices nothing of it lies in the log.
bool without_gaps(const ShopState& state) {
  return std::all_of(state.devices.begin(), state.devices.end(),
                     [](const auto& device) { return device.second.last == device.second.whole; });
}

}  // namespace

void ShopDesk::open(std::string_view identity) {
  if (identity == book_) return;
  book_ = identity;
  read_again();
}

void ShopDesk::stored_anew() {
  others_.clear();  // asked_ stays: each question is answered once, whatever came between
  device_asked_ = false;
  read_again();
}

void ShopDesk::read_again() {
  shop_ = {};
  log_ = {book_, {}};
  whole_ = reading_ = snapshot_ = false;
  damaged_ = 0;
  snapshot_events_ = 0;
  changed();
  state_ = book_.empty() ? State::kNone : State::kReading;
  if (book_.empty()) return;
  if (device_ == 0) platform_.load(kDeviceKey);
  platform_.load(left_out_key(book_));
}

bool ShopDesk::take(const PlatformEvent& event) {
  switch (event.kind) {
    case EventKind::kLoaded:
      if (event.key == kDeviceKey) {
        // Asked for twice before there was one, it is made once.
        if (device_ == 0 || !event.text.empty()) take_device(read_hex(event.text, 16).value_or(0));
        return true;
      }
      if (book_.empty()) return false;
      if (event.key == left_out_key(book_)) {
        left_out_ = read_left_out(event.text).value_or(Devices{});
        platform_.load(snapshot_key());
        return true;
      }
      if (event.key != snapshot_key()) return false;
      if (state_ != State::kReading || reading_) return true;
      if (auto kept = read_snapshot(event.text); kept && without_gaps(*kept) && is_explained(*kept))
        read_beyond(*kept);
      else
        read_whole();
      return true;
    case EventKind::kSaved:
    case EventKind::kSaveFailed:
      return event.key == kDeviceKey ||
             (!book_.empty() && (event.key == snapshot_key() || event.key == left_out_key(book_)));
    case EventKind::kLogRead:
      if (!is_others_answer(event) && event.key == book_) logged(event);
      return true;
    case EventKind::kAppended:
    case EventKind::kAppendFailed:
      appended(event);
      return true;
    default:
      return false;
  }
}

void ShopDesk::read_beyond(const ShopState& snapshot) {
  shop_ = snapshot;
  snapshot_events_ = snapshot.events;
  snapshot_ = reading_ = true;
  std::vector<LogRecord> known;
  known.reserve(shop_.devices.size());
  for (const auto& [device, d] : shop_.devices)
    known.push_back({device_text(device), static_cast<std::int64_t>(d.last), {}});
  ask_log(known);
}

void ShopDesk::read_whole() {
  snapshot_ = false;
  reading_ = true;
  ask_log({});
}

void ShopDesk::ask_log(const std::vector<LogRecord>& known) {
  asked_.push_back({book_, false});
  platform_.read_log(book_, known);
}

void ShopDesk::read_other(std::string_view identity) {
  asked_.push_back({std::string(identity), true});
  platform_.read_log(identity, {});
}

bool ShopDesk::is_others_answer(const PlatformEvent& event) {
  const auto it = std::find_if(asked_.begin(), asked_.end(), [&](const Asked& a) { return a.book == event.key; });
  if (it == asked_.end()) return false;
  const bool other = it->other;
  asked_.erase(it);
  if (!other) return false;
  OtherLog read{{event.key, {}}, event.number != 0};
  int damaged = 0;
  std::vector<Event> events = events_of(event.text, damaged);
  for (const Waiting& w : waiting_)
    if (w.book == event.key) events.insert(events.end(), w.events.begin(), w.events.end());
  sort_by(events, before);
  events.erase(std::unique(events.begin(), events.end()), events.end());
  read.log.events = explained_only(std::move(events), Explained(), damaged);
  others_.push_back(std::move(read));
  return true;
}

std::optional<ShopDesk::OtherLog> ShopDesk::take_other() {
  if (others_.empty()) return std::nullopt;
  OtherLog first = std::move(others_.front());
  others_.erase(others_.begin());
  return first;
}

bool ShopDesk::knows_device() {
  if (device_ == 0 && !std::exchange(device_asked_, true)) platform_.load(kDeviceKey);
  return device_ != 0;
}

void ShopDesk::take_in(const std::string& identity, std::vector<Event> fresh) {
  if (read_only_ || device_ == 0 || fresh.empty()) return;
  if (identity == book_ && state_ == State::kOpen && whole_) {
    (void)merge({identity, std::move(fresh)});
    return;
  }
  if (std::any_of(fresh.begin(), fresh.end(), [&](const Event& e) { return e.device == device_; })) take_device(0);
  waiting_.push_back({++ticket_, identity, std::move(fresh)});
  hand_over(waiting_.back());
  if (identity == book_) read_again();
}

void ShopDesk::logged(const PlatformEvent& event) {
  if (!std::exchange(reading_, false)) return;
  if (event.number == 2) return read_whole();  // another log than the one that the snapshot was folded from
  if (event.number != 0) {
    state_ = State::kUnreadable;
    return changed();
  }
  std::vector<Event> events = events_of(event.text, damaged_);
  events = explained_only(std::move(events), snapshot_ ? Explained(shop_) : Explained(), damaged_);
  if (snapshot_) {
    std::erase_if(events, [&](const Event& e) { return left_out_.count(e.device) != 0; });
    // Events of another phone that come before the snapshot's last: the log has the last word.
    if (!go_on(shop_, events)) return read_whole();
  } else {
    log_ = {book_, events};
    shop_ = folded();
    whole_ = true;
  }
  take_up_waiting(events);
  state_ = State::kOpen;
  changed();
  keep_snapshot();
}

bool ShopDesk::this_book_waits() const {
  return std::any_of(waiting_.begin(), waiting_.end(), [&](const Waiting& w) { return w.book == book_; });
}

/// What was ticked and is not in storage yet stays in what is shown. Where storage refused it, another window may have
/// used its numbers meanwhile.
void ShopDesk::take_up_waiting(const std::vector<Event>& stored) {
  for (Waiting& w : waiting_) {
    if (w.book != book_) continue;
    for (Event& e : w.events) {
      if (w.failed && e.device == device_ && std::find(stored.begin(), stored.end(), e) == stored.end()) number(e);
      take_up(e);
    }
  }
}

/// The next numbers of this phone.
void ShopDesk::number(Event& event) const {
  const auto own = shop_.devices.find(device_);
  event.device = device_;
  event.sequence = own == shop_.devices.end() ? 1 : own->second.last + 1;
  event.logical = std::max(shop_.last_logical + 1, event.sequence);
}

void ShopDesk::take_device(std::uint64_t device) {
  device_ = device;
  while (device_ == 0) device_ = platform_.random_bits();
  if (device_ != device) platform_.save(kDeviceKey, ++devices_, device_text(device_));
}

const Log* ShopDesk::whole_log() {
  if (state_ != State::kOpen) return nullptr;
  if (whole_) return &log_;
  if (!reading_) read_whole();
  return nullptr;
}

void ShopDesk::leave_out(Devices devices) {
  if (state_ != State::kOpen || read_only_ || !whole_) return;
  devices.erase(device_);
  if (devices == left_out_) return;
  left_out_ = std::move(devices);
  shop_ = folded();
  changed();
  // The state kept so far was folded from others.
  platform_.erase(snapshot_key());
  platform_.save(left_out_key(book_), ++choices_, write_left_out(left_out_));
  snapshot_events_ = 0;
  keep_snapshot();
}

bool ShopDesk::pending(EventId id) const {
  for (const Waiting& w : waiting_)
    for (const Event& e : w.events)
      if (e.id() == id) return true;
  return false;
}

void ShopDesk::take_up(const Event& event) {
  if (whole_) add_event(log_, event);
  if (left_out_.count(event.device) != 0) return;
  if (follows(shop_, event)) return apply(shop_, event);
  // Only the whole log can say what an event among earlier ones does; what the state holds already changes nothing.
  if (whole_) shop_ = folded();
}

Result<EventId> ShopDesk::add(Event event) {
  if (state_ != State::kOpen || read_only_ || device_ == 0) return fail(ErrorCode::kConflict, "shop");
  number(event);
  event.wall = std::max<std::int64_t>(0, platform_.wall_clock_ms());
  if (auto good = check_event(event); !good) return tl::unexpected(good.error());
  take_up(event);
  const EventId id = event.id();
  waiting_.push_back({++ticket_, book_, {std::move(event)}, !failure_.empty()});
  if (waiting_.back().failed)
    retry();
  else
    hand_over(waiting_.back());
  changed();
  return id;
}

Result<int> ShopDesk::merge(const Log& other) {
  if (state_ != State::kOpen || read_only_ || !whole_) return fail(ErrorCode::kConflict, "shop");
  Result<Log> both = merged(log_, other);
  if (!both) return tl::unexpected(both.error());
  std::vector<Event> fresh;
  std::set_difference(both->events.begin(), both->events.end(), log_.events.begin(), log_.events.end(),
                      std::back_inserter(fresh), before);
  if (fresh.empty()) return 0;
  // Somebody else counts under this phone's number: it was copied, or set back to what it was before.
  if (std::any_of(fresh.begin(), fresh.end(), [&](const Event& e) { return e.device == device_; })) take_device(0);
  log_ = std::move(*both);
  shop_ = folded();
  const int count = static_cast<int>(fresh.size());
  waiting_.push_back({++ticket_, book_, std::move(fresh)});
  hand_over(waiting_.back());
  changed();
  return count;
}

void ShopDesk::hand_over(Waiting& waiting) {
  waiting.failed = false;
  std::vector<LogRecord> records;
  records.reserve(waiting.events.size());
  for (const Event& e : waiting.events) records.push_back(record_of(e));
  platform_.append(waiting.book, waiting.ticket, std::move(records));
}

void ShopDesk::retry() {
  // A book's in one transaction, so that nothing later is on disk without what came before it.
  std::vector<Waiting> again;
  for (Waiting& w : waiting_) {
    if (!w.failed) continue;
    auto same = std::find_if(again.begin(), again.end(), [&](const Waiting& a) { return a.book == w.book; });
    if (same == again.end()) same = again.insert(again.end(), {++ticket_, w.book, {}});
    std::move(w.events.begin(), w.events.end(), std::back_inserter(same->events));
  }
  std::erase_if(waiting_, [](const Waiting& w) { return w.failed; });
  failure_.clear();
  for (Waiting& w : again) {
    waiting_.push_back(std::move(w));
    hand_over(waiting_.back());
  }
}

void ShopDesk::appended(const PlatformEvent& event) {
  const auto it =
      std::find_if(waiting_.begin(), waiting_.end(), [&](const Waiting& w) { return w.ticket == event.number; });
  if (it == waiting_.end()) return;
  if (event.kind == EventKind::kAppendFailed) {
    it->failed = true;
    failure_ = event.text.empty() ? "other" : event.text;
  } else {
    waiting_.erase(it);
  }
  changed();
  keep_snapshot();
}

void ShopDesk::keep_snapshot() {
  // A snapshot never holds what the log in storage does not.
  if (read_only_ || this_book_waits() || shop_.events < snapshot_events_ + kSnapshotEvery || !shop_.twice.empty())
    return;
  snapshot_events_ = shop_.events;
  platform_.save(snapshot_key(), ++snapshots_, write_snapshot(shop_));
}

}  // namespace bentbook::screens
