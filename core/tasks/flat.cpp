#include "tasks/flat.h"

#include <algorithm>
#include <cstring>
#include <limits>

#include "book/json_text.h"

namespace bentbook::json {
namespace {
constexpr const char* kValues = "values";
}  // namespace

FlatWriter::FlatWriter() {
  writer_.open_object();
  writer_.key(kValues);
  writer_.open_list();
}

std::string FlatWriter::bytes() {
  writer_.close_list();
  writer_.close_object();
  return std::string(writer_.bytes());
}

void FlatWriter::number(const char*, double& value, double, double, double) {
  std::int64_t bits = 0;
  std::memcpy(&bits, &value, sizeof bits);
  writer_.count(bits);
}

void FlatWriter::items(const char*, DescribedList& list, unsigned) {
  writer_.count(static_cast<std::int64_t>(list.size()));
  for (std::size_t i = 0; i < list.size(); ++i) inner("", list.at(i));
}

FlatReader::FlatReader(std::string_view bytes, const char* where) : where_(where) {
  if (parse_json_object(document_, bytes, where)) values_ = json_member(document_, kValues);
  failed_ = values_ == nullptr || !values_->IsArray();
}

const rapidjson::Value* FlatReader::next() {
  failed_ = failed_ || at_ >= values_->Size();
  return failed_ ? nullptr : &(*values_)[at_++];
}

std::int64_t FlatReader::next_whole(std::int64_t low, std::int64_t high, std::int64_t usual) {
  const rapidjson::Value* v = next();
  if (v == nullptr) return usual;
  failed_ = !v->IsInt64() || v->GetInt64() < low || v->GetInt64() > high;
  return failed_ ? usual : v->GetInt64();
}

void FlatReader::text(const char*, std::string& out, std::size_t) {
  const rapidjson::Value* v = next();
  if (v == nullptr) return;
  failed_ = !v->IsString();
  if (!failed_) out.assign(v->GetString(), v->GetStringLength());
}

void FlatReader::flag(const char*, bool& out) {
  const rapidjson::Value* v = next();
  if (v == nullptr) return;
  failed_ = !v->IsBool();
  if (!failed_) out = v->GetBool();
}

void FlatReader::integer(const char*, int& out, int low, int high) {
  out = static_cast<int>(next_whole(low, high, out));
}

void FlatReader::whole(const char*, std::int64_t& out, std::int64_t low, std::int64_t high) {
  out = next_whole(low, high, out);
}

void FlatReader::number(const char*, double& out, double, double, double) {
  using Whole = std::numeric_limits<std::int64_t>;
  constexpr std::int64_t kExponent = 0x7ff0'0000'0000'0000;  // all set: infinite, or no number
  const std::int64_t bits = next_whole(Whole::min(), Whole::max(), 0);
  failed_ = failed_ || (bits & kExponent) == kExponent;
  if (!failed_) std::memcpy(&out, &bits, sizeof out);
}

void FlatReader::length(const char*, Length& out, const LengthEntry&) {
  out = {next_whole(-Length::kLimit, Length::kLimit, out.count)};
}

void FlatReader::angle(const char*, Angle& out, const AngleEntry&) {
  constexpr std::int64_t kMost = 360 * Angle::kPerDegree;
  out = {next_whole(-kMost, kMost, out.nano_degrees)};
}

void FlatReader::word(const char* key, int& index, std::span<const std::string_view> words) {
  integer(key, index, 0, static_cast<int>(words.size()) - 1);
}

void FlatReader::items(const char*, DescribedList& list, unsigned most) {
  // Each thing of a list takes one value at least: no count asks for more room than there are values.
  const std::int64_t left = failed_ ? 0 : static_cast<std::int64_t>(values_->Size()) - at_ - 1;
  const std::int64_t count = next_whole(0, std::min<std::int64_t>(most, left), 0);
  list.resize(static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < list.size() && !failed_; ++i) inner("", list.at(i));
}

Result<void> FlatReader::end() const {
  if (failed_ || at_ != values_->Size()) return bentbook::fail(ErrorCode::kSyntax, where_);
  return {};
}

}  // namespace bentbook::json
