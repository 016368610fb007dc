#pragma once
/// An elevation of the plan whose figures are tapped.

#include "screens/frame/form.h"

namespace bentbook::screens {

/// Figures of frame/drawings/plan_drawing.h; one that is tapped opens its field.
void plan_view(Context& context, const ShownFrame& shown, ItemKey prefix, Msg name, float height,
               const draw::Drawing& drawing);
[[nodiscard]] bentbook::FigureText plan_figure(const ShownFrame& shown, std::string_view key, const Voice& voice);

}  // namespace bentbook::screens
