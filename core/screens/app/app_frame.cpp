#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>
#include <utility>

#include "screens/app/app_inside.h"
#include "screens/app/held.h"
#include "screens/frame/form.h"
#include "screens/settings/help.h"

namespace bentbook::screens {
namespace {

constexpr double kToastMs = 5000, kUndoToastMs = 9000;

double sooner(double a, double b) { return a < 0 ? b : b < 0 ? a : std::min(a, b); }

}  // namespace

void App::Impl::bake_fonts() {
  const float text = static_cast<float>(kit.now().settings.text_percent) / 100;
  if (text == baked_text && viewport.scale == baked_scale) return;
  ImGuiIO& io = ImGui::GetIO();
  io.Fonts->Clear();
  fonts = build_fonts(*io.Fonts, text, viewport.scale);
  io.FontDefault = fonts.body;
  baked_text = text;
  baked_scale = viewport.scale;
  memory.sheets.clear();
  if (renderer.ready()) renderer.upload_atlas(*io.Fonts);
}

void App::Impl::tell_pointer(const GestureStep& step) {
  ImGuiIO& io = ImGui::GetIO();
  if (!step.pointer.empty()) io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
  for (const PointerEvent& e : step.pointer) {
    switch (e.kind) {
      case PointerEvent::Kind::kMove:
        io.AddMousePosEvent(e.x, e.y);
        break;
      case PointerEvent::Kind::kDown:
        io.AddMouseButtonEvent(0, true);
        break;
      case PointerEvent::Kind::kUp:
        io.AddMouseButtonEvent(0, false);
        break;
      case PointerEvent::Kind::kAway:
        io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
        break;
      case PointerEvent::Kind::kCancel:
        ImGui::ClearActiveID();
        io.AddMouseButtonEvent(0, false);
        break;
    }
  }
}

void App::Impl::draw_page(Ui& ui, Context& context, Rect area) {
  const Page& page = pages.top();
  context.subject = page.subject;
  context.page = area;
  const float slide = pages.slide(now_ms);
  if (slide > 0) {
    context.page.x += slide * area.w;
    ImGui::PushClipRect(top_left(area), bottom_right(area), true);
  }
  ui.column = {context.page.x + kMargin, context.page.y + kGap, context.page.w - 2 * kMargin, 0, area};
  take_fields(context);
  apply_book();
  raising.look_at(desk);
  const auto draw = page.draw;  // the page may leave the stack while it draws
  draw(context);
  apply_book();
  memory.new_page = false;
  if (slide > 0) ImGui::PopClipRect();
  ui.column = {};
}

void App::Impl::draw_root(Ui& ui) {
  Rect area{viewport.inset_left, viewport.inset_top, viewport.width - viewport.inset_left - viewport.inset_right,
            viewport.height - viewport.inset_top - viewport.inset_bottom};
  const bool landscape = viewport.height < 480 && viewport.width > viewport.height;
  Context context{
      ui,
      keypad,
      pages,
      platform,
      viewport,
      kit.now(),
      places.now(),
      desk,
      shop,
      backup,
      pieces,
      shop_memory,
      raising,
      raising_memory,
      rafter_memory,
      printing,
      solids,
      frame_memory,
      touched,
      aloud,
      file,
      area,
      landscape,
      {},
      0,
      [this](Places next) { change(std::move(next)); },
      [this](Kit next) { change_kit(std::move(next)); },
      [this](Book next) {
        if (next == desk.book()) return;
        next_book = std::move(next);
        toast.undoes = Toast::Undoes::kNothing;
      },
      [this] { return parts(); },
      [this] {
        pages.pop();
        ask_picture();
      },
      [this](std::string text, bool undo) {
        const auto last = next_book ? Toast::Undoes::kBook : last_change;
        toast = {std::move(text), undo ? last : Toast::Undoes::kNothing, now_ms + (undo ? kUndoToastMs : kToastMs)};
      }};
  if (!kit.now().settings.caution_seen) {
    if (welcome(context, draw_notice(ui, area))) keep_seen(&Settings::caution_seen);
    return;
  }
  Rect page = area;
  if (shot.drawing) {
    page = draw_picture_head(ui, area);
  } else if (keypad.is_open()) {
    const KeypadBoxes boxes = keypad_boxes(ui, keypad, area, landscape);
    page = boxes.page;
    pen(ui).AddRectFilled({0, boxes.strip.y}, {viewport.width, viewport.height}, ui.theme.panel);
    keypad_panel(ui, keypad, boxes);
  } else {
    page = draw_notice(ui, draw_bars(ui, area, landscape));
  }
  if (shot.drawing) memory.message = {};
  if (page.h >= 1) draw_page(ui, context, page);
  page.h -= context.foot;
  if (!shot.drawing) draw_toast(ui, page);
}

double App::Impl::frame() {
  current();
  bake_fonts();
  ImGuiIO& io = ImGui::GetIO();
  const Settings& settings = kit.now().settings;
  theme = make_theme(dark(), settings.glove);
  apply_theme(theme, ImGui::GetStyle());
  if (settings.keep_awake != told_awake) {
    told_awake = settings.keep_awake;
    platform.keep_awake(told_awake);
  }
  if (settings.read_aloud != told_speech) {
    told_speech = settings.read_aloud;
    platform.ready_to_speak(told_speech);
  }
  GestureStep step = gesture.step(now_ms, registry);
  tell_pointer(step);
  memory.scroll_by = std::move(step.scrolls);
  memory.pinches = std::move(step.pinches);
  memory.long_press = std::move(step.long_press);
  if (registry.has_actions())  // by keyboard or screen reader
    for (const Item& item : registry.items())
      if (item.role == Role::kAnswer && registry.take(item.key, Action::Kind::kHold)) memory.long_press = item.key;
  const Item* held = registry.find(memory.long_press);
  if (held != nullptr && held->role == Role::kAnswer && !locked && !keypad.is_open() && !held->value.empty())
    pages.push(held_page(*held));
  memory.want_frame = false;
  memory.wake_ms = -1;

  const double since = last_frame_ms < 0 ? 16 : now_ms - last_frame_ms;
  last_frame_ms = now_ms;
  io.DeltaTime = static_cast<float>(std::clamp(since, 4.0, 33.0) / 1000);
  pages.set_reduced_motion(viewport.reduced_motion);
  pages.clock(now_ms);
  begin_picture();
  io.DisplaySize = {viewport.width, viewport.height};
  io.DisplayFramebufferScale = {viewport.scale, viewport.scale};
  keypad.set_style(settings.lengths);

  ImGui::NewFrame();
  registry.begin_frame();
  const std::uint64_t before = registry.revision();
  Ui ui{registry, theme, fonts, language(), locked, read_only, {}, now_ms, memory};
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize(io.DisplaySize);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
  ImGui::Begin("root", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse |
                   ImGuiWindowFlags_NoBackground);
  draw_root(ui);
  ImGui::End();
  ImGui::PopStyleVar();
  registry.end_frame();
  end_picture();
  aloud.answer(registry, language());
  ImGui::Render();
  memory.committed_texts.clear();

  if (pages.turns() != seen_turns) {
    seen_turns = pages.turns();
    GImGui->WheelingWindow = nullptr;  // the wheel is the new page's at once
    memory.new_page = pages.from_top();
    aloud.hush();
    keypad.close();
    woken();
  }
  if (keypad.key() != seen_keypad) {
    seen_keypad = keypad.key();
    // What was tapped stays in sight above the keypad, and is marked.
    memory.editing = keypad.is_open() ? memory.last_pressed : std::string{};
    memory.reveal = memory.editing;
    woken();
  }
  if (settle > 0) --settle;
  if (registry.revision() != before) woken(1);
  return wish();
}

double App::Impl::wish() const {
  if (settle > 0 || memory.want_frame || GImGui->InputEventsQueue.Size > 0 || registry.has_actions()) return 0;
  double next = gesture.wish(now_ms);
  if (pages.slide(now_ms) > 0) next = 0;
  if (memory.wake_ms >= 0) next = sooner(next, std::max(1.0, memory.wake_ms - now_ms));
  if (toast.until_ms >= 0) next = sooner(next, std::max(1.0, toast.until_ms - now_ms));
  return next;
}

}  // namespace bentbook::screens
