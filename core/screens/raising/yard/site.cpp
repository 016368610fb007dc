#include "screens/raising/yard/site.h"

#include <string>

#include "screens/raising/yard/figures.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

/// Paced off: whole feet, or half metres.
Length paced(const Context& context, double inches) {
  const Length step = is_metric(context.style().form) ? Length::mm(500) : Length::feet(1);
  return {static_cast<std::int64_t>(libm::floor(inches / step.in() + 0.5)) * step.count};
}

/// The drawing as one key: what is given its place goes to where it is tapped.
void tapped_part(Context& context, const draw::Drawing& drawing, float height, InYard what,
                 FunctionRef<bentbook::FigureText(std::string_view)> words) {
  Ui& ui = context.ui;
  Rect box{ui.column.x, ui.column.y, ui.column.width, 0};
  drawing_beside(context, "gear.site", context.say(Msg::kGearSitePicture), height, drawing,
                 [&](std::string_view key) { return words(key).text; });
  box.h = ui.column.y - box.y;
  const Look look = add_pressed(
      ui, {"gear.site.ground", Role::kButton, Touch::kPress, std::string(context.say(Msg::kGearTapHow)), {}, box});
  pen(ui).AddRect(top_left(box), bottom_right(box), ui.theme.edit, 0, ImDrawFlags_None, 2);
  const ImVec2 at = ImGui::GetIO().MousePos;
  const bool on = at.x >= box.x && at.x <= box.x + box.w && at.y >= box.y && at.y <= box.y + box.h;
  if (!look.pressed || !on) return;  // pressed by name it has no place: the figures do
  const draw::Point point = ui.memory.sheets["gear.site"].canvas.point_at(box, at.x, at.y);
  edit_raising(context,
               [&](RaisingPlan& plan) { place_in_yard(plan, what, paced(context, point.x), paced(context, point.y)); });
  context.raising_memory.placing = false;
}

}  // namespace

void site_part(Context& context, const Frame& frame, const RaisingShown& shown, InYard what) {
  Ui& ui = context.ui;
  bool& placing = context.raising_memory.placing;
  if (ui.memory.new_page) placing = false;
  const float height = drawing_height(context, 380);
  const draw::Drawing drawing = site_drawing(frame, shown.book().raising, what);
  const auto words = [&](std::string_view key) { return site_figure(key, shown.book(), what, voice_of(context)); };
  if (placing)
    tapped_part(context, drawing, height, what, words);
  else
    raising_drawn(context, "gear.site", Msg::kGearSitePicture, height, drawing, "raising.", words);
  const auto off = site_answer(shown.book().raising, what, "radius_stack"),
             reach = site_answer(shown.book().raising, what, "reach");
  if (off && reach && *reach > 0 && *off > *reach) caution(ui, "gear.site.far", context.say(Msg::kGearStackFar));
  if (toggle(ui, "gear.site.by_tap", context.say(Msg::kGearByTap), placing, context.say(Msg::kGearTapHow)))
    placing = !placing;
}

}  // namespace bentbook::screens
