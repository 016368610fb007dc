#pragma once
/// Fingerprints: a digest of all that a piece of long work is about. What was worked out bears the fingerprint of what
/// it was worked out from, and holds while what lies open has the same one.
///
/// The digest runs over the members that describe() names (measure/fields.h), each as 64 bits, texts after their
/// length, lists after their count; every step is `h = (h ^ value) * odd; h ^= h >> 32`, so that two values that differ
/// in one place never meet there. Two books by chance: once in 2^64. It is no defence against intent, and it is never
/// stored.

#include <cstdint>

#include "book/book.h"

namespace bentbook {

using Fingerprint = std::uint64_t;

struct PaperRequest;
struct PatternRequest;

/// Of the plan of the frame and of what the lead says of its raising. Costs less than copying them.
[[nodiscard]] Fingerprint fingerprint_of(const Book& book);
/// The same, of one step of the order.
[[nodiscard]] Fingerprint fingerprint_of_step(Fingerprint raising, int step);
[[nodiscard]] Fingerprint fingerprint_of(const PatternRequest& request);
[[nodiscard]] Fingerprint fingerprint_of(const PaperRequest& request);

}  // namespace bentbook
