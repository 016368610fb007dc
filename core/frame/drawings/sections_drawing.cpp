#include "frame/drawings/sections_drawing.h"

#include <algorithm>
#include <string>

#include "frame/keys.h"

namespace bentbook {
namespace {

constexpr Section PlanSections::*kByKind[] = {
    &PlanSections::sill,   &PlanSections::post,       &PlanSections::plate,     &PlanSections::tie,
    &PlanSections::girt,   &PlanSections::joist,      &PlanSections::king_post, &PlanSections::queen_post,
    &PlanSections::collar, &PlanSections::ridge_beam, &PlanSections::principal, &PlanSections::common,
    &PlanSections::purlin, &PlanSections::brace};
static_assert(std::size(kByKind) == kPlannedKinds);

}  // namespace

draw::Drawing sections_drawing(const FramePlan& plan, std::span<const TimberKind> kinds, int columns) {
  using draw::Meaning;
  double widest = 1, tallest = 1;
  const auto section = [&](TimberKind kind) { return plan.sections.*kByKind[static_cast<std::size_t>(kind)]; };
  for (const TimberKind kind : kinds) {
    widest = std::max(widest, section(kind).breadth.in());
    tallest = std::max(tallest, section(kind).depth.in());
  }
  // Room for figures above and beside, and for the name below.
  const double across = 2.3 * widest, down = 2 * tallest;
  draw::Drawing d;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const auto row = static_cast<double>(i / static_cast<std::size_t>(columns));
    const double x = static_cast<double>(i % static_cast<std::size_t>(columns)) * across, y = -row * down;
    const double wide = section(kinds[i]).breadth.in(), high = section(kinds[i]).depth.in();
    const std::string word(keys::kTimberKind[static_cast<std::size_t>(kinds[i])]);
    d.polygons.push_back(
        {{{x, y}, {x + wide, y}, {x + wide, y + high}, {x, y + high}}, draw::Stroke::kVisible, draw::Fill::kShade});
    d.dimensions.push_back({{x, y + high}, {x + wide, y + high}, 1, {1, 0}, word + ".breadth", Meaning::kGiven});
    d.dimensions.push_back({{x, y}, {x, y + high}, 1, {0, 1}, word + ".depth", Meaning::kGiven});
    d.notes.push_back({{x + wide / 2, y - 0.16 * tallest}, word, Meaning::kFact});
  }
  return d;
}

}  // namespace bentbook
