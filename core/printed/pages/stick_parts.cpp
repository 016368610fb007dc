#include "printed/pages/stick_parts.h"

#include <algorithm>

#include "numeric/index.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "printed/page_head.h"
#include "words/frame_text.h"
#include "words/frame_words.h"
#include "words/stock_words.h"

namespace bentbook {
namespace {

constexpr double kBar = 7;  // mm, a stick's height

/// Sticks of one group, cut alike; their pieces differ in their marks alone.
using AlikeSticks = std::vector<const PlannedStick*>;

bool cut_alike(const StockOrder& order, const PlannedStick& a, const PlannedStick& b) {
  const auto piece_alike = [&](const StickPiece& one, const StickPiece& other) {
    return one.from == other.from && one.length == other.length && one.held == other.held &&
           order.pieces[at(one.piece)].length == order.pieces[at(other.piece)].length;
  };
  return a.length == b.length && a.yard == b.yard && a.used == b.used && a.to_order == b.to_order &&
         a.offcuts == b.offcuts && a.defects == b.defects &&
         std::equal(a.pieces.begin(), a.pieces.end(), b.pieces.begin(), b.pieces.end(), piece_alike);
}

std::vector<AlikeSticks> alike_sticks(const StockOrder& order, const StockGroup& group) {
  std::vector<AlikeSticks> out;
  for (const PlannedStick& stick : group.sticks) {
    const auto found = std::find_if(
        out.begin(), out.end(), [&](const AlikeSticks& sticks) { return cut_alike(order, *sticks.front(), stick); });
    if (found == out.end())
      out.push_back({&stick});
    else
      found->push_back(&stick);
  }
  return out;
}

/// "3–6, 9": what follows each other is said by its ends.
std::string numbers_text(const AlikeSticks& sticks) {
  std::string out;
  for (std::size_t i = 0; i < sticks.size();) {
    std::size_t end = i + 1;
    while (end < sticks.size() && sticks[end]->number == sticks[end - 1]->number + 1) ++end;
    if (!out.empty()) out += ", ";
    out += std::to_string(sticks[i]->number);
    if (end - i > 1) out += (end - i > 2 ? "–" : ", ") + std::to_string(sticks[end - 1]->number);
    i = end;
  }
  return out;
}

class StickDrawer {
 public:
  StickDrawer(const StockOrder& order, double width, const Voice& voice) : order_(order), width_(width), voice_(voice) {
    double longest = 1;
    for (const StockGroup& group : order.groups)
      for (const PlannedStick& stick : group.sticks) longest = std::max(longest, stick.length.in());
    scale_ = width / longest;
  }

  PagePart part(const StockGroup& group, const AlikeSticks& sticks) {
    const PlannedStick& stick = *sticks.front();
    part_ = {};
    y_ = paper::put_lines(part_.drawn, {0, 0}, head(group, sticks), {kBodyLetters, true}, width_) + 0.5;
    part_.drawn.polygons.push_back(
        {{{0, y_}, {stick.length.in() * scale_, y_}, {stick.length.in() * scale_, y_ + kBar}, {0, y_ + kBar}},
         draw::Fill::kNone,
         true,
         draw::Stroke::kThin});
    std::string pieces;
    for (std::size_t i = 0; i < stick.pieces.size(); ++i) {
      const StickPiece& piece = stick.pieces[i];
      const std::string length = say_length(order_.pieces[at(piece.piece)].length, voice_);
      // On a stick of many its mark is one of many too.
      const std::string& on_it = sticks.size() > 1 ? length : mark_of(piece);
      const double middle = box(piece.from, piece.length, draw::Fill::kNone);
      if (paper::text_width(on_it, kBodyLetters, true) + 1 < piece.length.in() * scale_)
        paper::put_words(part_.drawn, {middle, y_ + (kBar - kBodyLetters) / 2}, on_it, {kBodyLetters, true},
                         paper::Align::kMiddle);
      if (!pieces.empty()) pieces += "   ";
      for (const PlannedStick* one : sticks) pieces += (one == &stick ? "" : ", ") + mark_of(one->pieces[i]);
      pieces += " " + length;
    }
    for (const Offcut& offcut : stick.offcuts) {
      if (!offcut.kept) {
        box(offcut.from, offcut.length, draw::Fill::kSection);
        continue;
      }
      pieces += "   " + std::string(text(Msg::kStockOffcut, voice_.language)) + " " + say_length(offcut.length, voice_);
    }
    for (const StickDefect& defect : stick.defects) box(defect.from, defect.to - defect.from, draw::Fill::kWaste);
    y_ += kBar + 1;
    y_ += paper::put_lines(part_.drawn, {0, y_}, pieces, {kBodyLetters, false}, width_);
    part_.height = y_ + 2.5;
    return std::move(part_);
  }

 private:
  [[nodiscard]] const std::string& mark_of(const StickPiece& piece) const {
    return order_.pieces[at(piece.piece)].mark;
  }

  [[nodiscard]] std::string head(const StockGroup& group, const AlikeSticks& sticks) const {
    const PlannedStick& stick = *sticks.front();
    std::string out = sticks.size() == 1
                          ? say(Msg::kStockStick, voice_.language, std::to_string(stick.number))
                          : say(Msg::kPaperSticks, voice_.language,
                                {{"numbers", numbers_text(sticks)}, {"n", std::to_string(sticks.size())}});
    out += " · " + section_text(group.section, voice_) + " × " + say_length(stick.length, voice_);
    if (!group.species.empty()) out += " · " + std::string(shown_name(group.species, voice_.language));
    return out + " · " + stick_state_text(stick, voice_.language);
  }

  /// Gives its middle.
  double box(Length from, Length length, draw::Fill fill) {
    const double a = from.in() * scale_, b = (from + length).in() * scale_;
    part_.drawn.polygons.push_back(
        {{{a, y_}, {b, y_}, {b, y_ + kBar}, {a, y_ + kBar}}, fill, fill == draw::Fill::kNone, draw::Stroke::kVisible});
    return (a + b) / 2;
  }

  const StockOrder& order_;
  double width_, scale_ = 1, y_ = 0;
  const Voice& voice_;
  PagePart part_;
};

}  // namespace

std::vector<PagePart> stick_parts(const StockOrder& order, double width, const Voice& voice) {
  StickDrawer drawer(order, width, voice);
  std::vector<PagePart> parts;
  for (const StockGroup& group : order.groups)
    for (const AlikeSticks& sticks : alike_sticks(order, group)) parts.push_back(drawer.part(group, sticks));
  return parts;
}

}  // namespace bentbook
