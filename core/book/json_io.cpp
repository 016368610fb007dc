#include "book/json_io.h"

#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

namespace bentbook::json {
namespace {

constexpr int kDeepest = 64;
constexpr std::size_t kLongestText = 400;

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

const Value* member(const Value& object, const Value& name) {
  const auto it = object.FindMember(name);
  return it == object.MemberEnd() ? nullptr : &it->value;
}

const Value* named(const Value& list, const Value& name) {
  for (const Value& item : list.GetArray()) {
    if (!item.IsObject()) continue;
    const auto it = item.FindMember("name");
    if (it != item.MemberEnd() && it->value == name) return &item;
  }
  return nullptr;
}

// Recursion is bounded: both sides were parsed with at most kDeepest levels.
void merge(Value& now, const Value& kept, Allocator& memory) {
  if (now.IsArray() && kept.IsArray()) {
    for (Value& item : now.GetArray()) {
      if (!item.IsObject() || !item.HasMember("name")) continue;
      if (const Value* old = named(kept, item["name"])) merge(item, *old, memory);
    }
  }
  if (!now.IsObject() || !kept.IsObject()) return;
  for (auto it = kept.MemberBegin(); it != kept.MemberEnd(); ++it) {
    const auto mine = now.FindMember(it->name);
    if (mine != now.MemberEnd())
      merge(mine->value, it->value, memory);
    else
      now.AddMember(Value(it->name, memory), Value(it->value, memory), memory);
  }
}

}  // namespace

Result<void> parse_object(Document& document, std::string_view bytes, const char* where) {
  if (const std::int64_t at = too_deep_at(bytes); at >= 0) return bentbook::fail(ErrorCode::kTooDeep, where, at);
  constexpr unsigned kFlags =
      rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag | rapidjson::kParseFullPrecisionFlag;
  document.Parse<kFlags>(bytes.data(), bytes.size());
  if (document.HasParseError())
    return bentbook::fail(ErrorCode::kSyntax, where, static_cast<std::int64_t>(document.GetErrorOffset()));
  if (!document.IsObject()) return bentbook::fail(ErrorCode::kSyntax, where, 0);
  return {};
}

Result<void> check_head(const Document& document, const char* file, int version) {
  const auto name = document.FindMember("file");
  if (name == document.MemberEnd() || !name->value.IsString() || name->value != file)
    return bentbook::fail(ErrorCode::kSyntax, "file", 0);
  const auto number = document.FindMember("version");
  if (number == document.MemberEnd() || !number->value.IsInt64() || number->value.GetInt64() < 1)
    return bentbook::fail(ErrorCode::kSyntax, "version", 0);
  if (number->value.GetInt64() > version)
    return bentbook::fail(ErrorCode::kNewerVersion, file, -1, number->value.GetInt64());
  return {};
}

std::string to_text(const Value& value) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);
  value.Accept(writer);
  return {buffer.GetString(), buffer.GetSize()};
}

void keep_unknown(Document& now, std::string_view kept) {
  if (kept.empty()) return;
  Document old;
  if (parse_object(old, kept, "kept")) merge(now, old, now.GetAllocator());
}

const Value* Reader::find(const char* key) const { return member(object_, Value(rapidjson::StringRef(key))); }

void Reader::fail(ErrorCode code, const char* key, std::int64_t limit) {
  if (error_.where.empty()) error_ = Error{code, key, -1, limit};
}

void Reader::text(const char* key, std::string& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsString()) return wrong(key);
  if (v->GetStringLength() > kLongestText) return fail(ErrorCode::kTooLarge, key);
  out.assign(v->GetString(), v->GetStringLength());
}

void Reader::flag(const char* key, bool& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsBool()) return wrong(key);
  out = v->GetBool();
}

void Reader::integer(const char* key, int& out, int low, int high) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt()) return wrong(key);
  if (v->GetInt() < low) return fail(ErrorCode::kTooSmall, key);
  if (v->GetInt() > high) return fail(ErrorCode::kTooLarge, key);
  out = v->GetInt();
}

void Reader::number(const char* key, double& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsNumber()) return wrong(key);
  out = v->GetDouble();
}

void Reader::length(const char* key, Length& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  const std::int64_t count = v->GetInt64();
  if (count > Length::kLimit || count < -Length::kLimit) return fail(ErrorCode::kTooLarge, key, Length::kLimit);
  out = {count};
}

void Reader::angle(const char* key, Angle& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  constexpr std::int64_t kMost = 360 * Angle::kPerDegree;
  const std::int64_t n = v->GetInt64();
  if (n > kMost || n < -kMost) return fail(ErrorCode::kTooLarge, key, kMost);
  out = {n};
}

int Reader::choice_index(const char* key, std::span<const std::string_view> names) {
  const Value* v = find(key);
  if (!v) return -1;
  if (v->IsString())
    for (std::size_t i = 0; i < names.size(); ++i)
      if (names[i] == std::string_view(v->GetString(), v->GetStringLength())) return static_cast<int>(i);
  wrong(key);
  return -1;
}

namespace {
constexpr std::string_view kSlopeForms[] = {"ratio", "angle", "percent", "mm_per_m"};

template <class Io>
void describe(Io& io, Slope& s) {
  io.choice("form", s.form, kSlopeForms);
  io.length("rise", s.rise);
  io.length("run", s.run);
  io.angle("angle", s.angle);
}
}  // namespace

void Reader::slope(const char* key, Slope& out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsObject()) return wrong(key);
  Reader inner(*v, error_);
  describe(inner, out);
}

void Writer::slope(const char* key, Slope& value) {
  Value inner(rapidjson::kObjectType);
  Writer writer(inner, memory_);
  describe(writer, value);
  add(key, std::move(inner));
}

}  // namespace bentbook::json
