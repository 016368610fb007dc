#pragma once
/// Drawings as a phone shows them, with the fonts that they are drawn with: every figure whole, on the page, clear of
/// the others. Included once a file, after Catch2.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "letters.h"
#include "plans.h"
#include "ui/drawing/canvas.h"
#include "words/face_words.h"
#include "words/figures.h"

namespace bentbook::screens {

inline constexpr LengthForm kForms[] = {LengthForm::kFeetInches, LengthForm::kInchFraction, LengthForm::kDecimalInch,
                                        LengthForm::kMm, LengthForm::kMetre};

using Said = std::function<bentbook::FigureText(std::string_view)>;

/// One phone with one size of text.
struct Phone {
  explicit Phone(float text_scale) : scale(text_scale), letters(text_scale) {}
  float scale;
  Letters letters;
  screens::Theme theme = make_theme(false, false);
  int drawn = 0, close = 0;

  /// On a phone of either width, as high as a page gives it.
  void draw(const draw::Drawing& drawing, float height, bool small, const Said& said) {
    const float page = small ? 452 : 728;
    draw_in(drawing,
            {0, 0, small ? 288.0F : 358.0F,
             std::clamp(height * (0.5F + 0.5F * scale), 160.0F, std::max(160.0F, page - 24))},
            said);
  }
  void draw_in(const draw::Drawing& drawing, const Rect& rect, const Said& said) {
    Canvas canvas;
    const float height = canvas.set(theme, letters.fonts, drawing, {rect.w, rect.h},
                                    [&](std::string_view key, draw::Meaning) { return said(key).text; });
    const Rect taken{rect.x, rect.y, rect.w, height};
    canvas.paint(*ImGui::GetBackgroundDrawList(), theme, letters.fonts, drawing, taken);
    check(canvas.figures(), taken);
  }

  void check(const std::vector<CanvasFigure>& figures, const Rect& rect) {
    constexpr float kSlack = 0.5F;
    for (std::size_t i = 0; i < figures.size(); ++i) {
      const CanvasFigure& f = figures[i];
      CAPTURE(f.key, f.text, f.rect.x, f.rect.y, f.rect.w, f.rect.h, rect.w, rect.h);
      CHECK((f.rect.x >= rect.x - kSlack && f.rect.x + f.rect.w <= rect.x + rect.w + kSlack));
      CHECK((f.rect.y >= rect.y - kSlack && f.rect.y + f.rect.h <= rect.y + rect.h + kSlack));
      ++drawn;
      for (std::size_t k = 0; k < i; ++k) {
        const CanvasFigure& o = figures[k];
        INFO("on " << o.key << " " << o.text);
        const bool apart = f.rect.x >= o.rect.x + o.rect.w - kSlack || o.rect.x >= f.rect.x + f.rect.w - kSlack ||
                           f.rect.y >= o.rect.y + o.rect.h - kSlack || o.rect.y >= f.rect.y + f.rect.h - kSlack;
        CHECK(apart);
      }
    }
  }
};

/// One way of showing: what numbers are said in, on a phone of one width.
struct Shown {
  explicit Shown(Random& random) : small(chance(random, 50)) {
    voice.lengths.form = kForms[random.whole(0, 4)];
    voice.lengths.denominator = 1 << random.whole(3, 6);
    voice.language = static_cast<Language>(random.whole(0, static_cast<std::int64_t>(kLanguageCount) - 1));
  }
  Voice voice;
  bool small;
};

/// In millimetres and metres the unit stands once, below (screens/app/drawing_form.cpp).
inline Said without_unit(Said said, const Voice& voice) {
  const std::string unit = ' ' + std::string(page_unit(voice));
  return [said = std::move(said), unit](std::string_view key) {
    bentbook::FigureText figure = said(key);
    if (unit.size() > 1 && figure.text.ends_with(unit)) figure.text.resize(figure.text.size() - unit.size());
    return figure;
  };
}

}  // namespace bentbook::screens
