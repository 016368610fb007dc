#include "screens/desks/backup_desk.h"

#include <algorithm>
#include <utility>

#include "book/book_file.h"
#include "numeric/sorting.h"
#include "shop/log/log_file.h"

namespace bentbook::screens {

std::string BackupDesk::stamp() const {
  const Stored& book = books_.book_store();
  std::string out = book.key;
  for (const std::int64_t n : {book.revision, books_.shelf_store().revision, static_cast<std::int64_t>(shop_.turn())})
    (out += ' ') += std::to_string(n);
  return out;
}

void BackupDesk::stored_anew() {
  state_ = State::kNothing;
  waiting_.clear();
  logs_.clear();
  asked_logs_.clear();
  taking_.reset();
  busy_ = done_ = false;
}

void BackupDesk::want(Parts parts) {
  if (state_ == State::kReading || busy_) return;
  if (state_ != State::kNothing && parts == parts_ && stamp() == stamp_) return;
  if (books_.state() == BooksDesk::State::kWaiting || books_.shelf_store().unusable) return;
  parts_ = std::move(parts);
  here_ = {};
  here_.kit.bytes = parts_.kit;
  here_.places.bytes = parts_.places;
  taking_.reset();
  waiting_.clear();
  logs_.clear();
  asked_logs_.clear();
  logs_known_ = false;
  events_ = 0;
  odd_books_.clear();
  state_ = State::kReading;
  ask_books();
  step();
}

void BackupDesk::ask_books() {
  const Shelf& shelf = books_.shelf();
  shelf_ = write_shelf(shelf);
  here_.books.reserve(shelf.books.size());
  for (const ShelvedBook& book : shelf.books) {
    const std::optional<std::string> bytes = books_.bytes_at_hand(book.id);
    if (!bytes) waiting_.emplace(book.id, here_.books.size());
    here_.books.push_back({book.title,
                           book.identity,
                           book.changed_at,
                           book.deleted_at,
                           book.days_seen,
                           bytes.value_or(std::string{}),
                           {}});
  }
  const std::map<std::string, std::size_t> asked = waiting_;
  for (const auto& [id, index] : asked) platform_.load(id);
}

void BackupDesk::see(const PlatformEvent& event) {
  if (event.kind == EventKind::kShared && !sharing_.empty() && event.key == sharing_) {
    sharing_.clear();
    shared_ = event.text;
    if (event.text.empty()) books_.copied();
  }
  if (event.kind != EventKind::kLoaded) return;
  const auto it = waiting_.find(event.key);
  if (it == waiting_.end()) return;
  here_.books[it->second].bytes = event.text;
  waiting_.erase(it);
}

/// Books are all there: whose logs are to be read is known.
void BackupDesk::know_logs() {
  logs_known_ = true;
  const Shelf& shelf = books_.shelf();
  for (std::size_t i = 0; i < here_.books.size(); ++i) {
    BackupBook& book = here_.books[i];
    if (!read_book(book.bytes)) odd_books_.push_back(book.title);
    book.identity = identity_of(shelf.books[i], book.bytes);
    if (!book.identity.empty()) logs_.insert(book.identity);
  }
}

/// The one that the shop looks at is the shop's to read; it may look at another one meanwhile.
void BackupDesk::read_logs() {
  for (const std::string& identity : logs_)
    if (identity != shop_.book() && asked_logs_.insert(identity).second) shop_.read_other(identity);
  while (const auto other = shop_.take_other()) {
    if (other->unreadable) state_ = State::kUnreadable;
    put_log(other->log);
  }
  if (logs_.count(std::string(shop_.book())) == 0) return;
  if (shop_.state() == ShopDesk::State::kUnreadable) state_ = State::kUnreadable;
  if (const Log* log = shop_.whole_log()) put_log(*log);
}

void BackupDesk::put_log(const Log& log) {
  if (logs_.erase(log.book) == 0) return;
  events_ += log.events.size();
  if (!log.events.empty()) here_.logs.push_back({log.book, write_log(log), {}});
}

void BackupDesk::step() {
  if (busy_ && !books_.taking_in() && !shop_.pending()) {
    busy_ = false;
    done_ = true;
    state_ = State::kNothing;
  }
  if (state_ != State::kReading || !waiting_.empty()) return;
  // A book made or thrown away meanwhile: from the start.
  if (write_shelf(books_.shelf()) != shelf_) {
    state_ = State::kNothing;
    return want(std::move(parts_));
  }
  if (!logs_known_) know_logs();
  read_logs();
  if (state_ == State::kReading && logs_.empty()) finish();
  if (state_ == State::kUnreadable) stamp_ = stamp();
}

void BackupDesk::finish() {
  here_.made_at = std::max<std::int64_t>(0, platform_.wall_clock_ms());
  sort_by(here_.logs, [](const BackupLog& a, const BackupLog& b) { return a.identity < b.identity; });
  here_ = sealed(std::move(here_));
  stamp_ = stamp();
  state_ = State::kThere;
}

void BackupDesk::share(std::string name) {
  if (state_ != State::kThere) return;
  sharing_ = name;
  platform_.share_file(std::move(name), "application/json", write_backup(here_));
}

void BackupDesk::look_at(std::string_view bytes) {
  file_ = read_backup(bytes);
  taking_.reset();
  with_kit = false;
  (void)shop_.knows_device();
}

const Taking* BackupDesk::taking(std::string_view when) {
  if (state_ != State::kThere || !file_ || !shop_.knows_device()) return nullptr;
  if (taking_ && taking_of_ == stamp_ + ' ' + std::string(when)) return &*taking_;
  taking_of_ = stamp_ + ' ' + std::string(when);
  taking_ = taking_of(*file_, here_, books_.shelf(), when);
  return &*taking_;
}

void BackupDesk::take_all() {
  if (!taking_ || busy_ || state_ != State::kThere) return;
  busy_ = true;
  books_.take_in(taking_->fresh);
  for (ComingLog& log : taking_->logs) shop_.take_in(log.identity, std::move(log.fresh));
  taking_.reset();
  step();
}

}  // namespace bentbook::screens
