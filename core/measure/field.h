#pragma once
/// One field of a described value (fields.h), found by its path: the members' keys with points between them,
/// "crane.hook_block". An item of a list goes by its place from 0, "girts.0.height", or, after an @, by its mark, name
/// or label, "bays.@3.width": that one stays good when other items come and go.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "measure/fields.h"
#include "measure/unit.h"

namespace bentbook {

/// One of a field's words, by index.
struct Choice {
  int index = 0;
  friend constexpr auto operator<=>(Choice, Choice) = default;  // NOLINT(modernize-use-nullptr): clang-tidy 14 errs
};

/// In the order of FieldKind.
using FieldValue = std::variant<std::string, bool, std::int64_t, double, Length, Slope, Angle, Weight, Choice>;
enum class FieldKind : std::uint8_t { kText, kFlag, kCount, kNumber, kLength, kSlope, kAngle, kWeight, kChoice };

struct Field {
  FieldValue value;
  LengthEntry length{};                                             ///< kLength
  AngleEntry angle{};                                               ///< kAngle
  std::int64_t least = 0, most = 0;                                 ///< kCount; kText: `most` bytes
  double low = std::numeric_limits<double>::lowest(), high = -low;  ///< kNumber
  KeptIn kept = KeptIn::kPlain;                                     ///< kCount, kNumber
  std::span<const std::string_view> words{};                        ///< kChoice
  [[nodiscard]] FieldKind kind() const { return static_cast<FieldKind>(value.index()); }
};

/// Paths of all that is no list and has no members of its own, in their order.
[[nodiscard]] std::vector<std::string> field_paths(Described of);
/// The field of that path; none: no such member.
[[nodiscard]] std::optional<Field> find_field(Described of, std::string_view path);
/// Puts a value there, which has to be of the field's own kind and within its limits; what stands there already always
/// may. Errors, with the last key as `where`: kMissing (no such field), kUnitMismatch (another kind), kTooSmall and
/// kTooLarge with the limit, and what the description itself finds in the value; what it was put into is not to be used
/// then.
[[nodiscard]] Result<void> set_field(Described of, std::string_view path, const FieldValue& value);

}  // namespace bentbook
