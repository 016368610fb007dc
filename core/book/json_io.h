#pragma once
/// Reading and writing what is described (measure/fields.h) as JSON members: a missing member keeps its default, a
/// wrong one is an Error.

#include <span>
#include <string>
#include <string_view>

#include "book/json_text.h"
#include "measure/fields.h"

namespace bentbook::json {

using Document = rapidjson::Document;
using Value = rapidjson::Value;
using Allocator = Document::AllocatorType;

/// A file's own name and the version that is written; any up to it is read.
struct FileHead {
  const char* file;
  int version;
};

/// {"file": …, "version": …, and the value's members}, in canonical bytes. Members of `kept` (a file as it was read)
/// that these lack are added, at every depth; objects in lists are paired by their "name", "mark" or "label", else by
/// their place in a list of the same size; an object whose "type" is another one now starts anew. Bytes that do not
/// parse are forgotten.
[[nodiscard]] std::string write_file(FileHead head, Described value, std::string_view kept);
/// Puts the members into the value. `spot`: where the path of the first wrong one goes ("frame.bays.2.width");
/// Error::where has its last word alone.
[[nodiscard]] Result<void> read_file(FileHead head, std::string_view bytes, Described value,
                                     std::string* spot = nullptr);

class Reader final : public Fields {
 public:
  /// `spot` as in read_file.
  Reader(const Value& object, Error& error, std::string* spot = nullptr)
      : object_(object), error_(error), spot_(spot) {}

  [[nodiscard]] bool reads() const override { return true; }
  void fail(ErrorCode code, const char* key, std::int64_t limit) override;
  void text(const char* key, std::string& out, std::size_t most) override;
  void flag(const char* key, bool& out) override;
  void integer(const char* key, int& out, int low, int high) override;
  void whole(const char* key, std::int64_t& out, std::int64_t low, std::int64_t high) override;
  void number(const char* key, double& out, double low, double high, double most) override;
  void length(const char* key, Length& out, const LengthEntry&) override;
  void angle(const char* key, Angle& out, const AngleEntry&) override;
  void slope(const char* key, Slope& out) override;
  void weight(const char* key, Weight& out) override;
  void word(const char* key, int& out, std::span<const std::string_view> words) override;
  void inner(const char* key, Described out) override;
  void items(const char* key, DescribedList& out, unsigned most) override;

 private:
  [[nodiscard]] const Value* find(const char* key) const;
  void wrong(const char* key) { fail(ErrorCode::kSyntax, key, 0); }
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

class Writer final : public Fields {
 public:
  Writer(Value& object, Allocator& memory) : object_(object), memory_(memory) {}

  [[nodiscard]] bool reads() const override { return false; }
  void fail(ErrorCode, const char*, std::int64_t) override {}
  void text(const char* key, std::string& value, std::size_t) override { add_text(key, value); }
  void flag(const char* key, bool& value) override { add(key, Value(value)); }
  void integer(const char* key, int& value, int, int) override { add(key, Value(value)); }
  void whole(const char* key, std::int64_t& value, std::int64_t, std::int64_t) override { add(key, Value(value)); }
  void number(const char* key, double& value, double, double, double) override { add(key, Value(value)); }
  void length(const char* key, Length& value, const LengthEntry&) override { add(key, Value(value.count)); }
  void angle(const char* key, Angle& value, const AngleEntry&) override { add(key, Value(value.nano_degrees)); }
  void slope(const char* key, Slope& value) override { object(key, value); }
  void weight(const char* key, Weight& value) override { add(key, Value(value.count)); }
  void word(const char* key, int& index, std::span<const std::string_view> words) override {
    add_text(key, words[static_cast<std::size_t>(index)]);
  }
  void inner(const char* key, Described value) override { add(key, made(value)); }
  void items(const char* key, DescribedList& list, unsigned most) override;

 private:
  void add_text(const char* key, std::string_view text);
  [[nodiscard]] Value made(Described value);
  void add(const char* key, Value value) { object_.AddMember(rapidjson::StringRef(key), std::move(value), memory_); }
  Value& object_;
  Allocator& memory_;
};

}  // namespace bentbook::json
