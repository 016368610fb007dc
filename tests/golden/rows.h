#pragma once
/// Rows of the golden test: text that every compiler and target must produce byte for byte.

#include <cstdint>
#include <cstring>
#include <string>

namespace golden {

class Rows {
 public:
  Rows& word(const std::string& text) {
    text_.append(text).append(1, ' ');
    return *this;
  }
  Rows& whole(std::int64_t n) { return word(std::to_string(n)); }
  /// All 64 bits: a decimal print could hide the last one.
  Rows& bits(double x) {
    std::uint64_t image = 0;
    std::memcpy(&image, &x, sizeof image);
    std::string hex(16, '0');
    for (std::size_t i = 16; i-- > 0; image >>= 4) hex[i] = "0123456789abcdef"[image & 15];
    return word(hex);
  }
  void end() { text_.back() = '\n'; }

  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

/// One file of rows: a name and the function that writes them. To add one, write the function in a section_*.cpp here
/// and list it in golden_rows.cpp.
struct RowFile {
  const char* name;
  void (*write)(Rows& rows);
};

void libm_rows(Rows& rows);
void fixed_rows(Rows& rows);
void length_print_rows(Rows& rows);
void length_parse_rows(Rows& rows);
void slope_rows(Rows& rows);
void corner_rows(Rows& rows);
void rafter_rows(Rows& rows);
void saw_rows(Rows& rows);
void triangle_rows(Rows& rows);
void joint_rows(Rows& rows);
void answer_rows(Rows& rows);
void file_rows(Rows& rows);
void frame_rows(Rows& rows);
void shop_rows(Rows& rows);
void paper_rows(Rows& rows);

}  // namespace golden
