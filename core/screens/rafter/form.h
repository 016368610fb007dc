#pragma once
/// The rafter as every page of its place shares it: what is shown now, how a figure is edited, and what is said when
/// the input gives no rafter.

#include <optional>
#include <string>
#include <string_view>

#include "roof/rafter.h"
#include "screens/app/context.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"

namespace bentbook::screens {

struct ShownRafter {
  RafterInput input;
  Result<RafterPair> pair;
};

/// What is shown, solved: the rafter with what stands in an open keypad, or without it while that gives no rafter.
[[nodiscard]] ShownRafter rafter_now(Context&);

/// Changes the rafter in the book.
template <class Edit>
void edit_rafter(Context& context, Edit&& edit) {
  Places next = context.places;
  edit(next.rafter);
  if (!(next == context.places)) context.change(std::move(next));
}

/// A row with a field's value, to be tapped, by its key (roof/rafter_fields.h).
void rafter_field(Context&, std::string_view field, std::string_view unit = {});
/// A drawing of this rafter whose given figures are the fields; a part that it names leads to that part's page.
void rafter_form(Context&, ItemKey prefix, std::string_view name, float height, const draw::Drawing&,
                 const ShownRafter&);

/// Why there is no rafter, the field that gives way, and the nearest value that would do, one tap away.
void rafter_refused(Context&, const ShownRafter&);

/// Runs `draw(side, rafter)` for the one or the two rafters, each under its heading when they differ.
template <class Draw>
void for_each_side(Context& context, const RafterPair& pair, Draw&& draw) {
  if (pair.alike) {
    draw(Side::kLeft, pair.left);
    return;
  }
  heading(context.ui, "rafter.left_heading", context.say(Msg::kSideLeft));
  draw(Side::kLeft, pair.left);
  space(context.ui, 24);
  heading(context.ui, "rafter.right_heading", context.say(Msg::kSideRight));
  draw(Side::kRight, pair.right);
}

/// "seat" → "seat_left" or "seat_right".
[[nodiscard]] std::string of_side(std::string_view field, Side side);

}  // namespace bentbook::screens
