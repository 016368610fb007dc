#include "frame/facts.h"

#include <algorithm>

#include "frame/limits.h"
#include "roof/limits.h"

namespace bentbook {

double gravity_at(const Species& species, double moisture) {
  if (moisture >= limits::kGreenMoisture) return species.gravity_green;
  if (moisture <= limits::kDryMoisture) return species.gravity_12;
  return species.gravity_12 + (species.gravity_green - species.gravity_12) * (moisture - limits::kDryMoisture) /
                                  (limits::kGreenMoisture - limits::kDryMoisture);
}

double density_at(const Species& species, double moisture) {
  return limits::kWaterDensity * gravity_at(species, moisture) * (1 + moisture / 100);
}

TimberFacts facts_of(const Timber& timber, Length step, Length trim) {
  TimberFacts facts;
  const VolumeFacts solid = volume_of(solid_of(timber));
  facts.volume = solid.volume;
  facts.cg = solid.centroid;
  facts.cg_world = to_world(timber.at, solid.centroid);
  facts.weight_lb = solid.volume / 1728 * density_at(timber.species, timber.moisture);
  constexpr std::int64_t kHair = 8'000;
  const std::int64_t need = Length::from_inches(timber.length).count + trim.count - kHair;
  facts.stock = step * (need <= 0 ? 1 : (need + step.count - 1) / step.count);
  const Section& nominal = timber.wood.nominal;
  facts.board_feet = nominal.breadth.in() * nominal.depth.in() * facts.stock.in() / 144;
  return facts;
}

std::vector<int> joints_of(const Frame& frame, int timber) {
  std::vector<int> found;
  for (std::size_t j = 0; j < frame.joints.size(); ++j)
    if (frame.joints[j].member == timber || frame.joints[j].receiver == timber) found.push_back(static_cast<int>(j));
  return found;
}

std::vector<std::string> marks_gone(const Frame& before, const Frame& after) {
  std::vector<std::string> gone;
  for (const Timber& t : before.timbers)
    if (timber_by_mark(after, t.mark) < 0) gone.push_back(t.mark);
  return gone;
}

int timber_by_mark(const Frame& frame, std::string_view mark) {
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (frame.timbers[i].mark == mark) return static_cast<int>(i);
  return -1;
}

}  // namespace bentbook
