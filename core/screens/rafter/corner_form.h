#pragma once
/// A corner of two roofs as each of its pages shares it: what is shown now, how a figure is edited, and what is said
/// when the input gives no corner.

#include <string_view>

#include "roof/corner/corner_solve.h"
#include "screens/app/context.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"

namespace bentbook::screens {

struct ShownCorner {
  CornerInput input;
  Result<RoofCorner> corner;
};

/// What is shown, solved: with what stands in an open keypad, or without it while that gives no corner.
[[nodiscard]] ShownCorner corner_now(Context&);

/// A row with a field's value, to be tapped, by its member (roof/corner/corner_input.h).
void corner_field(Context&, std::string_view field);
/// A drawing whose given figures are the fields.
void corner_form(Context&, ItemKey prefix, std::string_view name, float height, const draw::Drawing&,
                 const ShownCorner&);

/// Why there is no corner, the field that gives way, and the nearest value that would do, one tap away.
void corner_refused(Context&, const ShownCorner&);

/// One page: solves, refuses or draws `content(shown, corner, voice)` in a scroll area.
template <class Content>
void corner_scroll(Context& context, ItemKey key, Content&& content) {
  const ShownCorner shown = corner_now(context);
  begin_scroll(context.ui, key, context.page);
  if (shown.corner)
    content(shown, *shown.corner, voice_of(context));
  else
    corner_refused(context, shown);
  space(context.ui, 24);
  end_scroll(context.ui);
}

}  // namespace bentbook::screens
