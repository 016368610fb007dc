#include "paper/pdf.h"

#include <hpdf.h>
#include <hpdf_doc.h>

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <type_traits>
#include <utility>

#include "draw/fill.h"
#include "numeric/libm.h"
#include "paper/letters.h"
#include "paper/line_kind.h"
#include "paper/page_part.h"
#include "text/hex.h"

namespace bentbook::paper {
namespace {

using draw::Point;

constexpr double kPointPerMm = 72 / 25.4;
constexpr HPDF_UINT kStreamPart = 65536;

HPDF_REAL points(double mm) { return static_cast<HPDF_REAL>(mm * kPointPerMm); }

struct CloseDocument {
  void operator()(HPDF_Doc pdf) const { HPDF_Free(pdf); }
};
using OpenDocument = std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, CloseDocument>;

/// What a reader finds for each letter when it searches or copies: itself, since letters are written by their code
/// points. The library's own map is of a form that readers complain of.
bool map_to_unicode(HPDF_Font font) {
  auto* map = static_cast<HPDF_Dict>(HPDF_Dict_GetItem(font, "ToUnicode", HPDF_OCLASS_DICT));
  if (map == nullptr || map->stream == nullptr) return false;
  HPDF_MemStream_FreeData(map->stream);
  std::string out =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo <</Registry (Adobe) /Ordering "
      "(UCS) /Supplement 0>> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> "
      "<FFFF>\nendcodespacerange\n";
  constexpr int kRows = 256, kMostInBlock = 100;  // a range keeps its first byte
  for (int from = 0; from < kRows; from += kMostInBlock) {
    const int to = std::min(from + kMostInBlock, kRows);
    out += std::to_string(to - from) + " beginbfrange\n";
    for (int row = from; row < to; ++row) {
      std::string high;
      put_hex(high, static_cast<std::uint64_t>(row), 2, HexCase::kUpper);
      out += "<" + high + "00> <" + high + "FF> <" + high + "00>\n";
    }
    out += "endbfrange\n";
  }
  out += "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
  return HPDF_Stream_WriteStr(map->stream, out.c_str()) == HPDF_OK;
}

/// The library reads fonts from files alone; this is what it does then with their bytes.
HPDF_Font load_font(HPDF_Doc pdf, std::string_view bytes, const char* tag) {
  HPDF_Stream stream = HPDF_MemStream_New(pdf->mmgr, kStreamPart);
  if (stream == nullptr) return nullptr;
  const auto* data = reinterpret_cast<const HPDF_BYTE*>(bytes.data());
  if (HPDF_Stream_Write(stream, data, static_cast<HPDF_UINT>(bytes.size())) != HPDF_OK) return nullptr;
  HPDF_FontDef font = HPDF_TTFontDef_Load(pdf->mmgr, stream, HPDF_TRUE);  // the stream is its own from here on
  if (font == nullptr) return nullptr;
  if (HPDF_List_Add(pdf->fontdef_list, font) != HPDF_OK) {
    HPDF_FontDef_Free(font);
    return nullptr;
  }
  HPDF_TTFontDef_SetTagName(font, const_cast<char*>(tag));  // NOLINT(cppcoreguidelines-pro-type-const-cast): it reads
  HPDF_Font loaded = HPDF_GetFont(pdf, font->base_font, "UTF-8");
  return loaded != nullptr && map_to_unicode(loaded) ? loaded : nullptr;
}

/// One page as its stream of operators.
class PageWriter {
 public:
  PageWriter(HPDF_Page page, double height, HPDF_Font regular, HPDF_Font bold)
      : page_(page), height_(height), regular_(regular), bold_(bold) {
    HPDF_Page_SetLineJoin(page_, HPDF_MITER_JOIN);
  }

  void polygon(const PagePolygon& polygon) {
    if (polygon.points.size() < 2) return;
    const bool grey = polygon.fill == draw::Fill::kShade;
    if (grey || polygon.fill == draw::Fill::kInk || polygon.fill == draw::Fill::kPaper) {
      fill_with(grey ? kShadeGrey : polygon.fill == draw::Fill::kInk ? 0 : 1);
      outline(polygon.points);
      HPDF_Page_Fill(page_);
    }
    const bool waste = polygon.fill == draw::Fill::kWaste;
    if (waste || polygon.fill == draw::Fill::kSection) hatch(polygon.points, false);
    if (waste) hatch(polygon.points, true);
    if (!polygon.outlined) return;
    pen(polygon.stroke, 0);
    outline(polygon.points);
    HPDF_Page_Stroke(page_);
  }

