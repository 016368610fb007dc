#include "screens/shop/step_set.h"

#include <string>

#include "words/steps/step_lines.h"

namespace bentbook::screens {
namespace {

std::string key_of(const StepLine& line) {
  std::string key = "shop.step.number." + std::string(kStepNumberWords[static_cast<std::size_t>(line.number)]);
  if (line.time > 1) key += "." + std::to_string(line.time);
  return key;
}

}  // namespace

void step_set(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  Ui& ui = s.context.ui;
  int bores = 0;
  for (const StepLine& line : step_lines(step, sheet, saw_of(s.frame.book), s.voice)) {
    switch (line.kind) {
      case StepLineKind::kWord:
        answer(ui, "shop.step.word", line.name, line.value);
        break;
      case StepLineKind::kLarge:
        answer(ui, key_of(line), line.name, line.value, line.note);
        break;
      case StepLineKind::kNumber:
        fact(ui, key_of(line), line.name, line.value);
        break;
      case StepLineKind::kSquare:
        body(ui, "shop.step.square", line.name);
        break;
      case StepLineKind::kPass:
        body(ui, "shop.step.pass", line.name);
        break;
      case StepLineKind::kBores:
        fact(ui, "shop.step.bore." + std::to_string(bores++), line.name + " " + line.value, line.note);
        break;
    }
  }
}

}  // namespace bentbook::screens
