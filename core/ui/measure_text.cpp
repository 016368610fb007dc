#include "ui/measure_text.h"

#include <algorithm>
#include <cfloat>

#include "numeric/libm.h"
#include "text/utf8.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kFractionSlash = "\xE2\x81\x84", kPrime = "\xE2\x80\xB2", kDoublePrime = "\xE2\x80\xB3";
constexpr std::string_view kDegree = "\xC2\xB0", kNoBreak = "\xC2\xA0", kThin = "\xE2\x80\x89";
constexpr std::string_view kEllipsis = "\xE2\x80\xA6";
constexpr std::string_view kUnits[] = {"mm/m", "mm", "cm", "m", "in", "ft", "%", "kg", "lb"};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c & 0x80); }
bool starts(std::string_view text, std::size_t at, std::string_view what) {
  return text.substr(at, what.size()) == what;
}
bool ends(std::string_view text, std::string_view what) {
  return text.size() >= what.size() && text.substr(text.size() - what.size()) == what;
}

std::size_t skip_digits(std::string_view text, std::size_t at) {
  while (at < text.size() && is_digit(text[at])) ++at;
  return at;
}

/// Byte after the fraction n⁄d that starts at `at`; `at` itself if none does.
std::size_t fraction_end(std::string_view text, std::size_t at) {
  const std::size_t slash = skip_digits(text, at);
  if (slash == at || !starts(text, slash, kFractionSlash)) return at;
  const std::size_t low = slash + kFractionSlash.size(), end = skip_digits(text, low);
  return end == low ? at : end;
}

/// The private code points of cmake/make_font.py: U+E000 + digit raised, U+E010 + digit lowered.
void put_small(std::string& out, std::string_view digits, char base) {
  for (const char d : digits) {
    out += "\xEE\x80";
    out += static_cast<char>(base + (d - '0'));
  }
}

bool unit_at(std::string_view text, std::size_t at) {
  for (const std::string_view unit : kUnits)
    if (starts(text, at, unit)) {
      const std::size_t after = at + unit.size();
      return after >= text.size() || !is_letter(text[after]);
    }
  return false;
}

/// A blank at `at` joins two parts of one measure: after a figure or a mark, before a figure or a unit.
bool joins(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  const bool figure = !before.empty() && is_digit(before.back());
  const bool mark = ends(before, kPrime) || ends(before, kDoublePrime) || ends(before, kDegree);
  if (!figure && !mark) return false;
  const std::size_t next = at + 1;
  if (next >= text.size()) return false;
  if (figure) return fraction_end(text, next) != next || unit_at(text, next);
  return is_digit(text[next]);
}

}  // namespace

std::string set_text(std::string_view text) {
  std::string out;
  out.reserve(text.size() + 16);
  for (std::size_t at = 0; at < text.size();) {
    const bool new_number = is_digit(text[at]) && (at == 0 || !is_digit(text[at - 1]));
    const std::size_t end = new_number ? fraction_end(text, at) : at;
    if (end != at) {
      const std::size_t slash = skip_digits(text, at), low = slash + kFractionSlash.size();
      put_small(out, text.substr(at, slash - at), '\x80');
      out += kFractionSlash;
      put_small(out, text.substr(low, end - low), '\x90');
      at = end;
    } else if (text[at] == ' ' && joins(text, at)) {
      out += fraction_end(text, at + 1) != at + 1 ? kThin : kNoBreak;
      ++at;
    } else {
      out += text[at++];
    }
  }
  return out;
}

bool has_glyphs(ImFont& font, std::string_view text) {
  const std::string s = set_text(text);
  for (std::size_t i = 0, end = 0; i < s.size(); i = end) {
    end = end_of_character(s, i);
    const auto code = static_cast<ImWchar>(code_point(std::string_view(s).substr(i, end - i)));
    if (code >= ' ' && font.FindGlyphNoFallback(code) == nullptr) return false;
  }
  return true;
}

ImVec2 text_size(ImFont& font, std::string_view text) {
  const std::string s = set_text(text);
  return font.CalcTextSizeA(font.FontSize, FLT_MAX, 0, s.data(), s.data() + s.size());
}

void draw_text(ImDrawList& list, ImFont& font, ImVec2 at, ImU32 colour, std::string_view text, float share) {
  const std::string s = set_text(text);
  // A whole device pixel, or every glyph is a blur.
  const float density = ImGui::GetIO().DisplayFramebufferScale.x > 0 ? ImGui::GetIO().DisplayFramebufferScale.x : 1;
  const auto snap = [&](float v) { return static_cast<float>(libm::floor(v * density + 0.5)) / density; };
  list.AddText(&font, font.FontSize * share, {snap(at.x), snap(at.y)}, colour, s.data(), s.data() + s.size());
}

std::vector<std::string> wrap_text(ImFont& font, std::string_view text, float width) {
  std::vector<std::string> lines;
  const std::string s = set_text(text);
  std::string line;
  const auto end_line = [&] {
    lines.push_back(line);
    line.clear();
  };
  for (std::size_t at = 0; at <= s.size();) {
    const std::size_t end = std::min(s.find_first_of(" \n", at), s.size());
    const std::string word = s.substr(at, end - at);
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && text_size(font, longer).x > width) {
      end_line();
      line = word;
    } else {
      line = longer;
    }
    if (end < s.size() && s[end] == '\n') end_line();
    at = end + 1;
  }
  if (!line.empty() || lines.empty()) end_line();
  return lines;
}

float draw_wrapped(ImDrawList& list, ImFont& font, ImVec2 at, ImU32 colour, std::string_view text, float width) {
  const std::vector<std::string> lines = wrap_text(font, text, width);
  for (std::size_t i = 0; i < lines.size(); ++i)
    draw_text(list, font, {at.x, at.y + static_cast<float>(i) * font.FontSize}, colour, lines[i]);
  return static_cast<float>(lines.size()) * font.FontSize;
}

std::string fit_text(ImFont& font, std::string_view text, float width) {
  std::string s = set_text(text);
  if (text_size(font, s).x <= width) return s;
  while (!s.empty()) {
    drop_last_character(s);
    std::string cut = s + std::string(kEllipsis);
    if (text_size(font, cut).x <= width) return cut;
  }
  return std::string(kEllipsis);
}

}  // namespace bentbook::screens
