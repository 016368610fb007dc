#include "answers/raise_task.h"

#include "book/book.h"
#include "book/describe_raising.h"
#include "model/book_model.h"

namespace bentbook {
namespace {

constexpr const char* kFile = "found_order";
constexpr std::int64_t kMostSeed = 9'007'199'254'740'991;  // 2^53 - 1, as everywhere in files
constexpr std::string_view kReasons[] = {"cycle", "support", "cant_go_in", "shuts_out", "cant_stand", "cant_pick"};

struct RaiseRequest {
  std::int64_t seed = 1;
  int steps = 4000;
};

/// Per mille of the tries: half for the first order, half for making it cheaper.
int done_of(const SearchProgress& at, int steps) {
  const auto done = static_cast<std::int64_t>(at.tried) * 500 / (steps > 0 ? steps : 1);
  return static_cast<int>(done > 999 ? 999 : done);
}

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, OrderCost& c) {
  io.integer("temporaries", c.temporaries, 0, 2'000'000'000);
  io.integer("moves", c.moves, 0, 2'000'000'000);
  io.whole("carry", c.carry, 0, kMostSeed);
}

template <class Io>
static void describe(Io& io, Stuck& s) {
  io.list("piece", s.piece, kMostRaisingThings);
  io.choice("reason", s.reason, kReasons);
  io.list("marks", s.marks, kMostRaisingThings);
}

template <class Io>
static void describe(Io& io, FoundOrder& f) {
  io.flag("found", f.found);
  io.flag("stopped", f.stopped);
  io.flag("proven_optimal", f.proven_optimal);
  io.object("cost", f.cost);
  io.object("bound", f.bound);
  io.integer("tried", f.tried, 0, 2'000'000'000);
  io.object("raising", f.plan);
  io.list("cycle", f.cycle, kMostRaisingThings);
  io.list("stuck", f.stuck, kMostRaisingThings);
  io.integer("first_unstable", f.first_unstable, -1, 2'000'000'000);
}

static void describe(json::Reader& io, RaiseRequest& r) {
  io.whole("seed", r.seed, 0, kMostSeed);
  io.integer("steps", r.steps, 1, kMostTaskSteps);
}

std::string raise_request(std::string_view book_bytes, std::uint64_t seed, int steps) {
  std::string out = R"({"task":"raise","seed":)" + std::to_string(seed % (static_cast<std::uint64_t>(kMostSeed) + 1));
  out += ",\"steps\":" + std::to_string(steps) + ",\"book\":";
  out += book_bytes;
  return out + "}";
}

Result<std::string> raise_task(std::string_view request, const Progress& progress) {
  json::Document document;
  if (auto ok = parse_json_object(document, request, "task"); !ok) return tl::unexpected(ok.error());
  RaiseRequest asked;
  Error error;
  json::Reader reader(document, error);
  describe(reader, asked);
  if (!error.where.empty()) return tl::unexpected(error);
  const rapidjson::Value* member = json_member(document, "book");
  if (!member) return fail(ErrorCode::kMissing, "book");
  const auto book = read_book(json_text(*member));
  if (!book) return tl::unexpected(book.error());
  const BookModel model = solve(*book);
  if (!*model.frame) return tl::unexpected(model.frame->error());
  SearchOptions options;
  options.seed = static_cast<std::uint64_t>(asked.seed);
  options.steps = asked.steps;
  const FoundOrder found = search_order(**model.frame, book->raising, options, [&](const SearchProgress& at) {
    return !progress || progress(done_of(at, asked.steps));
  });
  if (found.stopped && !found.found) return fail(ErrorCode::kEmpty, "cancelled");
  return write_found_order(found);
}

std::string write_found_order(const FoundOrder& found) {
  json::Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(kFile), document.GetAllocator());
  document.AddMember("version", 1, document.GetAllocator());
  json::Writer writer(document, document.GetAllocator());
  FoundOrder copy = found;
  describe(writer, copy);
  return json_text(document);
}

Result<FoundOrder> read_found_order(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
  if (auto ok = json::check_head(document, kFile, 1); !ok) return tl::unexpected(ok.error());
  FoundOrder found;
  Error error;
  std::string spot;
  json::Reader reader(document, error, &spot);
  describe(reader, found);
  if (!error.where.empty()) return fail(error.code, spot, error.at, error.limit);
  return found;
}

}  // namespace bentbook
