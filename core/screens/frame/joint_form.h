#pragma once
/// A joint as a form: its drawings with every measure to tap, what no drawing shows in rows below, and what tools are
/// set to.

#include <string>
#include <string_view>

#include "frame/drawings/joint_wood.h"
#include "numeric/function_ref.h"
#include "screens/frame/form.h"

namespace bentbook::screens {

/// A joint that is chosen and measured: a meeting's, or that of one timber's end.
struct JointSpot {
  Meeting meeting;
  std::string field;  ///< path before its measures
  JointType now;
  const Joint* shown = nullptr;  ///< made by it in the frame that is shown; nullptr: there is none
};

/// The text and the name of a figure on one of the joint's drawings.
[[nodiscard]] bentbook::FigureText joint_figure(std::string_view key, const Book& book, const JointSpot& spot,
                                                const JointWood& wood, const draw::Drawing& drawing,
                                                const Voice& voice);

/// Its drawings and its other measures. Without a frame, all in rows.
void joint_measures(Context& context, const ShownFrame& shown, const JointSpot& spot);
/// What tools are set to at `spot.shown`.
void joint_tools(Context& context, const Frame& frame, const JointSpot& spot);

/// One of a few joints, drawn; `pick` is called with the one that was pressed.
void joint_cards(Context& context, const JointSpot& spot, const JointWood& wood, bool one_end, bool chosen,
                 FunctionRef<void(const JointType&)> pick);

}  // namespace bentbook::screens
