#pragma once
/// The roof of any plan as its pages share it: the book's, with what stands in an open keypad.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "roof/plan/solve_roof.h"
#include "screens/app/context.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"
#include "screens/frame/form.h"
#include "words/figures.h"

namespace bentbook::screens {

/// Lives for one frame.
struct ShownRoof {
  const RoofPlan& plan;
  const Result<RoofSolution>& roof;
  [[nodiscard]] const RoofSolution* solved() const { return roof ? &*roof : nullptr; }
};
/// A book must be open. What is being typed is shown where it gives a roof.
[[nodiscard]] ShownRoof roof_now(Context&);

/// A page about it in a scroll area; waits, or says why there is no book.
template <class Content>
void roof_page(Context& context, ItemKey key, Content&& content);

template <class Edit>
void edit_roof(Context& context, Edit&& edit) {
  edit_book(context, [&](Book& book) { edit(book.roof); });
}

/// What stands on the plan. Keys: roof/plan/roof_drawing.h. Sides have their letters, with their pitch where there is
/// room for it.
enum class RoofNames : std::uint8_t { kLetters, kPitches };
[[nodiscard]] bentbook::FigureText roof_figure(std::string_view key, const RoofPlan& plan, RoofNames names,
                                               const Voice& voice);

/// How many sides may have their lengths on it.
[[nodiscard]] int sides_measured(bool usual_type);

/// The plan drawn, at most `height` px high; what is tapped opens the keypad, or returns the side whose name it was.
[[nodiscard]] std::optional<int> roof_plan_form(Context&, const ShownRoof&, float height, int chosen);
/// Takes a wall's length from the keypad, opens the keypad on it.
void take_wall_length(Context&);
void open_wall_length(Context&, const RoofPlan&, int side);

/// Why it is no roof.
void roof_refused(Context&, const ShownRoof&);
/// A row with a field of the roof: "sides.2.pitch".
void roof_field(Context&, std::string_view path, Msg name);

template <class Content>
void roof_page(Context& context, ItemKey key, Content&& content) {
  begin_scroll(context.ui, key, context.page);
  if (book_is_open(context)) {
    take_wall_length(context);
    content(roof_now(context));
  }
  space(context.ui, 24);
  end_scroll(context.ui);
}

}  // namespace bentbook::screens
