#include "screens/raising/picture.h"

#include <algorithm>

#include "raising/temporary_line.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

using render::PartLook;
using render::PartMotion;

constexpr double kComesMs = 4000, kSwayMs = 2400;
constexpr double kMostShown = 96;     ///< inches of a long way that are shown
constexpr double kFilled = 0.62;      ///< of the picture by what is there: the rest is for braces down to the ground
constexpr double kFilledAlone = 0.8;  ///< …where there are none
constexpr double kSwayInches = 14;    ///< of the point that moves most
constexpr double kNameOff = 40;       ///< px at most from a brace's middle to its name
constexpr double kTurnStep = libm::kPi / 6;
constexpr double kSpreadShare = 0.8;  ///< what is spread closes in the last part of the way

bool has(const std::vector<int>& timbers, int timber) {
  return std::find(timbers.begin(), timbers.end(), timber) != timbers.end();
}

void put(float (&out)[3], Vec3 v) {
  out[0] = static_cast<float>(v.x);
  out[1] = static_cast<float>(v.y);
  out[2] = static_cast<float>(v.z);
}

/// Where what comes is against its place; moves after one another, each in its part of the time.
PartMotion on_the_way(const std::vector<Move>& path, double share) {
  PartMotion out;
  Vec3 off;
  int steps = 0;
  for (const Move& move : path) steps += move.kind == MoveKind::kSpread ? 0 : 1;
  int n = 0;
  for (const Move& move : path) {
    if (move.kind == MoveKind::kSpread) continue;
    const double done = std::clamp(share * steps - n, 0.0, 1.0);
    ++n;
    if (move.kind == MoveKind::kSwing) {
      put(out.turn, -move.distance * (1 - done) * move.direction);
      put(out.centre, move.pivot);
    } else {
      const double way = move.distance > 0 ? std::min(move.distance, kMostShown) : kMostShown;
      off = off - way * (1 - done) * move.direction;
    }
  }
  put(out.move, off);
  return out;
}

std::vector<PartMotion> giving_way(const std::vector<int>& parts, const Frame& frame, const Mode& mode, double sway) {
  std::vector<PartMotion> motions(parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (const TimberMotion& m : mode.motions) {
      if (m.timber != parts[i]) continue;
      const Timber& timber = frame.timbers[static_cast<std::size_t>(m.timber)];
      put(motions[i].move, sway * m.move);
      put(motions[i].turn, sway * m.turn);
      put(motions[i].centre, facts_of(timber).cg_world);
    }
  return motions;
}

/// Braces lie over the solids: what holds must be seen. Their names stand off what comes in and off its marks.
void draw_temporaries(Context& context, const Frame& frame, const SolidMemory& solids, Rect box,
                      const std::vector<Temporary>& temporaries, const std::vector<std::uint8_t>& looks) {
  const Ui& ui = context.ui;
  const render::View view(*solids.scene, solids.camera, static_cast<double>(box.w), static_cast<double>(box.h));
  ImFont& font = *ui.fonts.note;
  const double high = static_cast<double>(font.FontSize);
  draw::Bounds sheet;
  sheet.add(draw::Point{0, 0});
  sheet.add(draw::Point{static_cast<double>(box.w), static_cast<double>(box.h)});
  std::vector<draw::Box> keep = lit_boxes(frame, solids, looks, view);
  for (const SolidMemory::Label& label : solids.labels) {
    const Vec2 at = view.to_px(solids.scene->parts[static_cast<std::size_t>(label.part)].middle);
    keep.push_back({{at.x + static_cast<double>(label.off_x), at.y + static_cast<double>(label.off_y)},
                    static_cast<double>(label.width),
                    high});
  }
  ImDrawList& list = pen(context.ui);
  list.PushClipRect(top_left(box), bottom_right(box), true);
  for (const Temporary& t : temporaries) {
    const auto line = temporary_line(frame, t);
    if (!line) continue;
    const Vec2 a = view.to_px(line->from), b = view.to_px(line->to);
    const auto px = [&](draw::Point p) {
      return ImVec2{box.x + static_cast<float>(p.x), box.y + static_cast<float>(p.y)};
    };
    list.AddLine(px({a.x, a.y}), px({b.x, b.y}), ui.theme.cut, t.kind == TemporaryKind::kGuy ? 1.5F : 3.0F);
    const draw::Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    const draw::Size size{static_cast<double>(text_size(font, t.name).x) + 6, high};
    const draw::Box name =
        draw::box_beside(middle, size, sheet, keep, kNameOff).value_or(draw::Box{middle, size.w, size.h});
    keep.push_back(name);
    const ImVec2 from = px({name.centre.x - name.w / 2, name.centre.y - name.h / 2}),
                 to = px({name.centre.x + name.w / 2, name.centre.y + name.h / 2});
    list.AddRectFilled(from, to, ui.theme.ground);
    draw_text(list, font, {from.x + 3, from.y}, ui.theme.ink, t.name);
  }
  list.PopClipRect();
}

}  // namespace

