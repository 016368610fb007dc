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
      const std::vector<Task> wanted = std::exchange(platform.tasks, {});
      if (wanted.empty()) return;
      for (const Task& task : wanted) tell_task({task.id, 1000, tasks.run(task.request, {})});
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
