#pragma once
/// Plain values as one JSON array, in the order in which describe() names their members (measure/fields.h), without the
/// names: page and Worker are of one build. Lists are led by their count, words go by their number. A double goes as
/// the whole number that its 64 bits are, and comes back bit by bit.

#include <rapidjson/document.h>

#include <string>
#include <string_view>

#include "measure/fields.h"
#include "text/json_writer.h"

namespace bentbook::json {

class FlatWriter final : public Fields {
 public:
  FlatWriter();
  [[nodiscard]] bool reads() const override { return false; }
  void fail(ErrorCode, const char*, std::int64_t) override {}
  void text(const char*, std::string& value, std::size_t) override { writer_.text(value); }
  void flag(const char*, bool& value) override { writer_.flag(value); }
  void integer(const char*, int& value, int, int) override { writer_.count(value); }
  void whole(const char*, std::int64_t& value, std::int64_t, std::int64_t) override { writer_.count(value); }
  void number(const char*, double& value, double, double, double) override;
  void length(const char*, Length& value, const LengthEntry&) override { writer_.count(value.count); }
  void angle(const char*, Angle& value, const AngleEntry&) override { writer_.count(value.nano_degrees); }
  void slope(const char*, Slope& value) override { describe(*this, value); }
  void weight(const char*, Weight& value) override { writer_.count(value.count); }
  void word(const char*, int& index, std::span<const std::string_view>) override { writer_.count(index); }
  void inner(const char*, Described value) override { value.describe(*this, value.value); }
  void items(const char*, DescribedList& list, unsigned) override;
  /// Ends the array.
  [[nodiscard]] std::string bytes();

 private:
  JsonWriter writer_;
};

/// Reads them back. From the first value on that is missing or of a wrong kind or size, all keeps its default.
class FlatReader final : public Fields {
 public:
  /// `where`: of the Error, if there is one.
  FlatReader(std::string_view bytes, const char* where);
  [[nodiscard]] bool reads() const override { return true; }
  void fail(ErrorCode, const char*, std::int64_t) override { failed_ = true; }
  void text(const char*, std::string& out, std::size_t) override;
  void flag(const char*, bool& out) override;
  void integer(const char*, int& out, int low, int high) override;
  void whole(const char*, std::int64_t& out, std::int64_t low, std::int64_t high) override;
  void number(const char*, double& out, double, double, double) override;
  void length(const char*, Length& out, const LengthEntry&) override;
  void angle(const char*, Angle& out, const AngleEntry&) override;
  void slope(const char*, Slope& out) override { describe(*this, out); }
  void weight(const char*, Weight& out) override { out.count = next_whole(0, Weight::kLimit, out.count); }
  void word(const char*, int& index, std::span<const std::string_view> words) override;
  void inner(const char*, Described out) override { out.describe(*this, out.value); }
  void items(const char*, DescribedList& list, unsigned most) override;
  /// kSyntax where anything was wrong or is left over.
  [[nodiscard]] Result<void> end() const;

 private:
  /// nullptr: there is none, or something was wrong before.
  [[nodiscard]] const rapidjson::Value* next();
  [[nodiscard]] std::int64_t next_whole(std::int64_t low, std::int64_t high, std::int64_t usual);
  rapidjson::Document document_;
  const rapidjson::Value* values_ = nullptr;  ///< the array
  unsigned at_ = 0;
  bool failed_ = false;
  const char* where_;
};

}  // namespace bentbook::json
