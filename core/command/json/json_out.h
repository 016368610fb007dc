#pragma once
/// Inside the command line: an answer as a JSON object, a key and its value at a time.

#include <span>
#include <string>
#include <string_view>

#include "text/json_writer.h"
#include "words/words.h"

namespace bentbook {

class JsonOut {
 public:
  explicit JsonOut(const Voice& voice) : voice_(voice) { json_.open_object(); }

  void number(std::string_view key, double value, int decimals = 6) { json_.key(key), json_.number(value, decimals); }
  void count(std::string_view key, std::int64_t value) { json_.key(key), json_.count(value); }
  void flag(std::string_view key, bool value) { json_.key(key), json_.flag(value); }
  void text(std::string_view key, std::string_view value) { json_.key(key), line(value); }
  void degrees(std::string_view stem, Angle value) { number(std::string(stem) + "_deg", value.deg()); }
  /// stem_in, and its printed twin stem_text.
  void length(std::string_view stem, Length value) {
    number(std::string(stem) + "_in", value.in());
    text(std::string(stem) + "_text", say_length(value, voice_));
  }
  void numbers(std::string_view key, std::span<const double> values, int decimals = 6) {
    open_list(key);
    for (const double value : values) json_.number(value, decimals);
    close_list();
  }
  void texts(std::string_view key, std::span<const std::string> values) {
    open_list(key);
    for (const std::string& value : values) line(value);
    close_list();
  }
  void open(std::string_view key) { json_.key(key), json_.open_object(); }
  void open_list(std::string_view key) { json_.key(key), json_.open_list(); }
  void open_item() { json_.open_object(); }
  void close() { json_.close_object(); }
  void close_list() { json_.close_list(); }
  [[nodiscard]] std::string finish() {
    json_.close_object();
    return std::string(json_.bytes()) + "\n";
  }
  [[nodiscard]] const Voice& voice() const { return voice_; }

 private:
  /// Texts of more than a line are one line to a program: blanks stand for their line ends.
  void line(std::string_view value) {
    std::string out(value);
    for (char& c : out)
      if (static_cast<unsigned char>(c) < 0x20) c = ' ';
    json_.text(out);
  }

  Voice voice_;
  JsonWriter json_;
};

}  // namespace bentbook
