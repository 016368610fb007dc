#include "tasks/request_fields.h"

#include "raising/plan_fields.h"
#include "roof/rafter_fields.h"
#include "tasks/frame_fields.h"

namespace bentbook {

void describe(Fields& fields, PatternRequest& r) {
  fields.object("rafter", r.rafter);
  describe_enum(fields, "side", r.side, Side::kRight);
  std::string language(language_tag(r.language));
  fields.text("language", language);
  r.language = language_of(language);
  fields.integer("denominator", r.denominator, 8, 64);
}

void describe(Fields& fields, CheckRequest& r) { fields.object("plan", r.of.plan); }

void describe(Fields& fields, ExplainRequest& r) {
  fields.object("plan", r.of.plan);
  fields.integer("step", r.step, 0, 100'000'000);
}

void describe(Fields& fields, SearchRequest& r) {
  fields.object("plan", r.of.plan);
  auto seed = static_cast<std::int64_t>(r.seed);
  fields.whole("seed", seed, 0, std::int64_t{1} << 52);
  r.seed = static_cast<std::uint64_t>(seed);
  fields.integer("tries", r.tries, 1, 100'000'000);
  fields.flag("further", r.further);
}

}  // namespace bentbook
