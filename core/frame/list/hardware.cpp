#include "frame/list/hardware.h"

#include <algorithm>
#include <tuple>

#include "frame/keys.h"
#include "measure/print.h"
#include "numeric/sorting.h"
#include "text/csv.h"

namespace bentbook {
namespace {

constexpr double kSameSize = 1e-6;  // inches

void count_hardware(std::vector<HardwareRow>& rows, const HardwareRow& one) {
  const auto same = [&](const HardwareRow& r) {
    return r.bent == one.bent && r.what == one.what && libm::fabs(r.diameter - one.diameter) < kSameSize &&
           libm::fabs(r.through - one.through) < kSameSize;
  };
  const auto known = std::find_if(rows.begin(), rows.end(), same);
  if (known == rows.end())
    rows.push_back(one);
  else
    known->count += one.count;
}

void put_in_order(std::vector<HardwareRow>& rows) {
  sort_by(rows, [](const HardwareRow& a, const HardwareRow& b) {
    return std::tuple(a.bent, a.what, -a.diameter, -a.through) < std::tuple(b.bent, b.what, -b.diameter, -b.through);
  });
}

Hardware hardware_in(const Feature& hole) {
  if (hole.use == HoleUse::kPin) return Hardware::kPin;
  return hole.use == HoleUse::kScrew ? Hardware::kScrew : Hardware::kPeg;
}

/// What passes the joint's holes passes the thickest of its timbers there.
double wood_passed(const Frame& frame, const Joint& joint, int index) {
  double most = 0;
  for (const int timber : {joint.member, joint.receiver})
    for (const Feature& f : frame.timbers[static_cast<std::size_t>(timber)].features)
      if (f.kind == FeatureKind::kHole && f.joint == index) most = std::max(most, f.depth);
  return most;
}

std::string size_text(double inches) {
  if (inches <= 0) return {};
  return print_length(Length::from_inches(inches), {LengthForm::kInchFraction, 64, 0}, Marks::kAscii).text;
}

}  // namespace

std::vector<HardwareRow> hardware_of(const Frame& frame) {
  std::vector<HardwareRow> rows;
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    const Joint& joint = frame.joints[j];
    const Timber& member = frame.timbers[static_cast<std::size_t>(joint.member)];
    if (joint.kind == JointKind::kKnifePlate) count_hardware(rows, {member.place.bent, Hardware::kKnifePlate, 0, 0, 1});
    const int index = static_cast<int>(j);
    const double through = wood_passed(frame, joint, index);
    for (const Feature& f : member.features)
      if (f.kind == FeatureKind::kHole && f.joint == index)
        count_hardware(rows, {member.place.bent, hardware_in(f), f.diameter, through, 1});
  }
  put_in_order(rows);
  return rows;
}

std::vector<HardwareRow> hardware_in_all(const std::vector<HardwareRow>& by_bent) {
  std::vector<HardwareRow> rows;
  for (HardwareRow row : by_bent) {
    row.bent = -1;
    count_hardware(rows, row);
  }
  put_in_order(rows);
  return rows;
}

std::string write_hardware_csv(const std::vector<HardwareRow>& rows) {
  std::string out = "bent,what,diameter,through,count\r\n";
  for (const HardwareRow& row : rows) {
    if (row.bent >= 0) out += std::to_string(row.bent);
    out += ',';
    out += keys::word(kHardwareWords, row.what);
    for (const double size : {row.diameter, row.through}) (out += ',') += csv::quoted(size_text(size));
    (out += ',') += std::to_string(row.count);
    out += "\r\n";
  }
  return out;
}

}  // namespace bentbook