  void line(const PageLine& line) {
    pen(line.stroke, line.width);
    segment(line.a, line.b);
    HPDF_Page_Stroke(page_);
  }

  /// In parts of at most a quarter, each a cubic that is off the circle by less than 0.03 % of its radius.
  void arc(const PageArc& arc) {
    pen(arc.stroke, 0);
    const double turn = arc.to_deg - arc.from_deg;
    const int parts = std::max(1, static_cast<int>(libm::ceil(libm::fabs(turn) / 90 - 1e-9)));
    const double step = turn / parts * libm::kDegree, reach = 4.0 / 3 * libm::tan(step / 4) * arc.radius;
    for (int i = 0; i <= parts; ++i) {
      const double angle = arc.from_deg * libm::kDegree + i * step;
      const double c = libm::cos(angle), s = libm::sin(angle);
      const Point at{arc.centre.x + arc.radius * c, arc.centre.y - arc.radius * s};
      const Point along{-s * reach, -c * reach};
      if (i == 0)
        HPDF_Page_MoveTo(page_, x(at), y(at));
      else
        curve({from_.x, from_.y}, {at.x - along.x, at.y - along.y}, at);
      from_ = {at.x + along.x, at.y + along.y};
    }
    HPDF_Page_Stroke(page_);
  }

  void code(const PageCode& code) {
    fill_with(0);
    for (int row = 0; row < code.code.size; ++row)
      for (int from = 0; from < code.code.size;) {
        int to = from;
        while (to < code.code.size && code.code.at(to, row)) ++to;
        if (to > from) {
          const Point low{code.at.x + from * code.module, code.at.y + (row + 1) * code.module};
          HPDF_Page_Rectangle(page_, x(low), y(low), points((to - from) * code.module), points(code.module));
        }
        from = to + 1;
      }
    HPDF_Page_Fill(page_);
  }

  void text(const PageText& text) {
    const bool bold = set_bold(text.text, text.bold);
    const std::vector<LetterRun> runs = letter_runs(text.text, text.size, bold);
    double width = 0;
    for (const LetterRun& run : runs) width += run.width;
    const double turn = text.turn_deg * libm::kDegree, c = libm::cos(turn), s = libm::sin(turn);
    const double start = start_of(text.align, width);
    const Point at{text.at.x + c * start, text.at.y - s * start};
    fill_with(0);
    HPDF_Page_BeginText(page_);
    const auto real = [](double v) { return static_cast<HPDF_REAL>(v); };
    HPDF_Page_SetTextMatrix(page_, real(c), real(s), real(-s), real(c), x(at), y(at));
    for (const LetterRun& run : runs) {
      HPDF_Page_SetFontAndSize(page_, bold ? bold_ : regular_, points(run.size));
      if (run.rise != rise_) HPDF_Page_SetTextRise(page_, points(run.rise));
      rise_ = run.rise;
      HPDF_Page_ShowText(page_, std::string(run.text).c_str());
    }
    HPDF_Page_EndText(page_);
  }

 private:
  [[nodiscard]] HPDF_REAL x(Point p) const { return points(p.x); }
  [[nodiscard]] HPDF_REAL y(Point p) const { return points(height_ - p.y); }

  void segment(Point a, Point b) {
    HPDF_Page_MoveTo(page_, x(a), y(a));
    HPDF_Page_LineTo(page_, x(b), y(b));
  }
  void curve(Point a, Point b, Point to) { HPDF_Page_CurveTo(page_, x(a), y(a), x(b), y(b), x(to), y(to)); }
  void outline(const std::vector<Point>& corners) {
    HPDF_Page_MoveTo(page_, x(corners.front()), y(corners.front()));
    for (std::size_t i = 1; i < corners.size(); ++i) HPDF_Page_LineTo(page_, x(corners[i]), y(corners[i]));
    HPDF_Page_ClosePath(page_);
  }
  void hatch(const std::vector<Point>& corners, bool down) {
    const std::vector<draw::Segment> strokes = draw::hatch(corners, kHatchSpacing, down);
    if (strokes.empty()) return;
    pen(draw::Stroke::kThin, 0);
    for (const draw::Segment& stroke : strokes) segment(stroke.a, stroke.b);
    HPDF_Page_Stroke(page_);
  }

