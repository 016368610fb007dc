#include "book/places.h"

#include "book/describe.h"

namespace bentbook {
namespace {

constexpr int kVersion = 1;
constexpr const char* kFile = "places";

constexpr std::string_view kPlaces[] = {"angles", "rafter", "frame", "shop", "raising"};
constexpr std::string_view kParts[] = {"rise", "run", "slope_length", "slope"};

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, TriangleInput& t) {
  io.length("rise", t.rise);
  io.length("run", t.run);
  io.length("slope_length", t.slope_length);
  io.slope("slope", t.slope);
  io.choice("older", t.older, kParts);
  io.choice("newer", t.newer, kParts);
}

template <class Io>
static void describe(Io& io, AnglesInput& a) {
  io.object("triangle", a.triangle);
  io.object("section", a.section);
  io.text("saw", a.saw);
  io.angle("mitre_between", a.mitre_between);
  io.length("mitre_depth_a", a.mitre_depth_a);
  io.length("mitre_depth_b", a.mitre_depth_b);
  io.length("flip_gap", a.flip_gap);
  io.length("flip_depth", a.flip_depth);
}

template <class Io>
static void describe(Io& io, Places& p) {
  io.choice("active", p.active, kPlaces);
  io.object("angles", p.angles);
  io.object("rafter", p.rafter);
}

std::string write_places(const Places& places) {
  json::Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(kFile), document.GetAllocator());
  document.AddMember("version", kVersion, document.GetAllocator());
  json::Writer writer(document, document.GetAllocator());
  Places copy = places;
  describe(writer, copy);
  json::keep_unknown(document, places.kept);
  return json_text(document);
}

Result<Places> read_places(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
  if (auto ok = json::check_head(document, kFile, kVersion); !ok) return tl::unexpected(ok.error());
  Places places;
  Error error;
  json::Reader reader(document, error);
  describe(reader, places);
  if (!error.where.empty()) return tl::unexpected(error);
  places.kept = bytes;
  return places;
}

std::string write_rafter(const RafterInput& input) {
  json::Document document(rapidjson::kObjectType);
  json::Writer writer(document, document.GetAllocator());
  RafterInput copy = input;
  describe(writer, copy);
  return json_text(document);
}

Result<RafterInput> read_rafter(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, "rafter"); !ok) return tl::unexpected(ok.error());
  RafterInput input;
  Error error;
  json::Reader reader(document, error);
  describe(reader, input);
  if (!error.where.empty()) return tl::unexpected(error);
  return input;
}

}  // namespace bentbook
