#pragma once
/// What the user gave, field by field: found and set by its path in the file (README.md beside this file),
/// "frame.span", "frame.bays.@3.width", "raising.crane.hook_block". How a path names an item of a list:
/// measure/field.h.
///
/// A timber's override is there before anything is said in it: "frame.overrides.@P-A1.section.depth" is what the timber
/// is in `frame` (may be null: then what an override begins with), and setting it says so.
/// Among the places a rafter's field goes by its key too (roof/rafter_fields.h): "rafter.seat_left".

#include <optional>
#include <string_view>

#include "book/book.h"
#include "book/places.h"
#include "measure/field.h"

namespace bentbook {

[[nodiscard]] std::optional<Field> field_at(const Book& book, std::string_view path, const Frame* frame = nullptr);
[[nodiscard]] std::optional<Field> field_at(const Places& places, std::string_view path);

/// The book with that value there. Errors as set_field. What goes with it: plates or pitches that are alike stay so
/// when the left one is set; a timber entered by hand has its nominal section in all its wood; an override says from
/// then on what was set in it; a crew is one that was entered from then on.
[[nodiscard]] Result<Book> with_field(Book book, std::string_view path, const FieldValue& value,
                                      const Frame* frame = nullptr);
/// …and the places. A rafter's field is one that was told from then on (roof/rafter_fields.h).
[[nodiscard]] Result<Places> with_field(Places places, std::string_view path, const FieldValue& value);

}  // namespace bentbook
