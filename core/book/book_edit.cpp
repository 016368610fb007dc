#include "book/book_edit.h"

#include <algorithm>

#include "frame/facts.h"
#include "frame/joints/joint_table.h"

namespace bentbook {
namespace {

template <class List>
auto find_mark(List& list, std::string_view mark) {
  return std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.mark == mark; });
}

}  // namespace

bool says_something(const Override& override) {
  Override nothing;
  nothing.mark = override.mark;
  return !(override == nothing);
}

Override override_of(const Book& book, std::string_view mark) {
  const auto it = find_mark(book.frame.overrides, mark);
  if (it != book.frame.overrides.end()) return *it;
  Override none;
  none.mark = mark;
  return none;
}

Override filled_override(const Book& book, std::string_view mark, const Frame* frame) {
  Override o = override_of(book, mark);
  const int i = frame == nullptr ? -1 : timber_by_mark(*frame, mark);
  if (i < 0) return o;
  const Timber& timber = frame->timbers[static_cast<std::size_t>(i)];
  if (!o.has_section) o.section = timber.wood.nominal;
  if (!o.has_wood) o.wood = timber.wood;
  if (!o.has_species) o.species = timber.species;
  return o;
}

Book with_override(Book book, const Override& override) {
  auto& list = book.frame.overrides;
  const auto it = find_mark(list, override.mark);
  if (!says_something(override)) {
    if (it != list.end()) list.erase(it);
  } else if (it != list.end()) {
    *it = override;
  } else {
    list.push_back(override);
  }
  return book;
}

Book with_added(Book book, const HandTimber& timber) {
  auto& list = book.frame.added;
  const auto it = find_mark(list, timber.mark);
  if (it != list.end())
    *it = timber;
  else
    list.push_back(timber);
  return book;
}

Book with_all_added(Book book, std::span<const HandTimber> timbers) {
  for (const HandTimber& timber : timbers) book = with_added(std::move(book), timber);
  return book;
}

Book without_added(Book book, std::string_view mark) {
  const auto it = find_mark(book.frame.added, mark);
  if (it != book.frame.added.end()) book.frame.added.erase(it);
  return book;
}

Book with_note(Book book, std::string_view mark, std::string_view text) {
  const auto it = find_mark(book.timber_notes, mark);
  if (text.empty()) {
    if (it != book.timber_notes.end()) book.timber_notes.erase(it);
  } else if (it != book.timber_notes.end()) {
    it->text = text;
  } else {
    book.timber_notes.push_back({std::string(mark), std::string(text)});
  }
  return book;
}

std::string_view note_of(const Book& book, std::string_view mark) {
  const auto it = find_mark(book.timber_notes, mark);
  return it == book.timber_notes.end() ? std::string_view{} : std::string_view(it->text);
}

Book with_joint(Book book, Meeting meeting, const JointType& type) {
  if (fits(meeting, kind_of(type))) book.frame.joints[static_cast<std::size_t>(meeting)] = type;
  return book;
}

Book with_bay(Book book, int index, Length width) {
  insert_bay(book.frame, std::clamp(index, -1, static_cast<int>(book.frame.bays.size()) - 1), width);
  return book;
}

Book without_bay(Book book, int index) {
  auto& bays = book.frame.bays;
  if (bays.size() > 1 && index >= 0 && index < static_cast<int>(bays.size())) bays.erase(bays.begin() + index);
  return book;
}

}  // namespace bentbook
