#include "screens/desks/books_desk.h"

#include <algorithm>
#include <utility>

#include "book/book_file.h"
#include "screens/desks/shop_desk.h"
#include "text/hex.h"

namespace bentbook::screens {

void BooksDesk::load() {
  state_ = State::kWaiting;
  wanted_.clear();
  // What was not stored by now stands on older values than those that come.
  left_.clear();
  coming_.clear();
  book_store_ = {""};
  shelf_asked_ = true;
  platform_.load("shelf");
}

bool BooksDesk::take(const PlatformEvent& event) {
  if (event.kind == EventKind::kLoaded) {
    if (event.key == shelf_store_.key)
      shelf_loaded(event.text);
    else
      book_loaded(event.key, event.text);
    return true;
  }
  for (Stored* store : stores()) {
    if (event.key != store->key) continue;
    store->answered(event);
    std::erase_if(left_, [](const Left& l) { return l.store.saved == l.store.revision; });
    shelve_arrived();
    return true;
  }
  return false;
}

std::vector<Stored*> BooksDesk::stores() {
  std::vector<Stored*> all{&shelf_store_, &book_store_};
  all.reserve(left_.size() + coming_.size() + 2);
  for (Left& l : left_) all.push_back(&l.store);
  for (Arriving& a : coming_) all.push_back(&a.store);
  return all;
}

BooksDesk::Left* BooksDesk::left(const Stored& store) {
  for (Left& l : left_)
    if (&l.store == &store) return &l;
  return nullptr;
}

/// The open book is about to be closed.
void BooksDesk::leave_book() {
  if (book_store_.saved < book_store_.revision) left_.push_back({book_store_, handed_over_});
}

void BooksDesk::shelf_loaded(const std::string& bytes) {
  if (!std::exchange(shelf_asked_, false)) return;
  shelf_store_.read_anew();
  if (bytes.empty()) return first_shelf();
  Result<Shelf> shelf = read_shelf(bytes);
  if (!shelf) {
    // Which books there are is not known: nothing is written until the user says so.
    shelf_store_.found_unusable(shelf.error().code, bytes);
    shelf_ = {};
    state_ = State::kNone;
    return;
  }
  shelf_ = std::move(*shelf);
  drop_overdue();
  if (shelf_.open.empty() || find_book(shelf_, shelf_.open) == nullptr) {
    state_ = State::kNone;
    return;
  }
  want(shelf_.open, Want::kOpen);
}

void BooksDesk::first_shelf() {
  Book demo = demo_book();
  // One for all phones: what is tried out on one can be merged on another.
  demo.identity = "demo";
  shelf_ = with_book({}, demo.title, platform_.wall_clock_ms());
  put_down(shelf_.open, std::move(demo), false);
}

void BooksDesk::drop_overdue() {
  if (read_only_) return;
  const std::int64_t now = platform_.wall_clock_ms();
  Shelf seen = seen_on(shelf_, now);
  const std::vector<std::string> ids = overdue(seen, now);
  if (ids.empty() && seen == shelf_) return;
  shelf_ = std::move(seen);
  const std::vector<std::string> logs = orphaned(shelf_, ids);
  shelf_ = without(std::move(shelf_), ids);
  shelf_store_.save(platform_, write_shelf(shelf_));
  for (const std::string& id : ids) platform_.erase(id);
  for (const std::string& log : logs) {
    platform_.erase_log(log);
    platform_.erase(shop_snapshot_key(log));
    platform_.erase(left_out_key(log));
  }
}

void BooksDesk::want(std::string_view id, Want what) {
  if (what == Want::kOpen) {
    state_ = State::kWaiting;
    std::erase_if(wanted_, [](const Wanted& w) { return w.want == Want::kOpen; });
  }
  wanted_.push_back({std::string(id), what});
  platform_.load(id);
}

void BooksDesk::book_loaded(const std::string& id, const std::string& bytes) {
  const auto it = std::find_if(wanted_.begin(), wanted_.end(), [&](const Wanted& w) { return w.id == id; });
  if (it == wanted_.end()) return;
  const Want what = it->want;
  wanted_.erase(it);
  const ShelvedBook* shelved = find_book(shelf_, id);
  const std::string title = shelved == nullptr ? id : shelved->title;
  // What was not stored is newer than what is.
  const auto unstored = std::find_if(left_.begin(), left_.end(), [&](const Left& l) { return l.store.key == id; });
  const std::string& newest = unstored == left_.end() ? bytes : unstored->bytes;
  if (what == Want::kShare) return share_bytes(title, newest);
  std::string refused;
  Result<Book> book = read_book(newest, &refused);
  if (book && what == Want::kCopy) {
    book->title = title;
    book->identity.clear();
    return make(std::move(*book));
  }
  if (!book) {
    error_ = book.error();
    if (what == Want::kCopy) return;
    state_ = State::kUnreadable;
    leave_book();
    book_store_ = {id};
    book_store_.found_unusable(error_.code, bytes);
    return;
  }
  book->title = title;
  const bool nameless = book->identity.empty() && !read_only_, again = unstored != left_.end();
  if (again) left_.erase(unstored);
  if (nameless) book->identity = new_identity();
  fresh_identity_ = !refused.empty();
  const bool known = shelved != nullptr && shelved->identity == book->identity;
  put_down(id, std::move(*book), true);
  if (nameless || again) save(book_store_);
  if (!known) save_shelf();
}

void BooksDesk::put_down(std::string id, Book book, bool on_disk) {
  leave_book();
  book_store_ = {std::move(id)};
  history_ = History<Book>(std::move(book));
  shelf_ = with_identity(std::move(shelf_), book_store_.key, history_.now().identity);
  model_ = solve(history_.now());
  previewed_.reset();
  on_disk_ = on_disk;
  state_ = State::kOpen;
}

void BooksDesk::solve_from(const Book& was) {
  model_ = solve_again(history_.now(), was, model_);
  previewed_.reset();
}

BooksDesk::Preview BooksDesk::preview(Book book) {
  if (book == history_.now()) return {history_.now(), model_};
  if (!previewed_ || !(*previewed_ == book)) {
    preview_model_ = solve_again(book, history_.now(), model_);
    previewed_ = std::move(book);
  }
  return {*previewed_, preview_model_};
}

void BooksDesk::change(Book next) {
  if (read_only_ || state_ != State::kOpen || next == history_.now()) return;
  const Book was = history_.now();
  history_.commit(std::move(next));
  solve_from(was);
  save(book_store_);
  note_change(book_store_.key);
}

void BooksDesk::step(bool back) {
  if (read_only_ || state_ != State::kOpen) return;
  const Book was = history_.now();
  if (back)
    history_.undo();
  else
    history_.redo();
  solve_from(was);
  save(book_store_);
  note_change(book_store_.key);
}

void BooksDesk::save(Stored& store) {
  if (read_only_) return;
  if (&store == &shelf_store_) return save_shelf();
  if (Left* l = left(store)) return l->store.save(platform_, l->bytes);
  for (Arriving& a : coming_)
    if (&a.store == &store) return a.store.save(platform_, a.bytes);
  // A book must never be on disk without its place on the shelf.
  const bool first = !std::exchange(on_disk_, true);
  save_book();
  if (first) save_shelf();
}

void BooksDesk::save_book() {
  handed_over_ = write_book(titled());
  book_store_.save(platform_, handed_over_);
}

void BooksDesk::save_shelf() {
  if (read_only_ || shelf_store_.unusable) return;
  if (state_ == State::kOpen && !std::exchange(on_disk_, true)) save_book();
  shelf_store_.save(platform_, write_shelf(shelf_));
}

void BooksDesk::replace_shelf() {
  shelf_ = {};
  shelf_.next = std::max<std::int64_t>(1, platform_.wall_clock_ms() / 1000);
  shelf_store_.unusable.reset();
  save_shelf();
}

std::string BooksDesk::bytes_of(const Stored& store) const {
  for (const Left& l : left_)
    if (&l.store == &store) return l.bytes;
  for (const Arriving& a : coming_)
    if (&a.store == &store) return a.bytes;
  return &store == &shelf_store_ ? write_shelf(shelf_) : write_book(titled());
}

void BooksDesk::make(Book book) {
  if (read_only_ || shelf_store_.unusable) return;
  if (state_ == State::kOpen && !on_disk_) save(book_store_);
  shelf_ = with_book(std::move(shelf_), book.title, platform_.wall_clock_ms());
  book.title = shelf_.books.back().title;
  if (book.identity.empty()) book.identity = new_identity();
  put_down(shelf_.open, std::move(book), false);
  save_shelf();
}

void BooksDesk::open(std::string_view id) {
  if (read_only_ || find_book(shelf_, id) == nullptr || (id == shelf_.open && state_ == State::kOpen)) return;
  if (state_ == State::kOpen && !on_disk_) save(book_store_);
  shelf_.open = id;
  state_ = State::kWaiting;
  save_shelf();
  want(shelf_.open, Want::kOpen);
}

void BooksDesk::copy(std::string_view id) {
  if (read_only_) return;
  if (id == shelf_.open && state_ == State::kOpen) {
    Book copy = titled();
    copy.identity.clear();
    return make(std::move(copy));
  }
  want(id, Want::kCopy);
}

void BooksDesk::share(std::string_view id) {
  const ShelvedBook* shelved = find_book(shelf_, id);
  if (shelved == nullptr) return;
  if (id == shelf_.open && state_ == State::kOpen) return share_bytes(shelved->title, write_book(titled()));
  want(id, Want::kShare);
}

void BooksDesk::share_bytes(std::string_view title, std::string bytes) {
  platform_.share_file(std::string(title) + ".json", "application/json", std::move(bytes));
}

void BooksDesk::rename(std::string_view id, std::string_view title) {
  const ShelvedBook* shelved = find_book(shelf_, id);
  if (read_only_ || title.empty() || shelved == nullptr || shelved->title == title) return;
  shelf_ = with_title(std::move(shelf_), id, title, platform_.wall_clock_ms());
  save_shelf();
  if (id == shelf_.open && state_ == State::kOpen) save(book_store_);
}

const std::string& BooksDesk::title() const {
  const ShelvedBook* shelved = find_book(shelf_, shelf_.open);
  return shelved == nullptr ? history_.now().title : shelved->title;
}

Book BooksDesk::titled() const {
  Book out = book();
  out.title = title();
  return out;
}

std::string BooksDesk::new_identity() const {
  std::string identity;
  put_hex(identity, platform_.random_bits(), 16);
  return identity + "b";
}

std::string BooksDesk::any_on_shelf() const {
  for (auto it = shelf_.books.rbegin(); it != shelf_.books.rend(); ++it)
    if (it->deleted_at == 0) return it->id;
  return {};
}

void BooksDesk::remove(std::string_view id) {
  if (read_only_) return;
  const bool was_open = id == shelf_.open;
  if (was_open && state_ == State::kOpen && !on_disk_) save(book_store_);
  shelf_ = with_deleted(std::move(shelf_), id, platform_.wall_clock_ms());
  if (was_open) {
    state_ = State::kNone;
    shelf_.open = any_on_shelf();
  }
  save_shelf();
  if (was_open && !shelf_.open.empty()) want(shelf_.open, Want::kOpen);
}

void BooksDesk::restore(std::string_view id) {
  if (read_only_) return;
  shelf_ = with_restored(std::move(shelf_), id);
  save_shelf();
}

void BooksDesk::take_in(const std::vector<Taking::Fresh>& books) {
  if (read_only_ || shelf_store_.unusable) return;
  Shelf with = shelf_;
  coming_.reserve(coming_.size() + books.size());
  for (const Taking::Fresh& fresh : books) {
    with = with_shelved(std::move(with), fresh.book);
    coming_.push_back({Stored{with.books.back().id}, with.books.back(), fresh.bytes});
    coming_.back().store.save(platform_, fresh.bytes);
  }
  // Nobody else gets these ids; the books themselves are not on the shelf before they are on the disk.
  shelf_.next = with.next;
}

void BooksDesk::shelve_arrived() {
  const auto waits = [](const Arriving& a) { return a.store.saved < a.store.revision; };
  if (coming_.empty() || std::any_of(coming_.begin(), coming_.end(), waits)) return;
  for (Arriving& a : coming_) shelf_.books.push_back(std::move(a.shelved));
  coming_.clear();
  save_shelf();
}

void BooksDesk::copied() {
  if (read_only_) return;
  shelf_ = with_copied(std::move(shelf_), platform_.wall_clock_ms());
  save_shelf();
}

void BooksDesk::log_grew(std::string_view identity) { note_change(identity); }

/// Told to the disk once between two copies, and never where no copy was made.
void BooksDesk::note_change(std::string_view id_or_identity) {
  if (read_only_) return;
  Shelf noted = with_changed(shelf_, id_or_identity, platform_.wall_clock_ms());
  if (noted == shelf_) return;
  shelf_ = std::move(noted);
  save_shelf();
}

std::optional<std::string> BooksDesk::bytes_at_hand(std::string_view id) const {
  if (state_ == State::kOpen && id == book_store_.key) return write_book(titled());
  for (const Left& l : left_)
    if (l.store.key == id) return l.bytes;
  return std::nullopt;
}

}  // namespace bentbook::screens
