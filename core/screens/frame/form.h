#pragma once
/// The frame as every page of its place shares it: what is shown now, how a figure is edited, and what is said when the
/// plan gives no frame.

#include <string>
#include <string_view>

#include "frame/plan.h"
#include "screens/app/context.h"
#include "screens/app/drawing_form.h"
#include "screens/frame/fields.h"
#include "screens/frame/memory.h"

namespace bentbook::screens {

/// The open book with what stands in an open keypad, or without it while that gives no frame. Lives for one frame.
struct ShownFrame {
  const Book& book;
  FrameMemory::Solved solved;
  bool typing = false;
  [[nodiscard]] const FramePlan& plan() const { return book.frame; }
  [[nodiscard]] const Result<Frame>& frame() const { return *solved; }
};

/// The desk must have a book open.
[[nodiscard]] ShownFrame frame_now(Context&);
/// Puts what the keypad finished into the book; the App does it before a page is drawn.
void take_frame_edits(Context&);

/// Changes the open book.
template <class Edit>
void edit_book(Context& context, Edit&& edit) {
  Book next = context.desk.book();
  edit(next);
  context.change_book(std::move(next));
}

/// Name of a field (frame_fields.h) in words.
[[nodiscard]] std::string frame_field_name(std::string_view field, Language language);

/// Rows with a value to be tapped. The plan's own ones know their value.
void frame_length_row(Context&, std::string_view field, std::string_view name, Length value, LengthRange = {});
void plan_row(Context&, const Book& book, std::string_view field);
void slope_row(Context&, const Book& book, std::string_view field);
void angle_row(Context&, const Book& book, std::string_view field);
void count_row(Context&, const Book& book, std::string_view field, std::string_view value, std::int64_t most);
void open_plan_field(Context&, const Book& book, std::string_view field);

/// Why there is no frame, with the field that gives way and the nearest value that would do.
void frame_refused(Context&, const ShownFrame&);

/// A page of the Frame place: waits, says why there is no book, or draws `content(shown)` in a scroll area.
template <class Content>
void frame_page(Context& context, ItemKey key, Content&& content);
/// What stands there while no book is open; true: one is.
[[nodiscard]] bool book_is_open(Context&);

template <class Content>
void frame_page(Context& context, ItemKey key, Content&& content) {
  begin_scroll(context.ui, key, context.page);
  if (book_is_open(context)) content(frame_now(context));
  space(context.ui, 24);
  end_scroll(context.ui);
}

}  // namespace bentbook::screens
