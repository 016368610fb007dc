#include "shop/step_marks.h"

#include <algorithm>

namespace bentbook {
namespace {

constexpr double kSameStation = 0.02;  // inches: numbers of a step are not rounded, marks neither

bool is_near(double a, double b) { return libm::fabs(a - b) < kSameStation; }

/// Holes at the step's stations, of its bit.
void keep_bores(FaceMarks& marks, const WorkStep& step) {
  double diameter = 0;
  std::vector<double> at;
  for (const StepNumber& n : step.numbers) {
    if (n.name == StepNumberName::kDiameter) diameter = n.value;
    if (n.name == StepNumberName::kAt) at.push_back(n.value);
  }
  std::vector<FaceMark> kept;
  for (FaceMark& mark : marks.marks) {
    const auto other = [&](const FaceHole& hole) {
      return (diameter > 0 && !is_near(hole.diameter, diameter)) ||
             std::none_of(at.begin(), at.end(), [&](double x) { return is_near(x, hole.centre.x); });
    };
    mark.holes.erase(std::remove_if(mark.holes.begin(), mark.holes.end(), other), mark.holes.end());
    if (mark.holes.empty()) continue;
    mark.lines.clear();
    mark.waste.clear();
    kept.push_back(std::move(mark));
  }
  marks.marks = std::move(kept);
}

bool along(const FaceLine& line) { return line.off_square > libm::kPi / 2 - 1e-3; }

/// The stroke of a saw: the line that runs between its two stations.
bool is_stroke(const FaceLine& line, const SawCut& cut) {
  const auto on_it = [&](double x) {
    const double low = std::min(cut.from, cut.to) - kSameStation, high = std::max(cut.from, cut.to) + kSameStation;
    return x >= low && x <= high;
  };
  return !along(line) && on_it(line.a.x) && on_it(line.b.x);
}

void keep_joint(FaceMarks& marks, const Sheet& sheet, const WorkStep& step) {
  std::vector<FaceMark> kept;
  for (FaceMark& mark : marks.marks)
    if (mark.work == step.on && mark.index == step.index && !mark.lines.empty()) kept.push_back(std::move(mark));
  marks.marks = std::move(kept);
  if (step.part == StepPart::kWhole && step.saw_cuts.empty()) return;
  bool any = false;
  const auto makes = [&](const FaceLine& line) {
    if (step.part == StepPart::kCheeks || step.part == StepPart::kEdges) return along(line);
    return std::any_of(step.saw_cuts.begin(), step.saw_cuts.end(),
                       [&](int i) { return is_stroke(line, sheet.saw_cuts[static_cast<std::size_t>(i)]); });
  };
  for (const FaceMark& mark : marks.marks) any = any || std::any_of(mark.lines.begin(), mark.lines.end(), makes);
  if (!any) return;
  for (FaceMark& mark : marks.marks)
    for (FaceLine& line : mark.lines) line.now = makes(line);
}

bool is_bore(const WorkStep& step) {
  return std::any_of(step.numbers.begin(), step.numbers.end(),
                     [](const StepNumber& n) { return n.name == StepNumberName::kAt; });
}

}  // namespace

std::optional<FaceMarks> step_marks(const Timber& timber, const Sheet& sheet, const WorkStep& step) {
  if (step.index < 0) return std::nullopt;
  std::vector<Face> faces;
  if (const auto up = step.face_up()) faces.push_back(*up);
  for (const Face face : kFaces) faces.push_back(face);
  for (const Face face : faces) {
    FaceMarks marks = face_marks(timber, sheet, face);
    marks.hidden.clear();
    marks.landings.clear();
    if (is_bore(step))
      keep_bores(marks, step);
    else
      keep_joint(marks, sheet, step);
    if (!marks.marks.empty()) return marks;
  }
  return std::nullopt;
}

}  // namespace bentbook
