#include "paper/dxf.h"

#include <utility>

#include "measure/print.h"
#include "numeric/libm.h"
#include "paper/letters.h"
#include "text/hex.h"
#include "text/utf8.h"

namespace bentbook::paper {
namespace {

using draw::Point;

/// Colours by number, one a layer, of the first seven that every program has; 7 is black on paper.
constexpr int kColours[] = {7, 5, 3, 4, 6, 1, 2};

class Dxf {
 public:
  Dxf(Point zero, DxfUnit unit) : zero_(zero), per_mm_(unit == DxfUnit::kMm ? 1 : 1 / 25.4) {}

  void pair(int code, std::string_view value) {
    out_ += std::to_string(code) + "\n";
    out_ += value;
    out_ += "\n";
  }
  void pair(int code, double value) { pair(code, without_trailing_zeros(print_fixed(value, 8))); }
  void count(int code, std::size_t value) { pair(code, std::to_string(value)); }
  /// Group codes 10, 20, 30 (or 11, 21, 31) of a point.
  void point(int code, Point at) {
    pair(code, (at.x - zero_.x) * per_mm_);
    pair(code + 10, (zero_.y - at.y) * per_mm_);
    pair(code + 20, 0.0);
  }
  void entity(std::string_view kind, std::string_view layer) {
    pair(0, kind);
    pair(8, layer_name(layer));
  }
  void length(int code, double mm) { pair(code, mm * per_mm_); }

  void head(std::span<const Layer> layers, std::string_view note) {
    pair(999, ascii(note));
    begin("HEADER");
    pair(9, "$ACADVER");
    pair(1, "AC1009");
    end();
    begin("TABLES");
    table("LTYPE", 2);
    line_type("CONTINUOUS", {});
    constexpr double kDashes[] = {4, -1.5};
    line_type("DASHED", kDashes);
    pair(0, "ENDTAB");
    table("LAYER", layers.size() + 1);
    layer("0", 7, "CONTINUOUS");
    std::size_t i = 0;
    for (const Layer& each : layers) layer(each.name, kColours[i++ % std::size(kColours)], "CONTINUOUS");
    pair(0, "ENDTAB");
    table("STYLE", 1);
    style();
    pair(0, "ENDTAB");
    end();
  }

  void entities(std::span<const Layer> layers) {
    begin("ENTITIES");
    for (const Layer& layer : layers) {
      for (const PagePolygon& polygon : layer.page.polygons) add(polygon, layer.name);
      for (const PageLine& line : layer.page.lines) add(line, layer.name);
      for (const PageArc& arc : layer.page.arcs) add(arc, layer.name);
      for (const PageText& text : layer.page.texts) add(text, layer.name);
    }
    end();
    pair(0, "EOF");
  }

  [[nodiscard]] std::string&& file() { return std::move(out_); }

 private:
  void begin(std::string_view section) {
    pair(0, "SECTION");
    pair(2, section);
  }
  void end() { pair(0, "ENDSEC"); }
  void table(std::string_view name, std::size_t entries) {
    pair(0, "TABLE");
    pair(2, name);
    count(70, entries);
  }
  void line_type(std::string_view name, std::span<const double> dashes) {
    pair(0, "LTYPE");
    pair(2, name);
    pair(70, "0");
    pair(3, "");
    pair(72, "65");
    count(73, dashes.size());
    double all = 0;
    for (const double dash : dashes) all += libm::fabs(dash);
    length(40, all);
    for (const double dash : dashes) length(49, dash);
  }
  void layer(std::string_view name, int colour, std::string_view line_type) {
    pair(0, "LAYER");
    pair(2, layer_name(name));
    pair(70, "0");
    pair(62, std::to_string(colour));
    pair(6, line_type);
  }
  void style() {
    pair(0, "STYLE");
    pair(2, "STANDARD");
    pair(70, "0");
    pair(40, 0.0);
    pair(41, 1.0);
    pair(50, 0.0);
    pair(71, "0");
    pair(42, 1.0);
    pair(3, "txt");
    pair(4, "");
  }

  void add(const PagePolygon& polygon, std::string_view layer) {
    const bool hatched = polygon.fill == draw::Fill::kSection || polygon.fill == draw::Fill::kWaste;
    if (polygon.points.size() < 3 || (hatched && !polygon.outlined)) return;
    entity("POLYLINE", layer);
    pair(66, "1");
    pair(10, 0.0);
    pair(20, 0.0);
    pair(30, 0.0);
    pair(70, "1");  // closed
    if (polygon.stroke == draw::Stroke::kHidden) pair(6, "DASHED");
    for (const Point& p : polygon.points) {
      entity("VERTEX", layer);
      point(10, p);
    }
    entity("SEQEND", layer);
  }

  void add(const PageLine& line, std::string_view layer) {
    entity("LINE", layer);
    if (line.stroke == draw::Stroke::kHidden || line.stroke == draw::Stroke::kCentre) pair(6, "DASHED");
    point(10, line.a);
    point(11, line.b);
  }

  void add(const PageArc& arc, std::string_view layer) {
    const bool whole = arc.to_deg - arc.from_deg >= 360 - 1e-9;
    entity(whole ? "CIRCLE" : "ARC", layer);
    point(10, arc.centre);
    length(40, arc.radius);
    if (whole) return;
    const auto once_round = [](double deg) { return deg - 360 * libm::floor(deg / 360); };
    pair(50, once_round(arc.from_deg));
    pair(51, once_round(arc.to_deg));
  }

  /// The height of a text is that of its capitals.
  void add(const PageText& text, std::string_view layer) {
    entity("TEXT", layer);
    point(10, text.at);
    length(40, text.size * kCapital);
    pair(1, ascii(text.text));
    if (text.turn_deg != 0) pair(50, text.turn_deg);
    if (text.align == Align::kLeft) return;
    pair(72, text.align == Align::kMiddle ? "1" : "2");
    point(11, text.at);
  }

  /// Names of this release have capitals alone.
  static std::string layer_name(std::string_view name) {
    std::string out(name);
    for (char& c : out)
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return out;
  }

  /// In this release other letters than those of ASCII are \U+XXXX, four figures and no more: what lies beyond them is
  /// a question mark. Line ends would end the value.
  static std::string ascii(std::string_view text) {
    std::string out;
    for (std::size_t i = 0, end = 0; i < text.size(); i = end) {
      end = end_of_character(text, i);
      const std::uint32_t code = code_point(text.substr(i, end - i));
      if (code < 0x80) {
        out += code < 0x20 ? ' ' : text[i];
        continue;
      }
      if (code > 0xFFFF) {
        out += '?';
        continue;
      }
      out += "\\U+";
      put_hex(out, code, 4, HexCase::kUpper);
    }
    return out;
  }

  Point zero_;
  double per_mm_;
  std::string out_;
};

}  // namespace

std::string write_dxf(std::span<const Layer> layers, Point zero, DxfUnit unit, std::string_view note) {
  Dxf dxf(zero, unit);
  dxf.head(layers, note);
  dxf.entities(layers);
  return dxf.file();
}

}  // namespace bentbook::paper
