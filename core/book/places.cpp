#include "book/places.h"

#include "book/json_io.h"
#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

constexpr json::FileHead kPlacesHead{"places", 1};

constexpr std::string_view kPlaces[] = {"angles", "rafter", "frame", "shop", "raising"};
constexpr std::string_view kParts[] = {"rise", "run", "slope_length", "slope"};

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, TriangleInput& t) {
  fields.length("rise", t.rise);
  fields.length("run", t.run);
  fields.length("slope_length", t.slope_length);
  fields.slope("slope", t.slope);
  fields.choice("older", t.older, kParts);
  fields.choice("newer", t.newer, kParts);
}

static void describe(Fields& fields, AnglesInput& a) {
  fields.object("triangle", a.triangle);
  fields.object("section", a.section);
  fields.text("saw", a.saw);
  fields.angle("mitre_between", a.mitre_between, {Angle::degrees(1), Angle::degrees(179)});
  fields.length("mitre_depth_a", a.mitre_depth_a);
  fields.length("mitre_depth_b", a.mitre_depth_b);
  fields.length("flip_gap", a.flip_gap, {Length::inches(-12)});
  fields.length("flip_depth", a.flip_depth);
}

void describe(Fields& fields, Places& p) {
  fields.choice("active", p.active, kPlaces);
  fields.object("angles", p.angles);
  fields.object("rafter", p.rafter);
  fields.object("corner", p.corner);
  fields.object("bench", p.bench);
}

std::string write_places(const Places& places) {
  return json::write_file(kPlacesHead, described_as_is(places), places.kept);
}

Result<Places> read_places(std::string_view bytes) {
  Places places;
  if (auto ok = json::read_file(kPlacesHead, bytes, described(places)); !ok) return tl::unexpected(ok.error());
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
