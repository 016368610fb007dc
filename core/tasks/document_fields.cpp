#include "tasks/document_fields.h"

#include "tasks/flat.h"
#include "tasks/frame_fields.h"

namespace bentbook {
namespace paper {

constexpr unsigned kMostOnPage = 1'000'000, kMostPages = 100'000, kMostPoints = 100'000;
constexpr std::size_t kLongestLine = 10'000;
constexpr int kMostModules = 177;  // along a side of the largest code

static void describe(Fields& fields, PageText& text) {
  fields.number("x", text.at.x);
  fields.number("y", text.at.y);
  fields.number("size", text.size);
  fields.flag("bold", text.bold);
  describe_enum(fields, "align", text.align, Align::kRight);
  fields.number("turn_deg", text.turn_deg);
  fields.text("text", text.text, kLongestLine);
}

static void describe(Fields& fields, PageLine& line) {
  fields.number("ax", line.a.x);
  fields.number("ay", line.a.y);
  fields.number("bx", line.b.x);
  fields.number("by", line.b.y);
  describe_enum(fields, "stroke", line.stroke, draw::Stroke::kScale);
  fields.number("width", line.width);
}

static void describe(Fields& fields, PageArc& arc) {
  fields.number("x", arc.centre.x);
  fields.number("y", arc.centre.y);
  fields.number("radius", arc.radius);
  fields.number("from_deg", arc.from_deg);
  fields.number("to_deg", arc.to_deg);
  describe_enum(fields, "stroke", arc.stroke, draw::Stroke::kScale);
}

static void describe(Fields& fields, PagePolygon& polygon) {
  int count = static_cast<int>(polygon.points.size());
  fields.integer("count", count, 0, static_cast<int>(kMostPoints));
  polygon.points.resize(static_cast<std::size_t>(count));
  for (draw::Point& p : polygon.points) {
    fields.number("x", p.x);
    fields.number("y", p.y);
  }
  describe_enum(fields, "fill", polygon.fill, draw::Fill::kInk);
  fields.flag("outlined", polygon.outlined);
  describe_enum(fields, "stroke", polygon.stroke, draw::Stroke::kScale);
}

/// Its modules as a text of # and blanks.
static void describe(Fields& fields, PageCode& code) {
  fields.number("x", code.at.x);
  fields.number("y", code.at.y);
  fields.number("module", code.module);
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
