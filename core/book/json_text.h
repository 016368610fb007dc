#pragma once
/// JSON between bytes and RapidJSON's tree, for the few files that meet it.

#include <rapidjson/document.h>

#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// Parses bytes that must hold one object. Errors: kSyntax with the byte offset, kTooDeep (nesting past 64), both with
/// this `where`.
[[nodiscard]] Result<void> parse_json_object(rapidjson::Document& document, std::string_view bytes, const char* where);
[[nodiscard]] std::string json_text(const rapidjson::Value& value);

}  // namespace bentbook
