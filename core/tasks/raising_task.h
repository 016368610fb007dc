#pragma once
/// The raising's long work: an order checked, a step explained, an order looked for.

#include <memory>

#include "tasks/task.h"

namespace bentbook {

/// One after another; what one request has found out about a frame and a plan helps the next.
class RaisingTasks {
 public:
  RaisingTasks();
  ~RaisingTasks();
  [[nodiscard]] OrderCheck check(const CheckRequest& request);
  /// Errors: kTooLarge ("step").
  [[nodiscard]] Result<StepExplained> explain(const ExplainRequest& request);
  /// Stopped by `progress`: the best so far.
  [[nodiscard]] FoundOrder search(const SearchRequest& request, const Progress& progress);
  /// Whichever is asked. Errors: also kUnknownOption ("task"), for what is no work of the raising.
  [[nodiscard]] Result<TaskAnswer> run(const TaskRequest& request, const Progress& progress);

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

}  // namespace bentbook