std::vector<PartMotion> coming_motions(const std::vector<int>& parts, const RaisingPicture& picture, double share) {
  std::vector<PartMotion> motions(parts.size());
  if (picture.entry == nullptr || !picture.entry->free) return motions;
  const PartMotion way = on_the_way(picture.entry->path, share);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (has(picture.coming, parts[i])) motions[i] = way;
    for (const Move& move : picture.entry->path)
      if (move.kind == MoveKind::kSpread && has(move.who, parts[i])) {
        const double open = std::clamp((1 - share) / (1 - kSpreadShare), 0.0, 1.0);
        put(motions[i].move, open * move.distance * move.direction);
      }
  }
  return motions;
}

void raising_picture(Context& context, const ShownFrame& shown, ItemKey key, float height,
                     const RaisingPicture& picture) {
  Ui& ui = context.ui;
  RaisingMemory& memory = context.raising_memory;
  SolidMemory& solids = memory.picture;
  const bool anew = solids.of != shown.solved;
  make_scene(solids, shown);
  const Frame& frame = *shown.frame();
  const Rect row = take_box(ui, height);
  space(ui, kGap);
  double share = 1, sway = 0;
  if (memory.moving_since_ms >= 0) {
    const double ms = ui.now_ms - memory.moving_since_ms;
    const bool comes = picture.mode == nullptr;
    if (comes ? ms >= kComesMs : ms >= 4 * kSwayMs) {
      memory.moving_since_ms = -1;
      memory.mode = -1;
    } else {
      share = comes ? std::min(1.0, ms / (0.9 * kComesMs)) : 1;
      sway = kSwayInches * libm::sin(ms / kSwayMs * 2 * libm::kPi);
      // Where motion is not wanted, one still picture on the way.
      if (context.viewport.reduced_motion) {
        share = 0.3;
        sway = kSwayInches;
      } else {
        ui.memory.want_frame = true;
      }
    }
  }
  SolidLooks looks;
  for (const int t : solids.timbers) {
    PartLook look = PartLook::kHidden;
    if (has(picture.standing, t)) look = PartLook::kPlain;
    if (has(picture.coming, t)) look = PartLook::kLit;
    looks.looks.push_back(static_cast<std::uint8_t>(look));
  }
  std::string of = std::to_string(static_cast<int>(row.w)) + "/" + std::to_string(static_cast<int>(row.h));
  for (const std::uint8_t look : looks.looks) of += static_cast<char>('0' + look);
  if (memory.picture_of != of || anew) {
    memory.picture_of = of;
    solids.home = solids.camera =
        render::fitted(*solids.scene, {0.6, 0.45}, looks.looks, static_cast<double>(row.w), static_cast<double>(row.h),
                       picture.temporaries.empty() ? kFilledAlone : kFilled);
  }
  const std::string name =
      say(Msg::kRaisingPictureName, ui.language,
          {{"standing", std::to_string(picture.standing.size())}, {"coming", marks_text(frame, picture.coming)}});
  looks.motions = picture.mode != nullptr && memory.moving_since_ms >= 0
                      ? giving_way(solids.timbers, frame, *picture.mode, sway)
                      : coming_motions(solids.timbers, picture, share);
  (void)draw_solids(context, shown, solids, row, {std::string(key), name, of, memory.moving_since_ms < 0},
                    [&] { return looks; });
  draw_temporaries(context, frame, solids, row, picture.temporaries, looks.looks);
}

Rect turn_keys(Context& context, ItemKey key, float height) {
  Ui& ui = context.ui;
  SolidMemory& solids = context.raising_memory.picture;
  const float side = ui.theme.target;
  const Rect row = take_box(ui, height);
  space(ui, kGap);
  const float y = row.y + (row.h - side) / 2;
  if (icon_button(ui, std::string(key) + ".turn_left", {row.x, y, side, side}, Icon::kTurnLeft,
                  context.say(Msg::kPictureTurnLeft)))
    solids.camera.yaw += kTurnStep;
  if (icon_button(ui, std::string(key) + ".turn_right", {row.x + row.w - side, y, side, side}, Icon::kTurnRight,
                  context.say(Msg::kPictureTurnRight)))
    solids.camera.yaw -= kTurnStep;
  return {row.x + side + kGap, row.y, row.w - 2 * (side + kGap), row.h};
}

}  // namespace bentbook::screens
