#pragma once
/// A bed whose Raising place is open.

#include <catch_amalgamated.hpp>

#include "bed.h"
#include "book/book_file.h"
#include "tasks/raising_task.h"

namespace bentbook::screens {

/// Tasks are run as a shell runs them, between frames.
struct RaisingBed : Bed {
  RaisingTasks tasks;
  explicit RaisingBed(float width = 390, float height = 844) : Bed(width, height) {
    tap("place.raising");
    work();
  }
  void work() {
    for (int rounds = 0; rounds < 10; ++rounds) {
      const auto ids = std::exchange(platform.tasks, {});
      const auto requests = std::exchange(platform.requests, {});
      if (ids.empty()) return;
      for (std::size_t i = 0; i < ids.size(); ++i) {
        const auto answer = tasks.run(requests[i], {});
        REQUIRE(answer);
        app.on({EventKind::kTaskDone, ids[i], *answer, 0});
      }
      rest();
    }
  }
  void go(std::string_view key) {
    press(key);
    work();
  }
  [[nodiscard]] RaisingPlan stored() const { return read_book(platform.stored("book1")).value().raising; }
  /// One step of these timbers.
  void bring(std::initializer_list<std::string_view> marks) {
    for (const std::string_view mark : marks) press("tap.mark." + std::string(mark));
    go("tap.together");
  }
};

}  // namespace bentbook::screens
