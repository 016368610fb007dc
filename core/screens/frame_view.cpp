// The frame as solids: turned by one finger, zoomed and moved by two, a timber lit by a tap.

#include <algorithm>
#include <cfloat>
#include <map>
#include <string>

#include "answers/frame_words.h"
#include "screens/frame_form.h"
#include "screens/frame_pages.h"
#include "screens/widgets_inside.h"

namespace bentbook::screens {
namespace {

using render::Camera;
using render::PartLook;
using Solids = FrameMemory::Solids;

constexpr double kTurnPerPx = 0.008, kMostZoom = 40, kLeastZoom = 0.5;
constexpr float kTapSlop = 10;
constexpr std::size_t kMostLabels = 48;
constexpr int kMostLooks = 160;  ///< labels tried for being hidden, each costs a ray

Camera camera_of(int kind) {
  constexpr double quarter = libm::kPi / 2;
  if (kind == 1) return {0, quarter, 1, 0, 0, false};
  if (kind == 2) return {0, 0, 1, 0, 0, false};
  if (kind == 3) return {quarter, 0, 1, 0, 0, false};
  return {0.6, 0.45};
}

void make_scene(Solids& solids, const ShownFrame& shown) {
  if (solids.of == shown.solved) return;
  solids.of = shown.solved;
  solids.labels_of.clear();
  solids.timbers.clear();
  auto scene = std::make_shared<render::SolidScene>();
  std::map<int, Mesh> known;  // timbers cut alike have one surface
  const Frame& frame = *shown.frame();
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Timber& timber = frame.timbers[i];
    if (!timber.placed) continue;
    const Vec3 middle = to_world(timber.at, {timber.length / 2, 0, 0});
    if (timber.alike < 0) {
      scene->add(mesh_of(solid_of(timber)), timber.at, middle);
    } else {
      auto found = known.find(timber.alike);
      if (found == known.end()) found = known.emplace(timber.alike, mesh_of(solid_of(timber))).first;
      scene->add(found->second, timber.at, middle);
    }
    solids.timbers.push_back(static_cast<int>(i));
  }
  scene->finish();
  solids.scene = std::move(scene);
}

struct Picture {
  Context& context;
  const Frame& frame;
  Solids& solids;
  Rect box;
  [[nodiscard]] const Timber& timber(std::size_t part) const {
    return frame.timbers[static_cast<std::size_t>(solids.timbers[part])];
  }
  [[nodiscard]] render::View view() const {
    return {*solids.scene, solids.camera, static_cast<double>(box.w), static_cast<double>(box.h)};
  }
};

std::vector<std::uint8_t> looks_of(const Picture& p) {
  std::vector<std::uint8_t> looks;
  looks.reserve(p.solids.timbers.size());
  for (std::size_t i = 0; i < p.solids.timbers.size(); ++i) {
    const Timber& timber = p.timber(i);
    const bool here = p.solids.bent == 0 || (timber.place.bent == p.solids.bent && timber.place.bay < 0);
    PartLook look = here && !p.solids.alone ? PartLook::kPlain : PartLook::kGhost;
    if (timber.mark == p.solids.lit) look = PartLook::kLit;
    looks.push_back(static_cast<std::uint8_t>(look));
  }
  return looks;
}

/// 1 for what a finger can hit: ghosts let it through.
std::vector<std::uint8_t> solid_ones(const std::vector<std::uint8_t>& looks) {
  std::vector<std::uint8_t> seen;
  seen.reserve(looks.size());
  for (const std::uint8_t look : looks)
    seen.push_back(look == static_cast<std::uint8_t>(PartLook::kPlain) ||
                   look == static_cast<std::uint8_t>(PartLook::kLit));
  return seen;
}

// ── Fingers ───────────────────────────────────────────────────────────────────────────────────────────────────────

void zoom_about(Camera& camera, const Rect& box, float x, float y, double factor, double dx, double dy) {
  const double zoom = std::clamp(camera.zoom * factor, kLeastZoom, kMostZoom);
  const double real = zoom / camera.zoom;
  const double from_x = static_cast<double>(x - box.x - box.w / 2), from_y = static_cast<double>(y - box.y - box.h / 2);
  camera.dx = from_x + (camera.dx - from_x) * real + dx;
  camera.dy = from_y + (camera.dy - from_y) * real + dy;
  camera.zoom = zoom;
}

void move_camera(Solids& solids, float dx, float dy) {
  Camera& camera = solids.camera;
  if (solids.kind != 0) {
    camera.dx += static_cast<double>(dx);
    camera.dy += static_cast<double>(dy);
    return;
  }
  camera.yaw -= static_cast<double>(dx) * kTurnPerPx;
  camera.tip = std::clamp(camera.tip + static_cast<double>(dy) * kTurnPerPx, -0.5, libm::kPi / 2);
}

void follow(Picture& p, const Look& look, const std::vector<std::uint8_t>& looks) {
  Solids& solids = p.solids;
  const ImVec2 at = ImGui::GetIO().MousePos;
  if (look.held && at.x > -FLT_MAX / 2) {
    if (!solids.held) solids.travelled = 0;
    if (solids.held) {
      const float dx = at.x - solids.last_x, dy = at.y - solids.last_y;
      solids.travelled += std::max(dx, -dx) + std::max(dy, -dy);
      if (solids.travelled > kTapSlop) move_camera(solids, dx, dy);
    }
    solids.last_x = at.x;
    solids.last_y = at.y;
  }
  const bool tapped = look.pressed && solids.held && solids.travelled <= kTapSlop;
  solids.held = look.held;
  if (tapped) {
    const Vec2 px{static_cast<double>(solids.last_x - p.box.x), static_cast<double>(solids.last_y - p.box.y)};
    const int part = p.view().pick(*solids.scene, solid_ones(looks), px);
    solids.lit = part < 0 ? std::string{} : p.timber(static_cast<std::size_t>(part)).mark;
    if (part < 0) solids.alone = false;
    p.context.ui.memory.want_frame = true;
  }
  if (const auto pinch = pinched(p.context.ui, "view.picture"))
    zoom_about(solids.camera, p.box, pinch->x, pinch->y, static_cast<double>(pinch->factor),
               static_cast<double>(pinch->dx), static_cast<double>(pinch->dy));
  const float wheel = ImGui::GetIO().MouseWheel;
  if (look.lit && wheel != 0) zoom_about(solids.camera, p.box, at.x, at.y, wheel > 0 ? 1.15 : 1 / 1.15, 0, 0);
}

// ── Marks ─────────────────────────────────────────────────────────────────────────────────────────────────────────

/// Which marks are written: as many as have room, none of a timber that is hidden there.
void choose_labels(Picture& p, const std::vector<std::uint8_t>& looks) {
  Solids& solids = p.solids;
  std::string of = solids.lit + "/" + std::to_string(solids.bent) + (solids.alone ? "a" : "-");
  for (const double v : {solids.camera.yaw * 1e4, solids.camera.tip * 1e4, solids.camera.zoom * 1e3, solids.camera.dx,
                         solids.camera.dy, static_cast<double>(p.box.w), static_cast<double>(p.box.h)})
    of += "/" + std::to_string(static_cast<long long>(v));
  if (solids.held || of == solids.labels_of) return;
  solids.labels_of = of;
  solids.labels.clear();
  const render::View view = p.view();
  const std::vector<std::uint8_t> solid = solid_ones(looks);
  ImFont& font = *p.context.ui.fonts.note;
  struct Box {
    double x, y, w;
  };
  std::vector<Box> taken;
  const double high = static_cast<double>(font.FontSize);
  int tried = 0;
  const auto try_one = [&](std::size_t part) {
    if (solid[part] == 0 || solids.labels.size() >= kMostLabels || tried >= kMostLooks) return;
    const Vec2 at = view.to_px(solids.scene->parts[part].middle);
    const float width = text_size(font, p.timber(part).mark).x + 8;
    const Box box{at.x, at.y, static_cast<double>(width)};
    if (at.x < box.w / 2 || at.y < high || at.x > static_cast<double>(p.box.w) - box.w / 2 ||
        at.y > static_cast<double>(p.box.h) - high)
      return;
    for (const Box& b : taken)
      if (libm::fabs(b.x - box.x) < (b.w + box.w) / 2 && libm::fabs(b.y - box.y) < high) return;
    ++tried;
    if (looks[part] != static_cast<std::uint8_t>(PartLook::kLit) &&
        view.pick(*solids.scene, solid, at) != static_cast<int>(part))
      return;
    taken.push_back(box);
    solids.labels.push_back({static_cast<int>(part), width});
  };
  for (std::size_t i = 0; i < looks.size(); ++i)
    if (looks[i] == static_cast<std::uint8_t>(PartLook::kLit)) try_one(i);
  for (std::size_t i = 0; i < looks.size(); ++i)
    if (looks[i] != static_cast<std::uint8_t>(PartLook::kLit)) try_one(i);
}

void draw_labels(const Picture& p) {
  const Ui& ui = p.context.ui;
  const render::View view = p.view();
  ImDrawList& list = pen(p.context.ui);
  ImFont& font = *ui.fonts.note;
  for (const Solids::Label& label : p.solids.labels) {
    const Timber& timber = p.timber(static_cast<std::size_t>(label.part));
    const Vec2 at = view.to_px(p.solids.scene->parts[static_cast<std::size_t>(label.part)].middle);
    const ImVec2 from{p.box.x + static_cast<float>(at.x) - label.width / 2,
                      p.box.y + static_cast<float>(at.y) - font.FontSize / 2};
    const bool lit = timber.mark == p.solids.lit;
    list.AddRectFilled(from, {from.x + label.width, from.y + font.FontSize}, lit ? ui.theme.edit : ui.theme.ground);
    draw_text(list, font, {from.x + 4, from.y}, lit ? ui.theme.on_edit : ui.theme.ink, timber.mark);
  }
}

/// The picture has a texel for each device pixel: its box stands on whole CSS px.
float whole_px(float v) { return static_cast<float>(static_cast<int>(v)); }

void put_colour(float* out, ImU32 colour) {
  const ImVec4 c = ImGui::ColorConvertU32ToFloat4(colour);
  out[0] = c.x;
  out[1] = c.y;
  out[2] = c.z;
}

void draw_picture(Context& context, const ShownFrame& shown, Rect box) {
  Ui& ui = context.ui;
  Solids& solids = context.frame_memory.solids;
  box = {whole_px(box.x), whole_px(box.y), whole_px(box.w), whole_px(box.h)};
  Picture p{context, *shown.frame(), solids, box};
  const std::string name = say(Msg::kViewPicture, ui.language, std::to_string(solids.timbers.size()));
  const Look look = add_pressed(ui, {"view.picture", Role::kImage, Touch::kDrag, name, solids.lit, box}, false);
  std::vector<std::uint8_t> looks = looks_of(p);
  follow(p, look, looks);
  looks = looks_of(p);
  render::SolidPicture picture{solids.scene, solids.camera, looks, {}, box.w, box.h, context.viewport.scale};
  put_colour(picture.ink.ground, ui.theme.ground);
  put_colour(picture.ink.face, ui.theme.dark ? ui.theme.pressed : ui.theme.ground);
  put_colour(picture.ink.edge, ui.theme.ink);
  put_colour(picture.ink.lit, ui.theme.edit);
  context.solids.show(std::move(picture));
  if (context.solids.ready())
    pen(ui).AddImage(context.solids.texture(), top_left(box), bottom_right(box), {0, 1}, {1, 0});
  pen(ui).PushClipRect(top_left(box), bottom_right(box), true);
  choose_labels(p, looks);
  draw_labels(p);
  pen(ui).PopClipRect();
  const float side = ui.theme.target, wide = text_size(*ui.fonts.strong, context.say(Msg::kViewFit)).x + 24;
  const Rect fit{box.x + box.w - wide - kGap, box.y + kGap, wide, side};
  if (!(solids.camera == camera_of(solids.kind)) && button_in(ui, "view.fit", fit, context.say(Msg::kViewFit)))
    solids.camera = camera_of(solids.kind);
}

// ── Keys ──────────────────────────────────────────────────────────────────────────────────────────────────────────

void step_keys(Context& context, const FramePlan& plan) {
  Ui& ui = context.ui;
  Solids& solids = context.frame_memory.solids;
  std::vector<int> labels{0, 1};
  for (const Bay& bay : plan.bays) labels.push_back(bay.label);
  const auto found = std::find(labels.begin(), labels.end(), solids.bent);
  const auto at = found == labels.end() ? 0 : found - labels.begin();
  const Column whole = ui.column;
  const float side = ui.theme.target;
  const Rect row = take_box(ui, side);
  const auto step = [&](std::ptrdiff_t to) { solids.bent = labels[static_cast<std::size_t>(to)]; };
  if (icon_button(ui, "view.back", {row.x, row.y, side, side}, Icon::kBack, context.say(Msg::kViewBentBack), at > 0))
    step(at - 1);
  if (icon_button(ui, "view.on", {row.x + row.w - side, row.y, side, side}, Icon::kForward,
                  context.say(Msg::kViewBentOn), at + 1 < static_cast<std::ptrdiff_t>(labels.size())))
    step(at + 1);
  const std::string words = solids.bent == 0 ? std::string(context.say(Msg::kViewAllBents))
                                             : say(Msg::kViewBent, ui.language, std::to_string(solids.bent));
  draw_centred(pen(ui), *ui.fonts.strong, {row.x + side, row.y, row.w - 2 * side, side}, ui.theme.ink, words);
  add_read(ui, {"view.bent", Role::kAnswer, Touch::kNone, words, {}, {row.x + side, row.y, row.w - 2 * side, side}});
  ui.column = {whole.x, row.y + row.h + kGap, whole.width, whole.scroll, whole.clip};
}

void lit_keys(Context& context, const Frame& frame) {
  Ui& ui = context.ui;
  Solids& solids = context.frame_memory.solids;
  const int lit = solids.lit.empty() ? -1 : timber_by_mark(frame, solids.lit);
  if (lit < 0) {
    const float top = ui.column.y;
    note(ui, "view.how", context.say(Msg::kViewHow));
    ui.column.y = std::max(ui.column.y, top + ui.theme.target + kGap);
    return;
  }
  const Timber& timber = frame.timbers[static_cast<std::size_t>(lit)];
  side_by_side(
      ui, kGap, 100,
      [&](Ui& half) {
        const std::string label = timber.mark + " · " + std::string(kind_name(timber.kind, ui.language));
        if (button(half, "view.sheet", label, Weight::kPrimary)) context.pages.push(frame_sheet_page(timber.mark));
      },
      [&](Ui& half) {
        if (button(half, "view.alone", context.say(solids.alone ? Msg::kViewRest : Msg::kViewAlone)))
          solids.alone = !solids.alone;
      });
  if (timber.overridden.any())
    note(ui, "view.overridden", context.say(timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden));
}

void keys(Context& context, const ShownFrame& shown) {
  Solids& solids = context.frame_memory.solids;
  const auto kind = choice(context.ui, "view.kind", {},
                           {context.say(Msg::kViewTurned), context.say(Msg::kViewPlan), context.say(Msg::kViewGable),
                            context.say(Msg::kViewSide)},
                           solids.kind);
  if (kind) {
    solids.kind = *kind;
    solids.camera = camera_of(*kind);
  }
  if (shown.book.framed) step_keys(context, shown.plan());
  lit_keys(context, *shown.frame());
}

void view_screen(Context& context) {
  Ui& ui = context.ui;
  const Rect page = context.page;
  if (!book_is_open(context)) return;
  const ShownFrame shown = frame_now(context);
  if (!shown.frame()) {
    begin_scroll(ui, "view.page", page);
    frame_refused(context, shown);
    end_scroll(ui);
    return;
  }
  Solids& solids = context.frame_memory.solids;
  make_scene(solids, shown);
  const bool beside = page.w > page.h * 1.2F;
  Rect picture = page, below = page;
  if (beside) {
    below.w = std::min(300.0F, page.w * 0.4F);
    picture.w -= below.w;
    below.x = picture.x + picture.w;
  } else {
    below.h = std::min(solids.controls, page.h * 0.6F);
    picture.h -= below.h;
    below.y = picture.y + picture.h;
  }
  draw_picture(context, shown, picture);
  begin_scroll(ui, "view.keys", below);
  const float top = ui.column.y;
  keys(context, shown);
  const float height = ui.column.y - top + kGap + kMargin;
  end_scroll(ui);
  if (!beside && height != solids.controls) {
    solids.controls = height;
    ui.memory.want_frame = true;
  }
}

}  // namespace

Page frame_view_page() { return {"frame.view", Msg::kFrameView, view_screen}; }

}  // namespace bentbook::screens
