#include "book/book.h"
#include "book/describe_plan.h"
#include "book/describe_raising.h"

namespace bentbook {
namespace {

constexpr const char* kFile = "book";

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, NamedJoint& j) {
  io.text("name", j.name);
  io.object("joint", j.type);
}

template <class Io>
static void describe(Io& io, TimberNote& n) {
  io.text("mark", n.mark);
  io.text("text", n.text, kLongestNote);
}

template <class Io>
static void describe(Io& io, LengthStyle& s) {
  describe_lengths(io, s);
}

template <class Io>
static void describe(Io& io, Book& b) {
  if (Io::kReads || !b.identity.empty()) io.text("identity", b.identity, 64);
  io.text("title", b.title);
  io.text("notes", b.notes, kLongestNote);
  io.object("lengths", b.lengths);
  io.text("saw", b.saw);
  io.list("saws", b.saws, 500);
  io.list("species", b.species, 500);
  io.list("joints", b.joints, 500);
  io.flag("framed", b.framed);
  io.object("frame", b.frame);
  io.object("rafter", b.rafter);
  io.list("timber_notes", b.timber_notes, 100'000);
  // A raising taken back to nothing is written where an older one is kept: it would come back else.
  const bool kept = b.kept.find("\"raising\"") != std::string::npos;
  if (Io::kReads || kept || !(b.raising == RaisingPlan{})) io.object("raising", b.raising);
}

std::string write_book(const Book& book) {
  json::Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(kFile), document.GetAllocator());
  document.AddMember("version", kBookVersion, document.GetAllocator());
  json::Writer writer(document, document.GetAllocator());
  Book copy = book;
  describe(writer, copy);
  json::keep_unknown(document, book.kept);
  return json_text(document);
}

Result<Book> read_book(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
  if (auto ok = json::check_head(document, kFile, kBookVersion); !ok) return tl::unexpected(ok.error());
  Book book;
  Error error;
  std::string spot;
  json::Reader reader(document, error, &spot);
  describe(reader, book);
  if (!error.where.empty()) return fail(error.code, spot, error.at, error.limit);
  book.kept = bytes;
  return book;
}

}  // namespace bentbook
