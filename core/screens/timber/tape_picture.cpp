#include "screens/timber/tape_picture.h"

#include <algorithm>

#include "screens/form/drawing_form.h"
#include "screens/timber/face_parts.h"
#include "ui/drawing/tape_canvas.h"
#include "words/face_words.h"

namespace bentbook::screens {
namespace {

constexpr float kBetween = 32;  // px, between two pages of a tape

}  // namespace

std::string tape_key(const Context& context, std::string_view what) {
  const LengthStyle lengths = context.style();
  std::string key(what);
  for (const int n :
       {static_cast<int>(context.ui.column.width), context.kit.settings.text_percent,
        static_cast<int>(context.ui.language), static_cast<int>(lengths.form), lengths.denominator, lengths.decimals})
    (key += '|') += std::to_string(n);
  return key;
}

void lay_out(const Context& context, TapeMemory& kept, double side, double room) {
  draw::TapeOptions options;
  options.width = static_cast<double>(context.ui.column.width);
  options.room = room;
  options.side = side;
  set_ticks(options, voice_of(context));
  kept.pages = draw::lay_out_tape(kept.strip, options, [&](std::string_view text, draw::TapeText size) {
    return tape_text_size(context.ui.fonts, text, size);
  });
}

float tape_head_height(const Ui& ui) { return ui.fonts.strong->FontSize + 4; }

float tape_column(float width, std::size_t columns) {
  const auto n = static_cast<float>(columns);
  return (width - kBetween * (n - 1)) / n;
}

void show_part(Context& context, const std::string& prefix, const TapeMemory& kept, std::size_t part) {
  Ui& ui = context.ui;
  const Column whole = ui.column;
  float foot = whole.y;
  ui.column.width = tape_column(whole.width, kept.beside);
  for (std::size_t page = part * kept.beside; page < std::min(kept.pages.size(), (part + 1) * kept.beside); ++page) {
    ui.column.y = whole.y;
    show_tape(context, prefix, kept, page);
    foot = std::max(foot, ui.column.y);
    ui.column.x += ui.column.width + kBetween;
  }
  ui.column = whole;
  ui.column.y = foot;
}

void show_tape(Context& context, const std::string& prefix, const TapeMemory& kept, std::size_t page) {
  Ui& ui = context.ui;
  const draw::TapePage& shown = kept.pages[page];
  face_columns(ui, *kept.marks, shown, take_box(ui, tape_head_height(ui)), page_unit(voice_of(context)));
  const Rect box = take_box(ui, static_cast<float>(shown.height) + kGrid);
  const std::string which = page % kept.beside == 0 ? "" : "." + std::to_string(page % kept.beside + 1);
  picture(ui, prefix + ".picture" + which, say(Msg::kFacePicture, ui.language, face_number(kept.marks->face)), box);
  paint_tape(pen(ui), ui.theme, ui.fonts, shown, box);
  read_tape(ui, prefix, kept.strip, shown, box);
}

}  // namespace bentbook::screens
