#include "book/kit.h"

#include "book/json_io.h"

namespace bentbook {
namespace {

constexpr json::FileHead kKitHead{"kit", 1};
constexpr unsigned kMostSaws = 500;

constexpr std::string_view kThemes[] = {"follow", "sun", "night"};

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, Settings& s) {
  describe(fields, s.lengths);
  fields.choice("theme", s.theme, kThemes);
  fields.text("language", s.language);
  fields.flag("glove", s.glove);
  fields.integer("text_percent", s.text_percent, 100, 200);
  fields.flag("keep_awake", s.keep_awake);
  fields.flag("caution_seen", s.caution_seen);
  if (fields.reads() || s.storage_seen) fields.flag("storage_seen", s.storage_seen);
  if (fields.reads() || s.read_aloud) fields.flag("read_aloud", s.read_aloud);
  if (fields.reads() || !s.who.empty()) fields.text("who", s.who, 80);
}

static void describe(Fields& fields, Kit& kit) {
  fields.list("saws", kit.saws, kMostSaws);
  fields.object("settings", kit.settings);
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

std::string write_kit(const Kit& kit) { return json::write_file(kKitHead, described_as_is(kit), kit.kept); }

Result<Kit> read_kit(std::string_view bytes) {
  Kit kit;
  if (auto ok = json::read_file(kKitHead, bytes, described(kit)); !ok) return tl::unexpected(ok.error());
  kit.kept = bytes;
  return kit;
}

}  // namespace bentbook
