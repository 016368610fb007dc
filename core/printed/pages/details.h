#pragma once
/// Joints enlarged on a timber's sheet: what is askew or inside a face, at a round scale and with its own measures.

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "printed/pages/pattern_sheet.h"
#include "printed/pages/sheet_parts.h"

namespace bentbook {

inline constexpr double kDetailRow = 5;  ///< mm from one line of dimensions to the next: figures stand clear

/// How a drawing lies on a place that it serves: as it is; left and right changed, still counted the same way; counted
/// the other way, left still left; both, the paper turned half round.
enum class Lie : std::uint8_t { kAsDrawn, kEdges, kEnds, kHalfTurn };
inline constexpr Lie kLies[] = {Lie::kAsDrawn, Lie::kEdges, Lie::kEnds, Lie::kHalfTurn};
/// The pattern of that place. Each undoes itself.
[[nodiscard]] FullSizePattern laid(FullSizePattern pattern, Lie lie);
/// "counted toward A"; empty as drawn. `spot`: of the place.
[[nodiscard]] std::string lie_text(Lie lie, const PatternSpot& spot, Language language);

/// A pattern and all places of the timber that it is drawn for, the drawn one's first.
struct Detail {
  FullSizePattern pattern;
  struct Place {
    PatternSpot spot;
    double station = 0;  ///< of the zero line from which the figures count there, inches from end A's tip
    Lie lie = Lie::kAsDrawn;
    std::vector<int> mates;                   ///< in Frame::timbers
    std::vector<FullSizePattern::Work> work;  ///< what is cut there
  };
  std::vector<Place> places;
};
/// What is drawn on a timber's sheet. No two of them are one drawing, however it is laid.
[[nodiscard]] std::vector<Detail> details_of(const SheetSubject& subject);

/// One drawing, end A on top as the faces have it, and the words over it. Figures are those beside the tape, counted
/// from the tip or the zero line that the words name.
struct DrawnDetail {
  std::string title;
  std::vector<std::string> where;  ///< a line for each face and end
  PatternLayers drawn;
};

/// Each end that is askew and each kind of joint once, alike ones together with their places. None is wider than the
/// page.
[[nodiscard]] std::vector<DrawnDetail> drawn_details(const SheetSubject& subject, double width);
[[nodiscard]] PagePart detail_part(const DrawnDetail& detail, double width);
/// Side by side, as many as a page's width has room for.
[[nodiscard]] std::vector<PagePart> detail_rows(std::span<const DrawnDetail> details, double width);

}  // namespace bentbook
