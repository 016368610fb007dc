#include "book/json_io.h"

namespace bentbook::json {
namespace {

const Value* member(const Value& object, const Value& name) {
  const auto it = object.FindMember(name);
  return it == object.MemberEnd() ? nullptr : &it->value;
}

/// What tells an object of a list from the others.
const char* identity_of(const Value& item) {
  for (const char* key : {"name", "mark", "label"})
    if (item.HasMember(key)) return key;
  return nullptr;
}

/// The object of the other list that stands for the one at `index`.
const Value* partner(const Value& list, rapidjson::SizeType index, const Value& kept) {
  const Value& item = list[index];
  if (!item.IsObject()) return nullptr;
  const char* key = identity_of(item);
  const auto same = [&](const Value& other) {
    if (!other.IsObject()) return false;
    if (key == nullptr) return kept.Size() == list.Size();
    const auto it = other.FindMember(key);
    return it != other.MemberEnd() && it->value == item[key];
  };
  if (index < kept.Size() && same(kept[index])) return &kept[index];
  if (key != nullptr)
    for (const Value& other : kept.GetArray())
      if (same(other)) return &other;
  return nullptr;
}

bool types_differ(const Value& now, const Value& kept) {
  const auto a = now.FindMember("type"), b = kept.FindMember("type");
  return a != now.MemberEnd() && b != kept.MemberEnd() && a->value != b->value;
}

// Recursion is bounded: both sides were parsed with at most kDeepest levels.
void merge(Value& now, const Value& kept, Allocator& memory) {
  if (now.IsArray() && kept.IsArray()) {
    for (rapidjson::SizeType i = 0; i < now.Size(); ++i)
      if (const Value* old = partner(now, i, kept)) merge(now[i], *old, memory);
  }
  if (!now.IsObject() || !kept.IsObject() || types_differ(now, kept)) return;
  for (auto it = kept.MemberBegin(); it != kept.MemberEnd(); ++it) {
    if (now.HasMember(it->name))
      merge(now[it->name], it->value, memory);
    else
      now.AddMember(Value(it->name, memory), Value(it->value, memory), memory);
  }
}

}  // namespace

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

void keep_unknown(Document& now, std::string_view kept) {
  if (kept.empty()) return;
  Document old;
  if (parse_json_object(old, kept, "kept")) merge(now, old, now.GetAllocator());
}

const Value* Reader::find(const char* key) const { return member(object_, Value(rapidjson::StringRef(key))); }

std::string Reader::path() const {
  if (outer_ == nullptr) return {};
  return outer_->path() + key_ + "." + (index_ < 0 ? "" : std::to_string(index_) + ".");
}

void Reader::fail(ErrorCode code, const char* key, std::int64_t limit) {
  if (!error_.where.empty()) return;
  error_ = Error{code, key, -1, limit};
  if (spot_ != nullptr) *spot_ = path() + key;
}

void Reader::text(const char* key, std::string& out, std::size_t most) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsString()) return wrong(key);
  if (v->GetStringLength() > most) return fail(ErrorCode::kTooLarge, key);
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

void Reader::whole(const char* key, std::int64_t& out, std::int64_t low, std::int64_t high) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  if (v->GetInt64() < low) return fail(ErrorCode::kTooSmall, key);
  if (v->GetInt64() > high) return fail(ErrorCode::kTooLarge, key);
  out = v->GetInt64();
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
  Reader inner(*v, *this, key, -1);
  describe(inner, out);
}

void Writer::slope(const char* key, Slope& value) {
  Value inner(rapidjson::kObjectType);
  Writer writer(inner, memory_);
  describe(writer, value);
  add(key, std::move(inner));
}

}  // namespace bentbook::json
