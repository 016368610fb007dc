#include "tasks/paper_fields.h"

#include <utility>

#include "tasks/frame_fields.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr unsigned kMostOnPage = 200'000;
constexpr int kSizeDigits = 8;

/// Each byte as two digits.
std::string as_digits(std::string_view bytes) {
  std::string digits;
  digits.reserve(bytes.size() * 2);
  for (const char byte : bytes) put_hex(digits, static_cast<unsigned char>(byte), 2);
  return digits;
}
/// Nothing: they are no digits.
std::optional<std::string> from_digits(std::string_view digits) {
  std::string bytes;
  bytes.reserve(digits.size() / 2);
  for (std::size_t i = 0; i + 1 < digits.size(); i += 2) {
    const auto byte = read_hex(digits.substr(i, 2), 2);
    if (!byte) return std::nullopt;
    bytes += static_cast<char>(*byte);
  }
  if (digits.size() % 2 != 0) return std::nullopt;
  return bytes;
}

}  // namespace

namespace draw {

static void describe(Fields& fields, Point& p) {
  fields.number("x", p.x);
  fields.number("y", p.y);
}

}  // namespace draw

namespace paper {

static void describe(Fields& fields, PageText& t) {
  fields.object("at", t.at);
  fields.number("size", t.size);
  fields.flag("bold", t.bold);
  describe_enum(fields, "align", t.align, Align::kRight);
  fields.number("turn_deg", t.turn_deg);
  fields.text("text", t.text);
}

static void describe(Fields& fields, PageLine& l) {
  fields.object("a", l.a);
  fields.object("b", l.b);
  describe_enum(fields, "stroke", l.stroke, draw::Stroke::kScale);
  fields.number("width", l.width);
}

static void describe(Fields& fields, PageArc& a) {
  fields.object("centre", a.centre);
  fields.number("radius", a.radius);
  fields.number("from_deg", a.from_deg);
  fields.number("to_deg", a.to_deg);
  describe_enum(fields, "stroke", a.stroke, draw::Stroke::kScale);
}

static void describe(Fields& fields, PagePolygon& p) {
  fields.list("points", p.points, kMostOnPage);
  describe_enum(fields, "fill", p.fill, draw::Fill::kInk);
  fields.flag("outlined", p.outlined);
  describe_enum(fields, "stroke", p.stroke, draw::Stroke::kScale);
}

static void describe(Fields& fields, PageCode& c) {
  fields.object("at", c.at);
  fields.number("module", c.module);
  fields.integer("modules", c.code.size, 0, 177);
  std::string dark;
  for (const bool module : c.code.dark) dark += module ? '1' : '0';
  fields.text("dark", dark);
  if (!fields.reads()) return;
  // One that is not square would be read past its end.
  if (dark.size() != static_cast<std::size_t>(c.code.size) * static_cast<std::size_t>(c.code.size))
    return fields.fail(ErrorCode::kSyntax, "dark");
  c.code.dark.assign(dark.size(), false);
  for (std::size_t i = 0; i < dark.size(); ++i) c.code.dark[i] = dark[i] == '1';
}

static void describe(Fields& fields, Page& p) {
  fields.flag("lying", p.lying);
  fields.list("polygons", p.polygons, kMostOnPage);
  fields.list("lines", p.lines, kMostOnPage);
  fields.list("arcs", p.arcs, kMostOnPage);
  fields.list("codes", p.codes, kMostOnPage);
  fields.list("texts", p.texts, kMostOnPage);
}

void describe(Fields& fields, Document& d) {
  describe_enum(fields, "size", d.size, PageSize::kLetter);
  fields.text("title", d.title);
  fields.text("language", d.language);
  fields.list("pages", d.pages, 10'000);
}

}  // namespace paper

void describe(Fields& fields, PaperRequest& r) {
  if (!fields.reads()) return fields.inner("document", described_as_is(*r.document));
  auto document = std::make_shared<paper::Document>();
  fields.object("document", *document);
  r.document = std::move(document);
}

void describe(Fields& fields, PaperFile& f) {
  std::string digits = fields.reads() ? std::string{} : as_digits(f.pdf);
  fields.text("pdf", digits);
  if (!fields.reads()) return;
  auto bytes = from_digits(digits);
  if (!bytes) return fields.fail(ErrorCode::kSyntax, "pdf");
  f.pdf = std::move(*bytes);
}

std::string write_fonts(std::string_view regular, std::string_view bold) {
  std::string bytes;
  put_hex(bytes, regular.size(), kSizeDigits);
  return bytes.append(regular).append(bold);
}

std::optional<FontBytes> read_fonts(std::string_view bytes) {
  if (bytes.size() < kSizeDigits) return std::nullopt;
  const auto regular = read_hex(bytes.substr(0, kSizeDigits), kSizeDigits);
  bytes.remove_prefix(kSizeDigits);
  if (!regular || *regular > bytes.size()) return std::nullopt;
  return FontBytes{bytes.substr(0, static_cast<std::size_t>(*regular)),
                   bytes.substr(static_cast<std::size_t>(*regular))};
}

}  // namespace bentbook
