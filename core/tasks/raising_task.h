#pragma once
/// Long work of the raising, off the frame: bytes in, bytes out, in a Worker or a thread. A module of its own on the
/// phone, loaded with the place that asks for it.

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "book/book.h"
#include "raising/check.h"
#include "raising/search/search.h"
#include "raising/stability/standing.h"
#include "tasks/task.h"

namespace bentbook {

/// One step looked at closely.
struct StepExplained {
  int step = 0;
  StandingCheck standing;         ///< when the sling comes off
  std::vector<Temporary> braces;  ///< with which it would stand, names left empty; none where it stands or none do
};

/// Requests: a JSON object, `{"task": …, "book": {…}}`:
///   raise_check     → read_order_check; what an earlier check of the same book has found out is used again
///   raise_explain   "step": index → read_step_explained
///   raise_search    "seed", "tries", "further": go on after the first good order → read_found_order
/// Errors: kSyntax, kUnknownOption ("task"), those of read_book and solve_frame, kTooLarge ("step"), kEmpty
/// ("cancelled") when `progress` said stop and there is nothing to show.
class RaisingTasks {
 public:
  RaisingTasks();
  ~RaisingTasks();
  [[nodiscard]] Result<std::string> run(std::string_view request, const Progress& progress);
  [[nodiscard]] static bool takes(std::string_view request);

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

[[nodiscard]] std::string raise_check_request(const Book& book);
[[nodiscard]] std::string raise_explain_request(const Book& book, int step);
[[nodiscard]] std::string raise_search_request(const Book& book, std::uint64_t seed, int tries, bool further = false);

/// Errors: kSyntax ("answer").
[[nodiscard]] Result<OrderCheck> read_order_check(std::string_view answer);
[[nodiscard]] Result<StepExplained> read_step_explained(std::string_view answer);
[[nodiscard]] Result<FoundOrder> read_found_order(std::string_view answer);

}  // namespace bentbook
