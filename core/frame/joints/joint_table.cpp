#include "frame/joints/joint_table.h"

#include <array>

#include "measure/fields.h"

namespace bentbook {
namespace {

constexpr std::uint32_t meetings(std::initializer_list<Meeting> all) {
  std::uint32_t bits = 0;
  for (const Meeting meeting : all) bits |= std::uint32_t{1} << static_cast<unsigned>(meeting);
  return bits;
}
static_assert(kMeetings <= 32);

/// A member's end on another timber, cut to its face.
constexpr std::uint32_t kEnds =
    meetings({Meeting::kPostFoot, Meeting::kPostTop, Meeting::kTiePost, Meeting::kGirtPost, Meeting::kKingFoot,
              Meeting::kKingTop, Meeting::kQueenTop, Meeting::kRafterRidge, Meeting::kPurlinRafter,
              Meeting::kCollarRafter, Meeting::kJoistTie, Meeting::kBraceEnd});
constexpr std::uint32_t kScarfs =
    meetings({Meeting::kSillScarf, Meeting::kPlateScarf, Meeting::kRidgeScarf, Meeting::kPurlinScarf});
constexpr std::uint32_t kOver = meetings({Meeting::kRafterPlate, Meeting::kRafterPurlin, Meeting::kRafterRidge});
constexpr std::uint32_t kLevelEnds = meetings({Meeting::kTiePost, Meeting::kGirtPost, Meeting::kJoistTie});
constexpr std::uint32_t kLaps = meetings({Meeting::kSillCorner, Meeting::kCollarRafter});

template <class Type>
JointType usual() {
  return Type{};
}
template <class Type, void (*join)(Work&, const EndMeeting&, const Type&)>
void at_end(Work& work, const EndMeeting& meeting, const JointType& type) {
  join(work, meeting, *std::get_if<Type>(&type));
}

constexpr std::array<JointRow, kJointKinds> kTable = {{
    {"housed_butt", kEnds, {HoldBy::kPress}, Fasteners::kLoose, usual<HousedButt>, at_end<HousedButt, join_butt>},
    {"knife_plate",
     kEnds,
     {HoldBy::kPlate, true, true, true},
     Fasteners::kPins,
     usual<KnifePlate>,
     at_end<KnifePlate, join_knife>},
    {"mortise_tenon",
     kEnds,
     {HoldBy::kTenon, true},
     Fasteners::kLoose,
     usual<MortiseTenon>,
     at_end<MortiseTenon, join_tenon>},
    {"birds_mouth", kOver, {HoldBy::kSeat}, Fasteners::kLoose, usual<BirdsMouth>, nullptr},
    {"rafter_peak", meetings({Meeting::kRafterPeak}), {HoldBy::kPeak}, Fasteners::kLoose, usual<RafterPeak>, nullptr},
    {"half_lap", kLaps, {HoldBy::kLap}, Fasteners::kLoose, usual<HalfLap>, at_end<HalfLap, join_lap>},
    {"scarf", kScarfs, {HoldBy::kScarf, true}, Fasteners::kLoose, usual<Scarf>, nullptr},
    {"half_dovetail",
     kLevelEnds,
     {HoldBy::kPress, true},
     Fasteners::kLoose,
     usual<HalfDovetail>,
     at_end<HalfDovetail, join_half_dovetail>},
}};

constexpr std::array<std::string_view, kJointKinds> kWords = [] {
  std::array<std::string_view, kJointKinds> words;
  for (std::size_t i = 0; i < words.size(); ++i) words[i] = kTable[i].word;
  return words;
}();

}  // namespace

std::span<const JointRow, kJointKinds> joint_table() { return kTable; }
std::span<const std::string_view, kJointKinds> joint_words() { return kWords; }

void describe(Fields& fields, JointType& type) {
  JointKind kind = kind_of(type);
  fields.choice("type", kind, joint_words());
  if (kind != kind_of(type)) type = row_of(kind).usual();
  std::visit([&](auto& joint) { describe(fields, joint); }, type);
}

bool fits(Meeting meeting, JointKind kind) {
  return (row_of(kind).meetings >> static_cast<unsigned>(meeting) & 1U) != 0;
}

}  // namespace bentbook
