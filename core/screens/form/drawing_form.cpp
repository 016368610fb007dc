#include "screens/form/drawing_form.h"

#include <algorithm>
#include <cfloat>

#include "ui/widgets_inside.h"
#include "words/face_words.h"

namespace bentbook::screens {
namespace {

constexpr double kMostZoom = 8;

void follow_fingers(Ui& ui, ItemKey prefix, const Rect& box, CanvasView& view) {
  if (const auto pinch = pinched(ui, prefix)) {
    const double zoom = std::clamp(view.zoom * static_cast<double>(pinch->factor), 1.0, kMostZoom);
    const double factor = zoom / view.zoom;
    // The point under the fingers stays under them.
    const double from_middle_x = static_cast<double>(pinch->x - box.x - box.w / 2);
    const double from_middle_y = static_cast<double>(pinch->y - box.y - box.h / 2);
    view.dx = from_middle_x + (view.dx - from_middle_x) * factor + static_cast<double>(pinch->dx);
    view.dy = from_middle_y + (view.dy - from_middle_y) * factor + static_cast<double>(pinch->dy);
    view.zoom = zoom;
  }
  if (long_pressed(ui, prefix) || view.zoom <= 1) view = {};
}

}  // namespace

Voice voice_of(const Context& context) { return {context.ui.language, context.style(), Marks::kScreen}; }

bool has_usual_type(const Context& context) { return context.kit.settings.text_percent <= 150; }

bool is_large_page(const Context& context) { return context.viewport.width >= 700 && context.viewport.height >= 900; }

float beside_drawing(const Context& context) { return is_large_page(context) ? FLT_MAX : 300; }

float drawing_height(const Context& context, float wanted) {
  const float text = static_cast<float>(context.kit.settings.text_percent) / 100;
  const float room = std::clamp(context.page.h / 700, 1.0F, 1.5F);
  return std::clamp(wanted * room * (0.5F + 0.5F * text), 160.0F, std::max(160.0F, context.page.h - 24));
}

std::optional<std::string> drawing_form(Context& context, ItemKey prefix, std::string_view name, float height,
                                        const draw::Drawing& drawing,
                                        FunctionRef<bentbook::FigureText(std::string_view)> words, Tappable tappable) {
  Ui& ui = context.ui;
  Ui::Memory::Sheet& sheet = ui.memory.sheets[std::string(prefix)];
  follow_fingers(ui, prefix, sheet.box, sheet.view);  // which were where it lay in the last frame

  // In millimetres and metres the unit stands once, below.
  const std::string unit = ' ' + std::string(page_unit(voice_of(context)));
  bool metric = false;
  const auto text = [&](std::string_view key, draw::Meaning) {
    const bentbook::FigureText figure = words(key);
    const auto is = [&](const draw::AngleDimension& arc) { return arc.key == key; };
    const bool whole = figure.drawn.empty() || std::any_of(drawing.angles.begin(), drawing.angles.end(), is);
    std::string said = whole ? figure.text : figure.drawn;
    if (unit.size() == 1 || !said.ends_with(unit)) return said;
    metric = true;
    said.resize(said.size() - unit.size());
    return said;
  };
  sheet.box = take_box(ui, sheet.canvas.set(ui.theme, ui.fonts, drawing, {ui.column.width, height}, text, sheet.view));
  picture(ui, prefix, name, sheet.box);
  sheet.canvas.paint(pen(ui), ui.theme, ui.fonts, drawing, sheet.box);

  std::optional<std::string> tapped;
  for (const CanvasFigure& drawn : sheet.canvas.figures()) {
    const std::string key = std::string(prefix) + "." + drawn.key;
    const auto [said, figure_name, shown] = words(drawn.key);
    if (drawn.meaning == draw::Meaning::kGiven || tappable == Tappable::kAll) {
      if (figure(ui, key, figure_name, said, drawn.rect)) tapped = drawn.key;
    } else {
      figure_read(ui, key, figure_name, said, drawn.rect, drawn.meaning == draw::Meaning::kAnswer);
    }
  }
  if (metric) note(ui, std::string(prefix) + ".unit", say(Msg::kDrawingUnit, ui.language, unit.substr(1)));
  return tapped;
}

void drawing_beside(Context& context, ItemKey key, std::string_view name, float height, const draw::Drawing& drawing,
                    FunctionRef<std::string(std::string_view)> text) {
  Ui& ui = context.ui;
  Canvas& canvas = ui.memory.sheets[std::string(key)].canvas;
  const auto figures = [&](std::string_view figure, draw::Meaning) { return text(figure); };
  const Rect box = take_box(ui, canvas.set(ui.theme, ui.fonts, drawing, {ui.column.width, height}, figures));
  picture(ui, key, name, box);
  canvas.paint(pen(ui), ui.theme, ui.fonts, drawing, box);
}

}  // namespace bentbook::screens
