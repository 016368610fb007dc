#include "book/kit.h"

#include "book/json_io.h"

namespace bentbook {
namespace {

constexpr int kVersion = 1;
constexpr const char* kFile = "kit";
constexpr unsigned kMostSaws = 500;

constexpr std::string_view kSawKinds[] = {"circular", "chainsaw_bar", "hand"};
constexpr std::string_view kSquareReads[] = {"0", "90"};
constexpr std::string_view kThemes[] = {"follow", "sun", "night"};
constexpr std::string_view kLengthForms[] = {"feet_inches", "inch_fraction", "decimal_inch", "mm", "metre"};

bool is_division(int d) { return d == 8 || d == 16 || d == 32 || d == 64; }

}  // namespace

// Found by the reader and writer through their arguments' namespace, so not in an unnamed one.

template <class Io>
static void describe(Io& io, Saw& s) {
  io.text("name", s.name);
  io.choice("kind", s.kind, kSawKinds);
  io.choice("square_reads", s.square_reads, kSquareReads);
  io.angle("step", s.step);
  io.length("reach", s.reach);
  io.angle("max_swing", s.max_swing);
  io.angle("max_tilt", s.max_tilt);
  io.angle("scale_error", s.scale_error);
  if constexpr (Io::kReads)
    if (auto ok = check_saw(s); !ok) io.fail(ok.error().code, ok.error().where.c_str(), ok.error().limit);
}

template <class Io>
static void describe(Io& io, Settings& s) {
  io.choice("length_form", s.lengths.form, kLengthForms);
  io.integer("division", s.lengths.denominator, 8, 64);
  io.integer("decimals", s.lengths.decimals, 0, 6);
  io.choice("theme", s.theme, kThemes);
  io.text("language", s.language);
  io.flag("glove", s.glove);
  io.integer("text_percent", s.text_percent, 100, 200);
  io.flag("keep_awake", s.keep_awake);
  io.flag("caution_seen", s.caution_seen);
  if constexpr (Io::kReads)
    if (!is_division(s.lengths.denominator)) io.fail(ErrorCode::kSyntax, "division");
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
  static const Saw hand = [] {
    Saw s;
    s.kind = SawKind::kHand;
    return s;
  }();
  for (const Saw& saw : kit.saws)
    if (saw.name == name) return saw;
  return kit.saws.empty() ? hand : kit.saws.front();
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
  return json::to_text(document);
}

Result<Kit> read_kit(std::string_view bytes) {
  json::Document document;
  if (auto ok = json::parse_object(document, bytes, kFile); !ok) return tl::unexpected(ok.error());
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
