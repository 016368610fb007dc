#pragma once
/// What the Frame place remembers between frames: what was worked out for a solved frame, kept until another one is
/// shown, and where the user was. Nothing of it is stored.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "draw/drawing.h"
#include "frame/sheet_drawing.h"
#include "model/book_model.h"
#include "render/solid_scene.h"

namespace bentbook::screens {

struct FrameMemory {
  using Solved = std::shared_ptr<const Result<Frame>>;

  struct Elevations {
    Solved of;
    draw::Drawing bent, wall;
  } elevations;

  struct Totals {
    Solved of;
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

  struct FourNumbers {  ///< of a new frame, as they were left
    Length span = Length::feet(16), length = Length::feet(24), plate = Length::feet(9);
    Slope pitch = Slope::in_12(Length::inches(8));
  } four_numbers;

  struct Shown {  ///< one timber's sheet
    Solved of;
    std::string mark, saw;
    std::optional<Sheet> sheet;
    SheetDrawing whole, stretch;
    int part = 0, parts = 1;  ///< which stretch is drawn
    int stretch_part = -1;
  } sheet;

  struct Solids {  ///< the 3D view
    Solved of;
    std::shared_ptr<const render::SolidScene> scene;
    std::vector<int> timbers;  ///< of each part: index in Frame::timbers
    render::Camera camera{0.6, 0.45};
    int kind = 0;          ///< 0 turned by the finger, 1 plan, 2 gable, 3 side
    int bent = 0;          ///< label that is stepped to; 0: all
    std::string lit;       ///< mark
    bool alone = false;    ///< the rest are ghosts
    float controls = 176;  ///< height of what stands below the picture
    float travelled = 0;   ///< px since the finger went down
    float last_x = 0, last_y = 0;
    bool held = false;
    struct Label {
      int part = 0;
      float width = 0;
    };
    std::vector<Label> labels;
    std::string labels_of;  ///< what they were placed for
  } solids;

  std::string sure_of;  ///< the deletion of this book was asked once
};

}  // namespace bentbook::screens
