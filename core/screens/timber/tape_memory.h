#pragma once
/// A face's tape as it was last laid out.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "draw/tape_page.h"
#include "frame/sheet/face_marks.h"
#include "model/book_model.h"

namespace bentbook::screens {

struct TapeMemory {
  std::shared_ptr<const Result<Frame>> of;
  std::string key;  ///< all else that it was made for
  std::optional<FaceMarks> marks;
  draw::TapeStrip strip;
  std::vector<draw::TapePage> pages;
  std::size_t beside = 1;  ///< so many pages stand side by side

  /// Views of it, one after another.
  [[nodiscard]] std::size_t parts() const { return (pages.size() + beside - 1) / beside; }
};

}  // namespace bentbook::screens
