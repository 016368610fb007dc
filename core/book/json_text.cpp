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

/// Byte offset of the end of a zero that is written with an exponent ("0e120") or with more than twenty digits, or −1.
/// The parser's exact reading of a double normalises the significand, which is undefined for none; no writer has a
/// reason to spell zero so.
std::int64_t odd_zero_at(std::string_view bytes) {
  constexpr int kMostZeros = 20;
  bool in_string = false;
  bool zero = true;
  int digits = 0;
  for (std::size_t i = 0; i <= bytes.size(); ++i) {
    const char c = i < bytes.size() ? bytes[i] : ' ';
    if (!in_string && c >= '0' && c <= '9') {
      ++digits;
      zero = zero && c == '0';
      continue;
    }
    if (!in_string && c == '.') continue;
    const bool exponent = c == 'e' || c == 'E';
    if (zero && (digits > kMostZeros || (digits > 0 && exponent))) return static_cast<std::int64_t>(i);
    digits = 0;
    zero = true;
    if (c == '"') in_string = !in_string;
    if (c == '\\' && in_string) ++i;
  }
  return -1;
}

}  // namespace

Result<void> parse_json_object(rapidjson::Document& document, std::string_view bytes, const char* where) {
  if (const std::int64_t at = too_deep_at(bytes); at >= 0) return fail(ErrorCode::kTooDeep, where, at);
  if (const std::int64_t at = odd_zero_at(bytes); at >= 0) return fail(ErrorCode::kSyntax, where, at);
  constexpr unsigned kFlags =
      rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag | rapidjson::kParseFullPrecisionFlag;
  document.Parse<kFlags>(bytes.data(), bytes.size());
  if (document.HasParseError())
    return fail(ErrorCode::kSyntax, where, static_cast<std::int64_t>(document.GetErrorOffset()));
  if (!document.IsObject()) return fail(ErrorCode::kSyntax, where, 0);
  return {};
}

const rapidjson::Value* json_member(const rapidjson::Value& object, const char* key) {
  const auto it = object.FindMember(key);
  return it == object.MemberEnd() ? nullptr : &it->value;
}

std::string json_text(const rapidjson::Value& value) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);
  value.Accept(writer);
  return {buffer.GetString(), buffer.GetSize()};
}

}  // namespace bentbook
