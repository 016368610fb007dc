#include "tasks/document_fields.h"

#include "tasks/flat.h"
#include "tasks/frame_fields.h"

namespace bentbook {
namespace paper {

constexpr unsigned kMostOnPage = 1'000'000, kMostPages = 100'000, kMostPoints = 100'000;
constexpr std::size_t kLongestLine = 10'000;
constexpr int kMostModules = 177;    // along a side of the largest code
constexpr double kFarthest = 100e3;  // mm, degrees: farther than any page reaches; writers add and turn such numbers

static void page_number(Fields& fields, const char* key, double& value) {
  fields.number(key, value);
  if (value >= -kFarthest && value <= kFarthest) return;
  fields.fail(ErrorCode::kSyntax, key, 0);
  value = 0;
}

static void describe(Fields& fields, PageText& text) {
  page_number(fields, "x", text.at.x);
  page_number(fields, "y", text.at.y);
  page_number(fields, "size", text.size);
  fields.flag("bold", text.bold);
  describe_enum(fields, "align", text.align, Align::kRight);
  page_number(fields, "turn_deg", text.turn_deg);
  fields.text("text", text.text, kLongestLine);
}

static void describe(Fields& fields, PageLine& line) {
  page_number(fields, "ax", line.a.x);
  page_number(fields, "ay", line.a.y);
  page_number(fields, "bx", line.b.x);
  page_number(fields, "by", line.b.y);
  describe_enum(fields, "stroke", line.stroke, draw::Stroke::kScale);
  page_number(fields, "width", line.width);
}

static void describe(Fields& fields, PageArc& arc) {
  page_number(fields, "x", arc.centre.x);
  page_number(fields, "y", arc.centre.y);
  page_number(fields, "radius", arc.radius);
  page_number(fields, "from_deg", arc.from_deg);
  page_number(fields, "to_deg", arc.to_deg);
  describe_enum(fields, "stroke", arc.stroke, draw::Stroke::kScale);
}

static void describe(Fields& fields, PagePolygon& polygon) {
  int count = static_cast<int>(polygon.points.size());
  fields.integer("count", count, 0, static_cast<int>(kMostPoints));
  polygon.points.resize(static_cast<std::size_t>(count));
  for (draw::Point& p : polygon.points) {
    page_number(fields, "x", p.x);
    page_number(fields, "y", p.y);
  }
  describe_enum(fields, "fill", polygon.fill, draw::Fill::kInk);
  fields.flag("outlined", polygon.outlined);
  describe_enum(fields, "stroke", polygon.stroke, draw::Stroke::kScale);
}

/// Its modules as a text of # and blanks.
static void describe(Fields& fields, PageCode& code) {
  page_number(fields, "x", code.at.x);
  page_number(fields, "y", code.at.y);
  page_number(fields, "module", code.module);
  fields.integer("size", code.code.size, 0, kMostModules);
  std::string modules;
  for (const bool dark : code.code.dark) modules += dark ? '#' : ' ';
  fields.text("modules", modules, static_cast<std::size_t>(kMostModules) * kMostModules);
  const auto all = static_cast<std::size_t>(code.code.size) * static_cast<std::size_t>(code.code.size);
  if (modules.size() != all) fields.fail(ErrorCode::kSyntax, "modules", 0);
  modules.resize(all, ' ');
  code.code.dark.assign(all, false);
  for (std::size_t i = 0; i < all; ++i) code.code.dark[i] = modules[i] == '#';
}

static void describe(Fields& fields, Page& page) {
  fields.flag("lying", page.lying);
  fields.list("polygons", page.polygons, kMostOnPage);
  fields.list("lines", page.lines, kMostOnPage);
  fields.list("arcs", page.arcs, kMostOnPage);
  fields.list("codes", page.codes, kMostOnPage);
  fields.list("texts", page.texts, kMostOnPage);
}

void describe(Fields& fields, Document& document) {
  describe_enum(fields, "size", document.size, PageSize::kLetter);
  fields.text("title", document.title, kLongestLine);
  fields.text("language", document.language);
  fields.list("pages", document.pages, kMostPages);
}

}  // namespace paper

std::string write_document(const paper::Document& document) {
  json::FlatWriter writer;
  paper::Document own = document;  // described both ways, a writer changes nothing
  describe(writer, own);
  return writer.bytes();
}

Result<paper::Document> read_document(std::string_view bytes) {
  json::FlatReader reader(bytes, "document");
  paper::Document document;
  describe(reader, document);
  if (auto whole = reader.end(); !whole) return tl::unexpected(whole.error());
  return document;
}

}  // namespace bentbook
