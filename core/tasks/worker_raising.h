#pragma once
/// The raising's tasks on the Worker's side of the border (border.h), in a module of their own on the phone.

#include <string>
#include <string_view>

#include "tasks/raising_task.h"

namespace bentbook {

/// Bytes of write_frame(). Errors: kSyntax ("frame"), also where an index names nothing.
[[nodiscard]] Result<Frame> read_frame(std::string_view bytes);

class RaisingWorker {
 public:
  /// Bytes of write_request() and write_frame() in, bytes for read_answer() out. The same frame again is not read
  /// again. Errors in them: kSyntax ("task"), those of read_frame and of the work.
  [[nodiscard]] std::string answer(std::string_view request, std::string_view frame, const Progress& progress);

 private:
  std::string frame_bytes_;
  std::shared_ptr<const Frame> frame_;
  RaisingTasks tasks_;
};

}  // namespace bentbook
