#pragma once
/// What a page with a picture of the building remembers between frames.

#include <memory>
#include <string>
#include <vector>

#include "frame/plan.h"
#include "render/solid_scene.h"

namespace bentbook::screens {

struct SolidMemory {
  std::shared_ptr<const Result<Frame>> of;
  std::shared_ptr<const render::SolidScene> scene;
  std::vector<int> timbers;  ///< of each part: index in Frame::timbers
  render::Camera camera{0.6, 0.45};
  render::Camera home{0.6, 0.45};  ///< what the fit button leads back to
  int kind = 0;                    ///< 0 turned by the finger, 1 plan, 2 gable, 3 side
  std::string lit;                 ///< mark
  float travelled = 0;             ///< px since the finger went down
  float last_x = 0, last_y = 0;
  bool held = false;
  struct Label {
    int part = 0;
    float width = 0;
    float off_x = 0, off_y = 0;  ///< px from its timber's middle to its own
  };
  std::vector<Label> labels;
  std::string labels_of;  ///< what they were placed for
};

}  // namespace bentbook::screens
