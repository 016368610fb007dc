#include "screens/frame/solid_view.h"

#include <algorithm>
#include <cfloat>
#include <map>
#include <span>
#include <utility>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

using render::Camera;
using render::PartLook;

constexpr double kTurnPerPx = 0.008, kMostZoom = 40, kLeastZoom = 0.5;
constexpr float kTapSlop = 10;
constexpr std::size_t kLeastLabels = 4, kMostLabels = 48;
constexpr double kLabelsPerScale = 12;  ///< for each px that an inch is drawn at: the smaller the timbers, the fewer
constexpr int kMostLooks = 160;         ///< labels tried for being hidden, each costs a ray
constexpr double kOffLit = 2;           ///< px between a mark and a lit timber
constexpr double kFarthestOff = 96;     ///< px from a lit timber's middle to its mark

struct Picture {
  Context& context;
  const Frame& frame;
  SolidMemory& solids;
  Rect box;
  const SolidPage& page;
  [[nodiscard]] const Timber& timber(std::size_t part) const {
    return frame.timbers[static_cast<std::size_t>(solids.timbers[part])];
  }
  [[nodiscard]] render::View view() const {
    return {*solids.scene, solids.camera, static_cast<double>(box.w), static_cast<double>(box.h)};
  }
};

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

void move_camera(SolidMemory& solids, float dx, float dy) {
  Camera& camera = solids.camera;
  if (solids.kind != 0) {
    camera.dx += static_cast<double>(dx);
    camera.dy += static_cast<double>(dy);
    return;
  }
  camera.yaw -= static_cast<double>(dx) * kTurnPerPx;
  camera.tip = std::clamp(camera.tip + static_cast<double>(dy) * kTurnPerPx, -0.5, libm::kPi / 2);
}

/// True: a tap landed on nothing.
bool follow(Picture& p, const Look& look, const std::vector<std::uint8_t>& looks) {
  SolidMemory& solids = p.solids;
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
  bool nothing = false;
  if (tapped) {
    const Vec2 px{static_cast<double>(solids.last_x - p.box.x), static_cast<double>(solids.last_y - p.box.y)};
    const int part = p.view().pick(*solids.scene, solid_ones(looks), px);
    solids.lit = part < 0 ? std::string{} : p.timber(static_cast<std::size_t>(part)).mark;
    nothing = part < 0;
    p.context.ui.memory.want_frame = true;
  }
  if (const auto pinch = pinched(p.context.ui, p.page.key + ".picture"))
    zoom_about(solids.camera, p.box, pinch->x, pinch->y, static_cast<double>(pinch->factor),
               static_cast<double>(pinch->dx), static_cast<double>(pinch->dy));
  // On a page that has something to scroll the wheel does that.
  const Ui::Memory& memory = p.context.ui.memory;
  const bool scrolls = !memory.open.empty() && memory.scrolls[memory.open.back().index].max > 0;
  const float wheel = scrolls ? 0 : ImGui::GetIO().MouseWheel;
  if (look.lit && wheel != 0) zoom_about(solids.camera, p.box, at.x, at.y, wheel > 0 ? 1.15 : 1 / 1.15, 0, 0);
  return nothing;
}

// ── Marks ─────────────────────────────────────────────────────────────────────────────────────────────────────────

bool is_lit(const std::vector<std::uint8_t>& looks, std::size_t part) {
  return looks[part] == static_cast<std::uint8_t>(PartLook::kLit);
}

/// Which marks are written: as many as have room, none of a timber that is hidden there, none over one that is lit:
/// its own mark stands beside it.
void choose_labels(Picture& p, const std::vector<std::uint8_t>& looks) {
  SolidMemory& solids = p.solids;
  std::string of = solids.lit + "/" + p.page.of;
  for (const double v : {solids.camera.yaw * 1e4, solids.camera.tip * 1e4, solids.camera.zoom * 1e3, solids.camera.dx,
                         solids.camera.dy, static_cast<double>(p.box.w), static_cast<double>(p.box.h)})
    of += "/" + std::to_string(static_cast<long long>(v));
  if (solids.held || of == solids.labels_of) return;
  solids.labels_of = of;
  solids.labels.clear();
  const render::View view = p.view();
  const std::vector<std::uint8_t> solid = solid_ones(looks);
  ImFont& font = *p.context.ui.fonts.note;
  const double high = static_cast<double>(font.FontSize);
  draw::Bounds sheet;
  sheet.add(draw::Point{0, 0});
  sheet.add(draw::Point{static_cast<double>(p.box.w), static_cast<double>(p.box.h)});
  std::vector<draw::Box> taken;
  for (const draw::Box& lit : lit_boxes(p.frame, solids, looks, view)) taken.push_back(draw::grown(lit, kOffLit));
  const std::size_t timbers = taken.size();
  const std::size_t most =
      std::clamp(static_cast<std::size_t>(view.scale() * kLabelsPerScale), kLeastLabels, kMostLabels);
  int tried = 0;
  const auto try_one = [&](std::size_t part) {
    if (solid[part] == 0 || solids.labels.size() >= most || tried >= kMostLooks) return;
    const Vec2 at = view.to_px(solids.scene->parts[part].middle);
    if (at.x < 0 || at.y < 0 || at.x > sheet.right || at.y > sheet.bottom) return;
    const float width = text_size(font, p.timber(part).mark).x + 8;
    const bool lit = is_lit(looks, part);
    const draw::Size size{static_cast<double>(width), high};
    auto box = draw::box_beside({at.x, at.y}, size, sheet, taken, lit ? kFarthestOff : 0);
    // One that fills the picture carries its mark.
    if (!box && lit) box = draw::box_beside({at.x, at.y}, size, sheet, std::span(taken).subspan(timbers), kFarthestOff);
    if (!box) return;
    ++tried;
    if (!lit && view.pick(*solids.scene, solid, at) != static_cast<int>(part)) return;
    taken.push_back(*box);
    solids.labels.push_back({static_cast<int>(part), width, static_cast<float>(box->centre.x - at.x),
                             static_cast<float>(box->centre.y - at.y)});
  };
  for (std::size_t i = 0; i < looks.size(); ++i)
    if (is_lit(looks, i)) try_one(i);
  for (std::size_t i = 0; i < looks.size(); ++i)
    if (!is_lit(looks, i)) try_one(i);
}

