#include "book/book_file.h"

#include <utility>

#include "book/book.h"
#include "book/json_io.h"
#include "frame/joints/joint_table.h"
#include "frame/plan_fields.h"
#include "raising/plan_fields.h"
#include "roof/rafter_fields.h"
#include "shop/log/record.h"
#include "stock/plan_fields.h"

namespace bentbook {
namespace {

constexpr json::FileHead kBookHead{"book", kBookVersion};

bool stands_in(std::string_view kept, std::string_view member) { return kept.find(member) != std::string_view::npos; }

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, NamedJoint& j) {
  fields.text("name", j.name);
  fields.object("joint", j.type);
}

static void describe(Fields& fields, TimberNote& n) {
  fields.text("mark", n.mark);
  fields.text("text", n.text, kLongestNote);
}

void describe(Fields& fields, Book& b) {
  // What was taken back or refused is written empty where an older one is kept: it would come back else.
  if (fields.reads() || !b.identity.empty() || stands_in(b.kept, "\"identity\""))
    fields.text("identity", b.identity, std::string::npos);
  fields.text("title", b.title);
  fields.text("notes", b.notes, kLongestNote);
  fields.object("lengths", b.lengths);
  fields.text("saw", b.saw);
  fields.list("saws", b.saws, 500);
  fields.list("species", b.species, 500);
  fields.list("joints", b.joints, 500);
  fields.flag("framed", b.framed);
  fields.object("frame", b.frame);
  fields.object("rafter", b.rafter);
  if (fields.reads() || !b.roof.sides.empty() || stands_in(b.kept, "\"roof_plan\"")) fields.object("roof_plan", b.roof);
  fields.list("timber_notes", b.timber_notes, 100'000);
  if (fields.reads() || !(b.raising == RaisingPlan{}) || stands_in(b.kept, "\"raising\""))
    fields.object("raising", b.raising);
  if (fields.reads() || !(b.stock == StockPlan{}) || stands_in(b.kept, "\"stock\"")) fields.object("stock", b.stock);
}

std::string write_book(const Book& book) { return json::write_file(kBookHead, described_as_is(book), book.kept); }

Result<Book> read_book(std::string_view bytes, std::string* refused) {
  Book book;
  std::string spot;
  if (auto ok = json::read_file(kBookHead, bytes, described(book), &spot); !ok) {
    Error error = ok.error();
    if (!spot.empty()) error.where = spot;
    return tl::unexpected(error);
  }
  book.kept = bytes;
  if (is_book_id(book.identity)) return book;
  // It becomes a key of storage and goes into the codes of labels: what the app would not give is not taken.
  if (refused != nullptr) *refused = std::move(book.identity);
  book.identity.clear();
  return book;
}

}  // namespace bentbook
