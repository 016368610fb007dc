#pragma once
/// What the Frame place remembers between frames: what was worked out for a solved frame, kept until another one is
/// shown, and where the user was. Nothing of it is stored.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "draw/drawing.h"
#include "frame/joinery.h"
#include "frame/sheet/face_marks.h"
#include "model/book_model.h"
#include "roof/plan/solve_roof.h"
#include "screens/frame/solid_memory.h"
#include "screens/timber/tape_memory.h"

namespace bentbook::screens {

struct FrameMemory {
  using Solved = std::shared_ptr<const Result<Frame>>;

  struct Elevations {
    Solved of;
    draw::Drawing bent, wall;
  } elevations;

  struct Totals {
    Solved of;
    Length step;  ///< by which stock is sold
    FrameTotals totals;
  } totals;

  /// The list: rows of timbers and headings, in order.
  struct List {
    Solved of;
    int order = 0;  ///< 0 kind, 1 mark, 2 section, 3 bent
    std::string search;
    std::string of_words;  ///< order, search, language and form of lengths that the rows were made for
    struct Row {
      int timber = -1;  ///< −1: a heading
      std::string heading;
    };
    std::vector<Row> rows;
    int found = 0;
  } list;

  struct GoTo {  ///< a mark put together from its parts: "P", then "A"
    std::string kind, line;
  } go_to;

  struct FourNumbers {  ///< of a new frame, as they were left, and how it is joined
    Length span = Length::feet(16), length = Length::feet(24), plate = Length::feet(9);
    Slope pitch = Slope::in_12(Length::inches(8));
    Joinery joinery = Joinery::kWooden;
    friend bool operator==(const FourNumbers&, const FourNumbers&) = default;
  } four_numbers,
      metric_numbers{Length::mm(5000), Length::mm(7500), Length::mm(2750), Slope::of_angle(Angle::degrees(35))};

  struct NewBuilding {  ///< as it was drawn last
    FourNumbers of;
    SizedBy by = SizedBy::kInches;
    std::optional<draw::Drawing> drawing;
  } new_building;

  struct Roof {  ///< a roof of any plan, as it was solved last
    RoofPlan of;
    std::optional<Result<RoofSolution>> solved;
  } roof, roof_typed;

  struct Shown {  ///< one timber's sheet
    Solved of;
    std::string mark, saw;
    std::optional<Sheet> sheet;
    std::vector<FaceMarks> faces;  ///< 1 to 4
  } sheet;

  TapeMemory face;  ///< a face of it

  struct Solids {  ///< the 3D view
    SolidMemory picture;
    int bent = 0;           ///< label that is stepped to; 0: all
    bool alone = false;     ///< the rest are ghosts
    bool progress = false;  ///< patterns say how far the shop is
    float controls = 176;   ///< height of what stands below the picture
  } solids;

  std::string sure_of;  ///< the deletion of this book was asked once
};

}  // namespace bentbook::screens
