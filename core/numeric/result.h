#pragma once
/// Result and Error: how every fallible function of the core answers.
///
/// An Error is a code, a place and a few values; its text is made at the edge (words/, screens/) from the string
/// table. Assertions are for our own bugs only.

#include <cstdint>
#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace bentbook {

/// What went wrong. One code, one sentence in the string table (`error_<code>`).
enum class ErrorCode : std::uint8_t {
  kEmpty,           ///< nothing was entered
  kUnexpected,      ///< a character that cannot stand there; `at` is its byte offset
  kUnknownUnit,     ///< a unit that this field does not know
  kUnitMismatch,    ///< a length was multiplied by a length, or a bare number added where none can be
  kDivisionByZero,  ///< a fraction or sum divides by zero
  kOverflow,        ///< larger than the app can hold
  kUnbalanced,      ///< a parenthesis without its partner
  kTooDeep,         ///< more nested parentheses than are read
  kNotPositive,     ///< must be more than zero
  kNegative,        ///< must not be less than zero
  kTooLarge,        ///< above the largest value accepted, `limit`
  kTooSmall,        ///< below the smallest value accepted, `limit`
  kSteep,           ///< slope at or past the vertical
  kSeatTooLong,     ///< the seat would leave no heel; `limit` is the longest seat
  kHeelTooLarge,    ///< the heel leaves no seat; `limit` is the largest heel
  kImpossible,      ///< the given values contradict each other
  kMissing,         ///< a needed value was not given
  kConflict,        ///< two values were given of which only one may be
  kSyntax,          ///< a file or record that is not well formed; `at` is its byte offset
  kNewerVersion,    ///< the file was written by a newer version
  kUnknownOption,   ///< the command line has an option that the command does not know
};

/// `where` names the field or option (a stable key, never a label), `at` the byte offset of the trouble in the text
/// that was given (-1: none), `limit` the nearest accepted value in the field's own count (eighths of a nanometre for
/// lengths, nano-degrees for angles; meaningful only where the code says so).
struct Error {
  ErrorCode code = ErrorCode::kUnexpected;
  std::string where;
  std::int64_t at = -1;
  std::int64_t limit = 0;
};

template <class T>
using Result = tl::expected<T, Error>;

[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code, std::string where = {}, std::int64_t at = -1,
                                                std::int64_t limit = 0) {
  return tl::unexpected<Error>(Error{code, std::move(where), at, limit});
}

}  // namespace bentbook
