#include "book/kit.h"

#include "book/describe.h"

namespace bentbook {
namespace {

constexpr int kVersion = 1;
constexpr const char* kFile = "kit";
constexpr unsigned kMostSaws = 500;

constexpr std::string_view kThemes[] = {"follow", "sun", "night"};

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, Settings& s) {
  describe_lengths(io, s.lengths);
  io.choice("theme", s.theme, kThemes);
  io.text("language", s.language);
  io.flag("glove", s.glove);
  io.integer("text_percent", s.text_percent, 100, 200);
  io.flag("keep_awake", s.keep_awake);
  io.flag("caution_seen", s.caution_seen);
  if (Io::kReads || !s.who.empty()) io.text("who", s.who, 80);
}

template <class Io>
static void describe(Io& io, Kit& kit) {
  io.list("saws", kit.saws, kMostSaws);
  io.object("settings", kit.settings);
}

Kit first_kit() {
  Kit kit;
  Saw circular;
  circular.name = "Circular saw";
  circular.reach = Length::inches(49, 8);
  circular.max_swing = Angle::degrees(60);
  circular.max_tilt = Angle::degrees(50);
  Saw bar;
  bar.name = "Bar on a table";
  bar.kind = SawKind::kChainsawBar;
  bar.reach = Length::inches(15);
  bar.max_swing = Angle::degrees(60);
  bar.max_tilt = Angle{};
  Saw hand;
  hand.name = "Hand saw";
  hand.kind = SawKind::kHand;
  hand.step = {Angle::kPerDegree / 2};
  hand.max_swing = hand.max_tilt = Angle::degrees(90);
  kit.saws = {circular, bar, hand};
  return kit;
}

const Saw& find_saw(const Kit& kit, std::string_view name) {
  static const Saw kHand = [] {
    Saw s;
    s.kind = SawKind::kHand;
    return s;
  }();
  for (const Saw& saw : kit.saws)
    if (saw.name == name) return saw;
  return kit.saws.empty() ? kHand : kit.saws.front();
}

std::string free_saw_name(const Kit& kit, std::string_view wanted) {
  const auto taken = [&](std::string_view name) {
    for (const Saw& saw : kit.saws)
      if (saw.name == name) return true;
    return false;
  };
  std::string name(wanted);
  for (int n = 2; taken(name); ++n) name = std::string(wanted) + " " + std::to_string(n);
  return name;
}

std::string write_kit(const Kit& kit) {
  json::Document document(rapidjson::kObjectType);
  document.AddMember("file", rapidjson::StringRef(kFile), document.GetAllocator());
  document.AddMember("version", kVersion, document.GetAllocator());
  json::Writer writer(document, document.GetAllocator());
  Kit copy = kit;
  describe(writer, copy);
  json::keep_unknown(document, kit.kept);
  return json_text(document);
}

Result<Kit> read_kit(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
  if (auto ok = json::check_head(document, kFile, kVersion); !ok) return tl::unexpected(ok.error());
  Kit kit;
  Error error;
  json::Reader reader(document, error);
  describe(reader, kit);
  if (!error.where.empty()) return tl::unexpected(error);
  kit.kept = bytes;
  return kit;
}

}  // namespace bentbook
