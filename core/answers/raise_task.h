#pragma once
/// The search for an order of raising as long work: bytes in, bytes out.

#include <string>
#include <string_view>

#include "answers/task.h"
#include "raising/search.h"

namespace bentbook {

/// Most pieces that one task tries.
inline constexpr int kMostTaskSteps = 1'000'000;

/// `{"task":"raise","seed":1,"steps":4000,"book":{…the book's file…}}`. Seed and steps as in SearchOptions.
[[nodiscard]] std::string raise_request(std::string_view book_bytes, std::uint64_t seed, int steps);

/// What run_task does with it: `{"file":"found_order","version":1,…}`, read by read_found_order. Stopped with an order
/// found, the best so far. Errors: those of read_book and solve_frame, kMissing ("book"), kTooLarge and kTooSmall
/// ("seed", "steps"), kEmpty ("cancelled": stopped before any was found).
[[nodiscard]] Result<std::string> raise_task(std::string_view request, const Progress& progress);

/// Errors as of read_book, with the path of the member.
[[nodiscard]] Result<FoundOrder> read_found_order(std::string_view bytes);
[[nodiscard]] std::string write_found_order(const FoundOrder& found);

}  // namespace bentbook
