#pragma once
/// Inside the command line: JSON text as it grows. Numbers have fixed decimals, so that every target prints the same.

#include <span>
#include <string>
#include <string_view>

#include "words/words.h"

namespace bentbook {

class JsonOut {
 public:
  explicit JsonOut(const Voice& voice) : voice_(voice) { out_ = "{"; }

  void number(std::string_view key, double value, int decimals = 6) { raw(key, print_fixed(value, decimals)); }
  void count(std::string_view key, std::int64_t value) { raw(key, std::to_string(value)); }
  void flag(std::string_view key, bool value) { raw(key, value ? "true" : "false"); }
  void text(std::string_view key, std::string_view value) { raw(key, quoted(value)); }
  void degrees(std::string_view stem, Angle value) { number(std::string(stem) + "_deg", value.deg()); }
  /// stem_in, and its printed twin stem_text.
  void length(std::string_view stem, Length value) {
    number(std::string(stem) + "_in", value.in());
    text(std::string(stem) + "_text", say_length(value, voice_));
  }
  void numbers(std::string_view key, std::span<const double> values, int decimals = 6) {
    std::string list;
    for (const double value : values) list += (list.empty() ? "[" : ",") + print_fixed(value, decimals);
    raw(key, list.empty() ? "[]" : list + "]");
  }
  void texts(std::string_view key, std::span<const std::string> values) {
    std::string list;
    for (const std::string& value : values) list += (list.empty() ? "[" : ",") + quoted(value);
    raw(key, list.empty() ? "[]" : list + "]");
  }
  void open(std::string_view key) { raw(key, "{"), first_ = true; }
  void open_list(std::string_view key) { raw(key, "["), first_ = true; }
  void open_item() { comma(), out_ += "{", first_ = true; }
  void close() { out_ += "}", first_ = false; }
  void close_list() { out_ += "]", first_ = false; }
  [[nodiscard]] std::string finish() const { return out_ + "}\n"; }
  [[nodiscard]] const Voice& voice() const { return voice_; }

 private:
  void comma() {
    if (!first_) out_ += ",";
    first_ = false;
  }
  void raw(std::string_view key, std::string_view value) {
    comma();
    out_ += quoted(key) + ":";
    out_ += value;
  }
  static std::string quoted(std::string_view s) {
    std::string out = "\"";
    for (const char c : s) {
      if (c == '"' || c == '\\') out += '\\';
      out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
    return out + "\"";
  }
  Voice voice_;
  std::string out_;
  bool first_ = true;
};

}  // namespace bentbook
