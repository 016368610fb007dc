#include "script.h"

#include <cstdio>
#include <cstdlib>
#include <utility>

namespace bentbook::desktop {
namespace {

using screens::Action;
using screens::App;
using screens::Item;
using screens::TouchPhase;

struct Step {
  std::string verb, rest;
  std::vector<std::string> words;  ///< of rest
};

std::vector<std::string> read_lines(const std::string& path) {
  std::vector<std::string> lines;
  std::FILE* file = std::fopen(path.c_str(), "rb");
  if (file == nullptr) return lines;
  std::string line;
  for (int c; (c = std::fgetc(file)) != EOF;) {
    if (c != '\n') {
      line += static_cast<char>(c);
      continue;
    }
    lines.push_back(std::exchange(line, {}));
  }
  if (!line.empty()) lines.push_back(line);
  std::fclose(file);
  return lines;
}

Step split(const std::string& line) {
  Step step;
  const std::size_t space = line.find(' ');
  step.verb = line.substr(0, space);
  if (space != std::string::npos) step.rest = line.substr(space + 1);
  for (std::size_t at = 0; at < step.rest.size();) {
    const std::size_t end = std::min(step.rest.find(' ', at), step.rest.size());
    if (end > at) step.words.push_back(step.rest.substr(at, end - at));
    at = end + 1;
  }
  return step;
}

const Item* find(const App& app, std::string_view key) {
  for (const Item& item : app.registry().items())
    if (item.key == key) return &item;
  return nullptr;
}

bool act(const Stage& stage, Action::Kind kind, const Step& step) {
  if (step.words.empty() || find(stage.app, step.words[0]) == nullptr) return false;
  Action action{kind, step.words[0], "", 0};
  if (step.words.size() > 1) {
    action.text = step.rest.substr(step.rest.find(' ') + 1);
    action.number = std::atof(action.text.c_str());
  }
  stage.app.act(action);
  return true;
}

void touch(const Stage& stage, TouchPhase phase, float x, float y) {
  stage.app.touch(phase, 1, x, y, stage.clock_ms);
  stage.app.frame(stage.clock_ms += 16);
}

bool drag(const Stage& stage, const std::vector<std::string>& words) {
  float v[4] = {};
  if (words.size() != 2 && words.size() != 4) return false;
  for (std::size_t i = 0; i < words.size(); ++i) v[i] = std::strtof(words[i].c_str(), nullptr);
  touch(stage, TouchPhase::kDown, v[0], v[1]);
  if (words.size() == 4)
    for (int i = 1; i <= 10; ++i) {
      const float t = static_cast<float>(i) / 10;
      touch(stage, TouchPhase::kMove, v[0] + (v[2] - v[0]) * t, v[1] + (v[3] - v[1]) * t);
    }
  const std::size_t last = words.size() - 2;
  touch(stage, TouchPhase::kUp, v[last], v[last + 1]);
  return true;
}

bool expect(const Stage& stage, const Step& step) {
  if (step.words.size() < 2) return false;
  const Item* item = find(stage.app, step.words[0]);
  const std::string text = step.rest.substr(step.words[0].size() + 1);
  if (item != nullptr && (item->name.find(text) != std::string::npos || item->value.find(text) != std::string::npos))
    return true;
  std::fprintf(stderr, "%s is: %s | %s\n", step.words[0].c_str(), item == nullptr ? "not there" : item->name.c_str(),
               item == nullptr ? "" : item->value.c_str());
  return false;
}

bool list(const Stage& stage, const std::string& path) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  for (const Item& i : stage.app.registry().items())
    std::fprintf(file, "%s\t%d\t%s\t%s\t%g %g %g %g%s\n", i.key.c_str(), static_cast<int>(i.role), i.name.c_str(),
                 i.value.c_str(), static_cast<double>(i.rect.x), static_cast<double>(i.rect.y),
                 static_cast<double>(i.rect.w), static_cast<double>(i.rect.h), i.enabled ? "" : "\tdisabled");
  return std::fclose(file) == 0;
}

bool resize(const Stage& stage, const std::vector<std::string>& words) {
  if (words.size() != 2) return false;
  stage.resize(std::strtof(words[0].c_str(), nullptr), std::strtof(words[1].c_str(), nullptr));
  return true;
}

bool wait(const Stage& stage, const std::string& ms) {
  const double until = stage.clock_ms + std::atof(ms.c_str());
  while (stage.clock_ms < until) stage.app.frame(stage.clock_ms += 16);
  return true;
}

bool do_step(const Stage& stage, const Step& step) {
  if (step.verb == "press") return act(stage, Action::Kind::kPress, step);
  if (step.verb == "hold") return act(stage, Action::Kind::kHold, step);
  if (step.verb == "set") return act(stage, Action::Kind::kSetText, step);
  if (step.verb == "number") return act(stage, Action::Kind::kSetNumber, step);
  if (step.verb == "tap" || step.verb == "drag") return drag(stage, step.words);
  if (step.verb == "type") return stage.type(step.rest), true;
  if (step.verb == "key") return stage.key(step.rest);
  if (step.verb == "size") return resize(stage, step.words);
  if (step.verb == "wait") return wait(stage, step.rest);
  if (step.verb == "expect") return expect(stage, step);
  if (step.verb == "shot") return stage.shot(step.rest);
  if (step.verb == "list") return list(stage, step.rest);
  return false;
}

}  // namespace

bool run_script(const std::string& path, const Stage& stage) {
  const std::vector<std::string> lines = read_lines(path);
  if (lines.empty()) std::fprintf(stderr, "%s: no steps\n", path.c_str());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].empty() || lines[i][0] == '#') continue;
    if (!do_step(stage, split(lines[i]))) {
      std::fprintf(stderr, "%s:%zu: cannot do: %s\n", path.c_str(), i + 1, lines[i].c_str());
      return false;
    }
    stage.settle();
  }
  return !lines.empty();
}

}  // namespace bentbook::desktop
