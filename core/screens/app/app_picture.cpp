#include <algorithm>
#include <string>
#include <utility>

#include "render/picture.h"
#include "screens/app/app_inside.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

constexpr int kMostRounds = 6;
constexpr double kSaidMs = 4000;
constexpr float kMostHeight = 5000, kMostScale = 2, kMostPixels = 12e6F;

}  // namespace

void App::Impl::ask_picture() {
  shot = {};
  shot.round = 1;
  shot.height = viewport.height;
  woken();
}

/// The page is laid out higher and higher until all of it shows.
void App::Impl::begin_picture() {
  shot.drawing = shot.round > 0 && !shot.ready && pages.slide(now_ms) <= 0 && !keypad.is_open();
  if (!shot.drawing) return;
  shot.seen = viewport;
  shot.scrolls = memory.scrolls;
  viewport.height = shot.height;
  viewport.inset_top = viewport.inset_bottom = viewport.inset_left = viewport.inset_right = 0;
}

void App::Impl::end_picture() {
  if (!shot.drawing) return;
  float below = 0;
  for (const Ui::Memory::Scroll& scroll : memory.scrolls)
    for (const ScrollArea& area : registry.scroll_areas())
      if (area.key == scroll.key) below += scroll.max;
  const bool all = below < 1 || shot.round == kMostRounds || shot.height >= kMostHeight;
  shot.ready = all;
  if (!all) {
    ++shot.round;
    shot.height = std::min(kMostHeight, shot.height + below);
  }
  viewport = shot.seen;
  for (Ui::Memory::Scroll& scroll : shot.scrolls) scroll.moved = true;
  memory.scrolls = std::move(shot.scrolls);
  woken();
}

/// What stands above the page in the picture, in place of the keys.
Rect App::Impl::draw_picture_head(Ui& ui, Rect area) {
  const float pad = kMargin, high = ui.fonts.strong->FontSize + ui.fonts.note->FontSize + 16;
  pen(ui).AddRectFilled(top_left(area), {area.x + area.w, area.y + high}, ui.theme.panel);
  draw_text(pen(ui), *ui.fonts.strong, {area.x + pad, area.y + 8}, ui.theme.ink,
            fit_text(*ui.fonts.strong, ui.say(pages.top().title), area.w - 2 * pad));
  draw_text(pen(ui), *ui.fonts.note, {area.x + pad, area.y + 8 + ui.fonts.strong->FontSize}, ui.theme.quiet,
            fit_text(*ui.fonts.note, subject_name(ui), area.w - 2 * pad));
  return {area.x, area.y + high, area.w, area.h - high};
}

void App::Impl::hand_picture(const ImDrawData& data, render::ClearColour ground) {
  const float most = kMostPixels / (data.DisplaySize.x * data.DisplaySize.y);
  const float scale = std::min({viewport.scale, kMostScale, static_cast<float>(libm::sqrt(static_cast<double>(most)))});
  render::Pixels pixels = render::pixels_of(renderer, data, scale, ground);
  std::string name(text(pages.top().title, language()));
  if (subject_is_book()) name = std::string(shown_name(desk.title(), language())) + " " + name;
  shot = {};
  woken();
  toast = {std::string(text(Msg::kPictureMade, language())), Toast::Undoes::kNothing, now_ms + kSaidMs};
  if (!pixels.rgba.empty())
    platform.share_picture(std::move(name) + ".png", pixels.width, pixels.height, std::move(pixels.rgba));
}

}  // namespace bentbook::screens
