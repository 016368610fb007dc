#pragma once
/// Inside the book: reading and writing plain values as JSON members. One description of a value serves both ways
/// (see describe() in kit.cpp and places.cpp); a missing member keeps its default, a wrong one is an Error.

#include <span>
#include <string>
#include <string_view>

#include "book/json_text.h"
#include "measure/slope.h"

namespace bentbook::json {

using Document = rapidjson::Document;
using Value = rapidjson::Value;
using Allocator = Document::AllocatorType;

/// The object must say {"file": file, "version": 1..version}.
[[nodiscard]] Result<void> check_head(const Document& document, const char* file, int version);
/// Members of `kept` (a file as it was read) that `now` lacks are added, at every depth; objects in lists are paired
/// by their "name", "mark" or "label", else by their place in a list of the same size; an object whose "type" is
/// another one now starts anew. Bytes that do not parse are forgotten.
void keep_unknown(Document& now, std::string_view kept);

class Reader {
 public:
  /// `spot`: where the path of the first trouble goes ("frame.bays.2.width"); Error::where has its last word alone.
  Reader(const Value& object, Error& error, std::string* spot = nullptr)
      : object_(object), error_(error), spot_(spot) {}
  static constexpr bool kReads = true;

  /// `most`: longest text that is read, in bytes.
  void text(const char* key, std::string& out, std::size_t most = 400);
  void flag(const char* key, bool& out);
  void integer(const char* key, int& out, int low, int high);
  void whole(const char* key, std::int64_t& out, std::int64_t low, std::int64_t high);
  void number(const char* key, double& out);
  void length(const char* key, Length& out);
  void angle(const char* key, Angle& out);
  void slope(const char* key, Slope& out);
  template <class Enum>
  void choice(const char* key, Enum& out, std::span<const std::string_view> names) {
    const int i = choice_index(key, names);
    if (i >= 0) out = static_cast<Enum>(i);
  }
  template <class Thing>
  void object(const char* key, Thing& out) {
    const Value* v = find(key);
    if (!v) return;
    if (!v->IsObject()) return wrong(key);
    Reader inner(*v, *this, key, -1);
    describe(inner, out);
  }
  template <class Thing>
  void list(const char* key, Thing& out, unsigned most) {
    const Value* v = find(key);
    if (!v) return;
    if (!v->IsArray() || v->Size() > most) return wrong(key);
    out.clear();
    int index = 0;
    for (const Value& item : v->GetArray()) {
      if (!item.IsObject()) return wrong(key);
      Reader inner(item, *this, key, index++);
      describe(inner, out.emplace_back());
    }
  }
  void fail(ErrorCode code, const char* key, std::int64_t limit = 0);

 private:
  [[nodiscard]] const Value* find(const char* key) const;
  int choice_index(const char* key, std::span<const std::string_view> names);
  void wrong(const char* key) { fail(ErrorCode::kSyntax, key); }
  Reader(const Value& object, const Reader& outer, const char* key, int index)
      : object_(object), error_(outer.error_), spot_(outer.spot_), outer_(&outer), key_(key), index_(index) {}
  [[nodiscard]] std::string path() const;
  const Value& object_;
  Error& error_;  ///< the first trouble; its `where` is empty while there is none
  std::string* spot_;
  const Reader* outer_ = nullptr;
  const char* key_ = "";
  int index_ = -1;
};

class Writer {
 public:
  Writer(Value& object, Allocator& memory) : object_(object), memory_(memory) {}
  static constexpr bool kReads = false;

  void text(const char* key, std::string& value, std::size_t = 400) {
    add(key, Value(value.data(), size(value), memory_));
  }
  void flag(const char* key, bool& value) { add(key, Value(value)); }
  void integer(const char* key, int& value, int, int) { add(key, Value(value)); }
  void whole(const char* key, std::int64_t& value, std::int64_t, std::int64_t) { add(key, Value(value)); }
  void number(const char* key, double& value) { add(key, Value(value)); }
  void length(const char* key, Length& value) { add(key, Value(value.count)); }
  void angle(const char* key, Angle& value) { add(key, Value(value.nano_degrees)); }
  void slope(const char* key, Slope& value);
  template <class Enum>
  void choice(const char* key, Enum& value, std::span<const std::string_view> names) {
    const std::string_view name = names[static_cast<unsigned>(value)];
    add(key, Value(name.data(), size(name), memory_));
  }
  template <class Thing>
  void object(const char* key, Thing& value) {
    add(key, made(value));
  }
  template <class Thing>
  void list(const char* key, Thing& values, unsigned) {
    Value array(rapidjson::kArrayType);
    for (auto& value : values) array.PushBack(made(value), memory_);
    add(key, std::move(array));
  }

 private:
  static rapidjson::SizeType size(std::string_view s) { return static_cast<rapidjson::SizeType>(s.size()); }
  template <class Thing>
  Value made(Thing& value) {
    Value inner(rapidjson::kObjectType);
    Writer writer(inner, memory_);
    describe(writer, value);
    return inner;
  }
  void add(const char* key, Value value) { object_.AddMember(rapidjson::StringRef(key), std::move(value), memory_); }
  Value& object_;
  Allocator& memory_;
};

}  // namespace bentbook::json
