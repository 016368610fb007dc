#include "book/json_text.h"

#include <rapidjson/encodedstream.h>
#include <rapidjson/memorystream.h>
#include <rapidjson/reader.h>
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <charconv>
#include <cstdlib>
#include <limits>
#include <string>

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

/// Whether a text holds a surrogate, which an escape can spell ("\\udccc") and UTF-8 cannot carry: the reader checks
/// what it is given, not what it unescapes, and would refuse the text once written.
bool half_of_a_pair(std::string_view text) {
  for (std::size_t i = 0; i + 1 < text.size(); ++i)
    if (text[i] == '\xed' && static_cast<unsigned char>(text[i + 1]) >= 0xa0) return true;
  return false;
}

/// Hands what the reader finds to a document. Numbers arrive as their text: the reader's own exact way to a double runs
/// past its tables on hostile ones. A whole number that fits stays one; any other goes through the C library, which
/// rounds it right on every target.
class Builder {
 public:
  explicit Builder(rapidjson::Document& document) : document_(document) {}
  // NOLINTBEGIN(readability-identifier-naming): the reader calls its handler by these names.
  bool Null() { return document_.Null(); }
  bool Bool(bool value) { return document_.Bool(value); }
  bool Int(int value) { return document_.Int(value); }
  bool Uint(unsigned value) { return document_.Uint(value); }
  bool Int64(std::int64_t value) { return document_.Int64(value); }
  bool Uint64(std::uint64_t value) { return document_.Uint64(value); }
  bool Double(double value) { return document_.Double(value); }
  bool String(const char* text, rapidjson::SizeType size, bool copy) {
    return !half_of_a_pair({text, size}) && document_.String(text, size, copy);
  }
  bool StartObject() { return document_.StartObject(); }
  bool Key(const char* text, rapidjson::SizeType size, bool copy) {
    return !half_of_a_pair({text, size}) && document_.Key(text, size, copy);
  }
  bool EndObject(rapidjson::SizeType members) { return document_.EndObject(members); }
  bool StartArray() { return document_.StartArray(); }
  bool EndArray(rapidjson::SizeType elements) { return document_.EndArray(elements); }
  bool RawNumber(const char* text, rapidjson::SizeType size, bool) {
    std::int64_t whole = 0;
    const auto [end, error] = std::from_chars(text, text + size, whole);
    if (error == std::errc{} && end == text + size) return document_.Int64(whole);
    const double value = std::strtod(std::string(text, size).c_str(), nullptr);
    return value <= std::numeric_limits<double>::max() && value >= std::numeric_limits<double>::lowest() &&
           document_.Double(value);
  }
  // NOLINTEND(readability-identifier-naming)

 private:
  rapidjson::Document& document_;
};

}  // namespace

Result<void> parse_json_object(rapidjson::Document& document, std::string_view bytes, const char* where) {
  if (const std::int64_t at = too_deep_at(bytes); at >= 0) return fail(ErrorCode::kTooDeep, where, at);
  constexpr unsigned kFlags =
      rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag | rapidjson::kParseNumbersAsStringsFlag;
  rapidjson::Reader reader;
  rapidjson::MemoryStream memory(bytes.data(), bytes.size());
  rapidjson::EncodedInputStream<rapidjson::UTF8<>, rapidjson::MemoryStream> stream(memory);
  rapidjson::ParseResult parsed;
  const auto generate = [&](rapidjson::Document& handler) {
    Builder builder(handler);
    parsed = reader.Parse<kFlags>(stream, builder);
    return !parsed.IsError();
  };
  document.Populate(generate);
  if (parsed.IsError()) return fail(ErrorCode::kSyntax, where, static_cast<std::int64_t>(parsed.Offset()));
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
