#pragma once
/// What the user gives, in every place alike: a figure that shows a field of the book or of the places, the keypad that
/// changes it, and the one way from there into the values. Fields go by their paths (book/field.h), which are the
/// figures' keys and the keypad's as well.

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "book/field.h"
#include "screens/app/context.h"
#include "words/words.h"

namespace bentbook::screens {

/// The field as it is now. None: there is no such field, or no book is open.
[[nodiscard]] std::optional<Field> field_now(const Context&, std::string_view path);
/// A field's value in words.
[[nodiscard]] std::string field_text(const Voice&, const Field&);

/// A row with its value (what stands in the keypad, while that is open on it), to be tapped. `unit` stands behind a
/// count. Without such a field, or one that the keypad cannot enter, there is no row.
void given_field(Context&, std::string_view path, std::string_view name, std::string_view unit = {});
/// Opens the keypad on it.
void open_field(Context&, std::string_view path, std::string_view name);
/// Where the keypad's key for the next field leads here, opens it; `item` is what the page shows of it.
void walk_on(Context&, std::string_view path, std::string_view name, std::string_view item);
/// A switch and a choice that are set by one tap. True: it is on (as it was before the tap).
bool given_flag(Context&, std::string_view path, std::string_view name, std::string_view second = {});
void given_choice(Context&, std::string_view path, std::string_view name,
                  std::initializer_list<std::string_view> options);

/// Puts a value there; nothing happens where it may not stand.
void put_field(Context&, std::string_view path, const FieldValue& value);
/// Puts there what the keypad finished; the App does it before a page is drawn.
void take_fields(Context&);

/// The book, or the places, with what stands in the keypad; none while it is not open on one of their fields, or its
/// entry may not stand there.
[[nodiscard]] std::optional<Book> typed_book(const Context&);
[[nodiscard]] std::optional<Places> typed_places(const Context&);

}  // namespace bentbook::screens
