#pragma once
/// JSON text, written from front to back. Source: SOURCES.md, "JSON". Numbers have fixed decimals, so that every target
/// writes the same bytes. Inside an object each value follows its key.

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace bentbook {

class JsonWriter {
 public:
  JsonWriter();
  ~JsonWriter();

  void open_object();
  void close_object();
  void open_list();
  void close_list();
  void key(std::string_view name);
  /// UTF-8; what JSON cannot hold as it is gets escaped.
  void text(std::string_view value);
  /// As print_fixed has it; null where the value is no number.
  void number(double value, int decimals);
  void count(std::int64_t value);
  void flag(bool value);
  /// A value that is JSON text already.
  void json(std::string_view value);

  /// What has been written; whole once the outermost object or list is closed.
  [[nodiscard]] std::string_view bytes() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace bentbook
