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
    if (kept.FindMember(it->name) != it) continue;  // of one name's members the first was read
    if (now.HasMember(it->name))
      merge(now[it->name], it->value, memory);
    else
      now.AddMember(Value(it->name, memory), Value(it->value, memory), memory);
  }
}

/// The object must say {"file": file, "version": 1..version}.
Result<void> check_head(const Document& document, FileHead head) {
  const auto name = document.FindMember("file");
  if (name == document.MemberEnd() || !name->value.IsString() || name->value != head.file)
    return bentbook::fail(ErrorCode::kSyntax, "file", 0);
  const auto number = document.FindMember("version");
  if (number == document.MemberEnd() || !number->value.IsInt64() || number->value.GetInt64() < 1)
    return bentbook::fail(ErrorCode::kSyntax, "version", 0);
  if (number->value.GetInt64() > head.version)
    return bentbook::fail(ErrorCode::kNewerVersion, head.file, -1, number->value.GetInt64());
  return {};
}

void keep_unknown(Document& now, std::string_view kept) {
  if (kept.empty()) return;
  Document old;
  if (parse_json_object(old, kept, "kept")) merge(now, old, now.GetAllocator());
}

}  // namespace

std::string write_file(FileHead head, Described value, std::string_view kept) {
  Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(head.file), document.GetAllocator());
  document.AddMember("version", head.version, document.GetAllocator());
  Writer writer(document, document.GetAllocator());
  value.describe(writer, value.value);
  keep_unknown(document, kept);
  return json_text(document);
}

Result<void> read_file(FileHead head, std::string_view bytes, Described value, std::string* spot) {
  Document document;
  if (auto ok = parse_json_object(document, bytes, head.file); !ok) return ok;
  if (auto ok = check_head(document, head); !ok) return ok;
  Error error;
  Reader reader(document, error, spot);
  value.describe(reader, value.value);
  if (!error.where.empty()) return tl::unexpected(error);
  return {};
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
  if (v->GetStringLength() > most) return fail(ErrorCode::kTooLarge, key, 0);
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
  if (v->GetInt() < low) return fail(ErrorCode::kTooSmall, key, 0);
  if (v->GetInt() > high) return fail(ErrorCode::kTooLarge, key, 0);
  out = v->GetInt();
}

void Reader::whole(const char* key, std::int64_t& out, std::int64_t low, std::int64_t high) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  if (v->GetInt64() < low) return fail(ErrorCode::kTooSmall, key, 0);
  if (v->GetInt64() > high) return fail(ErrorCode::kTooLarge, key, 0);
  out = v->GetInt64();
}

void Reader::number(const char* key, double& out, double low, double high, double) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsNumber()) return wrong(key);
  out = v->GetDouble();
  if (out < low) return fail(ErrorCode::kTooSmall, key, 0);
  if (out > high) return fail(ErrorCode::kTooLarge, key, 0);
}

void Reader::length(const char* key, Length& out, const LengthEntry&) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  const std::int64_t count = v->GetInt64();
  if (count > Length::kLimit || count < -Length::kLimit) return fail(ErrorCode::kTooLarge, key, Length::kLimit);
  out = {count};
}

void Reader::angle(const char* key, Angle& out, const AngleEntry&) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsInt64()) return wrong(key);
  constexpr std::int64_t kMost = 360 * Angle::kPerDegree;
  const std::int64_t n = v->GetInt64();
  if (n > kMost || n < -kMost) return fail(ErrorCode::kTooLarge, key, kMost);
  out = {n};
}

void Reader::slope(const char* key, Slope& out) { object(key, out); }

void Reader::weight(const char* key, Weight& out) { whole(key, out.count, 0, Weight::kLimit); }

void Reader::word(const char* key, int& out, std::span<const std::string_view> words) {
  const Value* v = find(key);
  if (!v) return;
  if (v->IsString())
    for (std::size_t i = 0; i < words.size(); ++i)
      if (words[i] == std::string_view(v->GetString(), v->GetStringLength())) return void(out = static_cast<int>(i));
  wrong(key);
}

void Reader::inner(const char* key, Described out) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsObject()) return wrong(key);
  Reader inside(*v, *this, key, -1);
  out.describe(inside, out.value);
}

void Reader::items(const char* key, DescribedList& out, unsigned most) {
  const Value* v = find(key);
  if (!v) return;
  if (!v->IsArray() || v->Size() > most) return wrong(key);
  out.resize(0);
  for (rapidjson::SizeType i = 0; i < v->Size(); ++i) {
    if (!(*v)[i].IsObject()) return wrong(key);
    Reader inside((*v)[i], *this, key, static_cast<int>(i));
    out.resize(i + 1);
    const Described item = out.at(i);
    item.describe(inside, item.value);
  }
}

Value Writer::made(Described value) {
  Value object(rapidjson::kObjectType);
  Writer inside(object, memory_);
  value.describe(inside, value.value);
  return object;
}

void Writer::items(const char* key, DescribedList& list, unsigned) {
  Value array(rapidjson::kArrayType);
  for (std::size_t i = 0; i < list.size(); ++i) array.PushBack(made(list.at(i)), memory_);
  add(key, std::move(array));
}

void Writer::add_text(const char* key, std::string_view text) {
  add(key, Value(text.data(), static_cast<rapidjson::SizeType>(text.size()), memory_));
}

}  // namespace bentbook::json
