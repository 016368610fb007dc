#pragma once
/// The placed timbers as a mesh file of triangles (the OBJ text format: v and f lines, o a timber). Inches, world axes.

#include <string>

#include "frame/plan.h"

namespace bentbook {

/// Each timber is one closed mesh named by its mark; timbers without a place are left out.
[[nodiscard]] std::string frame_obj(const Frame& frame);

}  // namespace bentbook
