#pragma once
/// The frame as every page of its place shares it: what is shown now, how a figure is edited, and what is said when the
/// plan gives no frame.

#include <string>
#include <string_view>

#include "frame/plan.h"
#include "screens/app/context.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"
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

/// Changes the open book.
template <class Edit>
void edit_book(Context& context, Edit&& edit) {
  Book next = context.desk.book();
  edit(next);
  context.change_book(std::move(next));
}

/// The path of a bay's width: by its label, so that it stays good when bays come and go.
[[nodiscard]] std::string bay_path(const Bay& bay);
/// Name of a field of the frame in words.
[[nodiscard]] std::string frame_field_name(std::string_view path, Language language);
/// A row with that field, under that name.
void frame_field(Context&, std::string_view path, std::string_view unit = {});

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