  // What is set already is not said again.
  void fill_with(double grey) {
    if (grey_ == grey) return;
    HPDF_Page_SetGrayFill(page_, static_cast<HPDF_REAL>(grey));
    grey_ = grey;
  }
  void pen(draw::Stroke stroke, double width) {
    const LineKind kind = line_kind(stroke);
    if (width <= 0) width = kind.width;
    if (width_ != width) HPDF_Page_SetLineWidth(page_, points(width));
    width_ = width;
    if (dashed_ == kind.dashes) return;
    std::array<HPDF_REAL, 4> dashes{};
    for (std::size_t i = 0; i < dashes.size(); ++i) dashes[i] = points(kind.dashes[i]);
    write_dashes(dashes, kind.dash_count);
    dashed_ = kind.dashes;
  }
  /// The library's own takes whole points alone.
  void write_dashes(const std::array<HPDF_REAL, 4>& dashes, int count) {
    auto* attributes = static_cast<HPDF_PageAttr>(page_->attr);
    HPDF_Stream_WriteStr(attributes->stream, "[");
    for (int i = 0; i < count; ++i) {
      HPDF_Stream_WriteReal(attributes->stream, dashes[static_cast<std::size_t>(i)]);
      HPDF_Stream_WriteStr(attributes->stream, " ");
    }
    HPDF_Stream_WriteStr(attributes->stream, "] 0 d\012");
  }

  HPDF_Page page_;
  double height_;
  HPDF_Font regular_, bold_;
  Point from_;  ///< the control point behind an arc's last part
  double rise_ = 0, width_ = -1, grey_ = -1;
  std::array<double, 4> dashed_{};
};

void write_page(HPDF_Doc pdf, const Document& document, const Page& page, HPDF_Font regular, HPDF_Font bold) {
  HPDF_Page out = HPDF_AddPage(pdf);
  if (out == nullptr) return;
  const PageMeasure measure = measure_of(document.size, page.lying);
  HPDF_Page_SetWidth(out, points(measure.width));
  HPDF_Page_SetHeight(out, points(measure.height));
  PageWriter writer(out, measure.height, regular, bold);
  for (const PagePolygon& polygon : page.polygons) writer.polygon(polygon);
  for (const PageLine& line : page.lines) writer.line(line);
  for (const PageArc& arc : page.arcs) writer.arc(arc);
  for (const PageCode& code : page.codes) writer.code(code);
  for (const PageText& text : page.texts) writer.text(text);
}

std::optional<std::string> saved(HPDF_Doc pdf) {
  if (HPDF_SaveToStream(pdf) != HPDF_OK) return std::nullopt;
  std::string bytes(HPDF_GetStreamSize(pdf), '\0');
  HPDF_ResetStream(pdf);
  auto size = static_cast<HPDF_UINT32>(bytes.size());
  HPDF_ReadFromStream(pdf, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
  if (size != bytes.size()) return std::nullopt;
  return bytes;
}

}  // namespace

Result<std::string> write_pdf(const Document& document, const PdfFonts& fonts) {
  const OpenDocument pdf(HPDF_New(nullptr, nullptr));  // without a handler an error stays with the document
  if (!pdf) return fail(ErrorCode::kTooLarge, "paper");
  HPDF_SetCompressionMode(pdf.get(), HPDF_COMP_ALL);
  HPDF_UseUTFEncodings(pdf.get());
  HPDF_SetCurrentEncoder(pdf.get(), "UTF-8");
  HPDF_Font regular = load_font(pdf.get(), fonts.regular, "BENTAA");
  HPDF_Font bold = regular == nullptr ? nullptr : load_font(pdf.get(), fonts.bold, "BENTAB");
  if (bold == nullptr) return fail(ErrorCode::kSyntax, "font");
  HPDF_SetInfoAttr(pdf.get(), HPDF_INFO_TITLE, document.title.c_str());
  HPDF_SetInfoAttr(pdf.get(), HPDF_INFO_CREATOR, "Bentbook");
  HPDF_Dict_Add(pdf->catalog, "Lang", HPDF_String_New(pdf->mmgr, document.language.c_str(), nullptr));
  for (const Page& page : document.pages) write_page(pdf.get(), document, page, regular, bold);
  std::optional<std::string> bytes = saved(pdf.get());
  if (!bytes || HPDF_GetError(pdf.get()) != HPDF_OK) return fail(ErrorCode::kTooLarge, "paper");
  return std::move(*bytes);
}

}  // namespace bentbook::paper
