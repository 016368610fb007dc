#include "book/json_text.h"

#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

namespace bentbook {
namespace {

constexpr int kDeepest = 64;

/// Byte offset of the bracket that nests too deep, or −1.
std::int64_t too_deep_at(std::string_view bytes) {
  int depth = 0;
  bool in_string = false;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    const char c = bytes[i];
    if (in_string) {
      if (c == '\\') ++i;
      if (c == '"') in_string = false;
    } else if (c == '"') {
      in_string = true;
    } else if (c == '{' || c == '[') {
      if (++depth > kDeepest) return static_cast<std::int64_t>(i);
    } else if (c == '}' || c == ']') {
      --depth;
    }
  }
  return -1;
}

}  // namespace

Result<void> parse_json_object(rapidjson::Document& document, std::string_view bytes, const char* where) {
  if (const std::int64_t at = too_deep_at(bytes); at >= 0) return fail(ErrorCode::kTooDeep, where, at);
  constexpr unsigned kFlags =
      rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag | rapidjson::kParseFullPrecisionFlag;
  document.Parse<kFlags>(bytes.data(), bytes.size());
  if (document.HasParseError())
    return fail(ErrorCode::kSyntax, where, static_cast<std::int64_t>(document.GetErrorOffset()));
  if (!document.IsObject()) return fail(ErrorCode::kSyntax, where, 0);
  return {};
}

std::string json_text(const rapidjson::Value& value) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);
  value.Accept(writer);
  return {buffer.GetString(), buffer.GetSize()};
}

}  // namespace bentbook
