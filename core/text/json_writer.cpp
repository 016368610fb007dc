#include "text/json_writer.h"

#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include "text/print_fixed.h"

namespace bentbook {

struct JsonWriter::Parts {
  rapidjson::StringBuffer bytes;
  rapidjson::Writer<rapidjson::StringBuffer> writer{bytes};
};

namespace {

rapidjson::SizeType size_of(std::string_view s) { return static_cast<rapidjson::SizeType>(s.size()); }
/// The writer wants an address, even of no characters.
const char* start_of(std::string_view s) { return s.empty() ? "" : s.data(); }

}  // namespace

JsonWriter::JsonWriter() : parts_(std::make_unique<Parts>()) {}
JsonWriter::~JsonWriter() = default;

void JsonWriter::open_object() { parts_->writer.StartObject(); }
void JsonWriter::close_object() { parts_->writer.EndObject(); }
void JsonWriter::open_list() { parts_->writer.StartArray(); }
void JsonWriter::close_list() { parts_->writer.EndArray(); }
void JsonWriter::key(std::string_view name) { parts_->writer.Key(start_of(name), size_of(name)); }
void JsonWriter::text(std::string_view value) { parts_->writer.String(start_of(value), size_of(value)); }
void JsonWriter::count(std::int64_t value) { parts_->writer.Int64(value); }
void JsonWriter::flag(bool value) { parts_->writer.Bool(value); }

void JsonWriter::number(double value, int decimals) {
  const std::string digits = print_fixed(value, decimals);
  parts_->writer.RawValue(digits.data(), digits.size(), rapidjson::kNumberType);
}

void JsonWriter::json(std::string_view value) {
  parts_->writer.RawValue(value.data(), value.size(), rapidjson::kObjectType);
}

std::string_view JsonWriter::bytes() const { return {parts_->bytes.GetString(), parts_->bytes.GetSize()}; }

}  // namespace bentbook