void draw_labels(const Picture& p) {
  const Ui& ui = p.context.ui;
  const render::View view = p.view();
  ImDrawList& list = pen(p.context.ui);
  ImFont& font = *ui.fonts.note;
  for (const SolidMemory::Label& label : p.solids.labels) {
    const Timber& timber = p.timber(static_cast<std::size_t>(label.part));
    const Vec2 at = view.to_px(p.solids.scene->parts[static_cast<std::size_t>(label.part)].middle);
    const ImVec2 on{p.box.x + static_cast<float>(at.x), p.box.y + static_cast<float>(at.y)};
    const ImVec2 middle{on.x + label.off_x, on.y + label.off_y};
    const ImVec2 from{middle.x - label.width / 2, middle.y - font.FontSize / 2};
    const bool lit = timber.mark == p.solids.lit;
    if (label.off_x != 0 || label.off_y != 0) {
      list.AddLine(middle, on, ui.theme.ink, 1.5F);
      list.AddCircleFilled(on, 3, ui.theme.ink, 12);
    }
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

render::SolidInk ink_of(const Theme& theme) {
  render::SolidInk ink;
  put_colour(ink.ground, theme.ground);
  put_colour(ink.face, theme.dark ? theme.pressed : theme.ground);
  put_colour(ink.edge, theme.ink);
  put_colour(ink.lit, theme.edit);
  for (int i = 0; i < render::kPartPatterns; ++i)
    put_colour(ink.tint[i], pattern_colour(theme, static_cast<render::PartPattern>(i)));
  return ink;
}

}  // namespace

Camera camera_of(int kind) {
  constexpr double quarter = libm::kPi / 2;
  if (kind == 1) return {0, quarter, 1, 0, 0, false};
  if (kind == 2) return {0, 0, 1, 0, 0, false};
  if (kind == 3) return {quarter, 0, 1, 0, 0, false};
  return {0.6, 0.45};
}

void make_scene(SolidMemory& solids, const ShownFrame& shown) {
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

std::vector<draw::Box> lit_boxes(const Frame& frame, const SolidMemory& solids, const std::vector<std::uint8_t>& looks,
                                 const render::View& view) {
  std::vector<Vec2> along(looks.size());
  std::vector<draw::Bounds> seen(looks.size());  // along and across the timber
  for (std::size_t i = 0; i < looks.size(); ++i) {
    if (!is_lit(looks, i)) continue;
    const Vec3 middle = solids.scene->parts[i].middle;
    const Vec2 from = view.to_px(middle),
               to = view.to_px(middle + frame.timbers[static_cast<std::size_t>(solids.timbers[i])].at.x);
    const double length = libm::hypot(to.x - from.x, to.y - from.y);
    along[i] = length > 1e-6 ? Vec2{(to.x - from.x) / length, (to.y - from.y) / length} : Vec2{1, 0};
  }
  for (const render::EdgeLine& edge : solids.scene->edges) {
    if (!is_lit(looks, edge.part)) continue;
    const Vec2 u = along[edge.part];
    const auto add = [&](const float(&end)[3]) {
      const Vec2 px =
          view.to_px({static_cast<double>(end[0]), static_cast<double>(end[1]), static_cast<double>(end[2])});
      seen[edge.part].add(draw::Point{px.x * u.x + px.y * u.y, px.y * u.x - px.x * u.y});
    };
    add(edge.a);
    add(edge.b);
  }
  std::vector<draw::Box> boxes;
  boxes.reserve(looks.size());
  for (std::size_t i = 0; i < looks.size(); ++i) {
    if (seen[i].empty()) continue;
    const double x = (seen[i].left + seen[i].right) / 2, y = (seen[i].top + seen[i].bottom) / 2;
    const Vec2 u = along[i];
    boxes.push_back({{x * u.x - y * u.y, x * u.y + y * u.x}, seen[i].width(), seen[i].height(), libm::atan2(u.y, u.x)});
  }
  return boxes;
}

bool draw_solids(Context& context, const ShownFrame& shown, SolidMemory& solids, Rect box, const SolidPage& page,
                 FunctionRef<SolidLooks()> looks_of) {
  Ui& ui = context.ui;
  box = {whole_px(box.x), whole_px(box.y), whole_px(box.w), whole_px(box.h)};
  Picture p{context, *shown.frame(), solids, box, page};
  const Look look =
      add_pressed(ui, {page.key + ".picture", Role::kImage, Touch::kTurn, page.name, solids.lit, box}, false);
  SolidLooks looks = looks_of();
  const bool nothing = follow(p, look, looks.looks);
  looks = looks_of();
  const std::vector<std::uint8_t> drawn = looks.looks;
  render::SolidPicture picture{solids.scene,
                               solids.camera,
                               std::move(looks.looks),
                               std::move(looks.patterns),
                               std::move(looks.motions),
                               ink_of(ui.theme),
                               box.w,
                               box.h,
                               context.viewport.scale};
  context.solids.show(std::move(picture));
  if (context.solids.ready())
    pen(ui).AddImage(context.solids.texture(), top_left(box), bottom_right(box), {0, 1}, {1, 0});
  if (page.labels) {
    pen(ui).PushClipRect(top_left(box), bottom_right(box), true);
    choose_labels(p, drawn);
    draw_labels(p);
    pen(ui).PopClipRect();
  }
  const float side = ui.theme.target, wide = text_size(*ui.fonts.strong, context.say(Msg::kViewFit)).x + 24;
  const Rect fit{box.x + box.w - wide - kGap, box.y + kGap, wide, side};
  if (!(solids.camera == solids.home) && button_in(ui, page.key + ".fit", fit, context.say(Msg::kViewFit)))
    solids.camera = solids.home;
  return nothing;
}

void view_choice(Context& context, ItemKey key, SolidMemory& solids) {
  const auto kind = choice(context.ui, key, {},
                           {context.say(Msg::kViewTurned), context.say(Msg::kViewPlan), context.say(Msg::kViewGable),
                            context.say(Msg::kViewSide)},
                           solids.kind);
  if (!kind) return;
  solids.kind = *kind;
  solids.camera = solids.home = camera_of(*kind);
}

BesidePicture beside_picture(const Context& context) {
  BesidePicture parts{context.page, context.page};
  if (context.page.w > context.page.h * 1.2F) {
    parts.below.w = std::min(320.0F, parts.below.w * 0.45F);
    parts.picture.w -= parts.below.w;
    parts.below.x = parts.picture.x + parts.picture.w;
  } else {
    parts.picture.h = context.page.h * 0.52F;
    parts.below.y += parts.picture.h;
    parts.below.h -= parts.picture.h;
  }
  return parts;
}

ImU32 pattern_colour(const Theme& theme, render::PartPattern pattern) {
  using render::PartPattern;
  switch (pattern) {
    case PartPattern::kNone:
    case PartPattern::kSparse:
      return theme.quiet;
    case PartPattern::kCrossed:
      return theme.caution;
    case PartPattern::kDense:
    case PartPattern::kFull:
      return theme.edit;
    case PartPattern::kBars:
      return theme.cut;
  }
  return theme.quiet;
}

void draw_pattern(Ui& ui, Rect box, render::PartPattern pattern) {
  using render::PartPattern;
  ImDrawList& list = pen(ui);
  const ImU32 colour = pattern_colour(ui.theme, pattern);
  const ImVec2 from = top_left(box), to = bottom_right(box);
  list.PushClipRect(from, to, true);
  if (pattern == PartPattern::kFull) list.AddRectFilled(from, to, mix(ui.theme.ground, colour, 0.6F));
  if (pattern == PartPattern::kBars)
    for (float y = from.y; y < to.y; y += 5) list.AddRectFilled({from.x, y}, {to.x, y + 2}, colour);
  const float apart = pattern == PartPattern::kDense ? 5 : 9;
  if (pattern == PartPattern::kSparse || pattern == PartPattern::kCrossed || pattern == PartPattern::kDense)
    for (float x = from.x - box.h; x < to.x; x += apart) {
      list.AddLine({x, to.y}, {x + box.h, from.y}, colour, 1.5F);
      if (pattern == PartPattern::kCrossed) list.AddLine({x, from.y}, {x + box.h, to.y}, colour, 1.5F);
    }
  list.PopClipRect();
  list.AddRect(from, to, ui.theme.ink);
}

}  // namespace bentbook::screens
