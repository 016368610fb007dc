#include "screens/frame/joinery_choice.h"

#include "frame/drawings/joint_drawing.h"
#include "screens/form/drawn_card.h"

namespace bentbook::screens {
namespace {

/// A tie on its post.
draw::Drawing tie_drawing(const JointType& type) {
  JointWood wood;
  wood.high = 10;
  return joint_drawings(type, wood).front().drawing;
}

}  // namespace

std::optional<Joinery> joinery_choice(Context& context, std::optional<Joinery> now) {
  const auto picked = drawn_choice(
      context, context.say(Msg::kJoinery),
      {{"joinery.plates", context.say(Msg::kJoineryPlates),
        tie_drawing(plate_for({Length::inches(8), Length::inches(10)}))},
       {"joinery.wooden", context.say(Msg::kJoineryWooden), tie_drawing(default_joint(Meeting::kTiePost))}},
      now ? static_cast<int>(*now) : -1);
  if (!picked || (now && static_cast<int>(*now) == *picked)) return std::nullopt;
  return static_cast<Joinery>(*picked);
}

}  // namespace bentbook::screens
