#include "screens/shop/rules.h"

#include <algorithm>
#include <string>
#include <vector>

#include "frame/keys.h"
#include "screens/shop/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

std::string kind_word(TimberKind kind) { return std::string(keys::word(keys::kTimberKind, kind)); }

Event rule(EventAction action, std::string_view kind, std::string_view step, std::string value = {},
           std::string name = {}) {
  Event event;
  event.action = action;
  event.timber = kind;
  event.step = step;
  event.value = std::move(value);
  event.note = std::move(name);
  return event;
}

/// The steps that timbers of this kind have, each word once, in their order.
std::vector<WorkStep> steps_of_kind(const ShopMemory::Work& work, const Frame& frame, std::string_view kind) {
  std::vector<WorkStep> steps;
  for (const TimberWork& timber : work.timbers) {
    if (kind_word(frame.timbers[static_cast<std::size_t>(timber.timber)].kind) != kind) continue;
    auto at = steps.begin();
    for (const WorkStep& step : timber.steps) {
      const auto there =
          std::find_if(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.word == step.word; });
      if (there != steps.end()) {
        at = there + 1;
      } else {
        WorkStep plain = step;
        plain.end.reset();
        plain.mate.clear();
        plain.part = StepPart::kWhole;
        plain.numbers.clear();
        at = steps.insert(at, std::move(plain)) + 1;
      }
    }
  }
  return steps;
}

void rule_screen(Context& context) {
  shop_page(context, "rules.step.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const std::size_t bar = context.subject.find('|');
    const std::string kind = context.subject.substr(0, bar), word = context.subject.substr(bar + 1);
    const std::vector<WorkStep> steps = steps_of_kind(shop_work_of(context, shown), *shown.frame(), kind);
    const auto it = std::find_if(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.word == word; });
    if (it == steps.end()) {
      body(ui, "rules.dropped", context.say(Msg::kRulesDropped));
      if (button(ui, "rules.restore", context.say(Msg::kRulesRestore), Weight::kPrimary))
        tell(context, rule(EventAction::kStepRestored, kind, word));
      return;
    }
    const std::string title = step_text(*it, ui.language);
    heading(ui, "rules.title", title);
    if (const auto name = text_field(ui, "rules.name", context.say(Msg::kRulesRename), it->name))
      tell(context, rule(EventAction::kStepRenamed, kind, word, {}, *name));
    if (it != steps.begin() && button(ui, "rules.up", context.say(Msg::kRulesUp)))
      tell(context, rule(EventAction::kStepMoved, kind, word, it - steps.begin() < 2 ? "-" : (it - 2)->word));
    if (it + 1 != steps.end() && button(ui, "rules.down", context.say(Msg::kRulesDown)))
      tell(context, rule(EventAction::kStepMoved, kind, word, (it + 1)->word));
    const std::string key = "rules.tolerance";
    const Voice voice = voice_of(context);
    if (given(ui, key, context.say(Msg::kRulesTolerance), it->tolerance ? say_length(*it->tolerance, voice) : "–",
              context.keypad.is_open(key)))
      context.keypad.open_length(key, context.say(Msg::kRulesTolerance), it->tolerance.value_or(Length::inches(1, 16)));
    if (const auto tolerance = context.keypad.take_length(key))
      tell(context, rule(EventAction::kStepAsks, kind, word, std::to_string(tolerance->count)));
    if (it->tolerance && button(ui, "rules.ask_none", context.say(Msg::kRulesAskNone)))
      tell(context, rule(EventAction::kStepAsks, kind, word));
    if (button(ui, "rules.drop", context.say(Msg::kRulesDrop), Weight::kDestructive))
      tell(context, rule(EventAction::kStepDropped, kind, word));
  });
}

Page step_rule_page(const std::string& kind, const std::string& word) {
  return {"shop.rule", Msg::kRulesTitle, rule_screen, kind + '|' + word};
}

void kind_screen(Context& context) {
  shop_page(context, "rules.kind.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const std::string kind = context.subject;
    const std::vector<WorkStep> steps = steps_of_kind(shop_work_of(context, shown), *shown.frame(), kind);
    int n = 0;
    for (const WorkStep& step : steps)
      if (list_row(ui, "rules.step." + step.word, std::to_string(++n) + ". " + step_text(step, ui.language),
                   workplace_text(step.place, ui.language)))
        context.pages.push(step_rule_page(kind, step.word));
    for (const Rule& r : context.shop.shop().rules)
      if (r.kind == kind && r.action == EventAction::kStepDropped)
        if (list_row(ui, "rules.dropped." + r.step, r.step, context.say(Msg::kRulesDropped)))
          context.pages.push(step_rule_page(kind, r.step));
    const auto name = text_field(ui, "rules.new", context.say(Msg::kRulesAdd), "");
    if (!name || name->empty()) return;
    int own = 1;
    const auto taken = [&](const std::string& word) {
      return std::any_of(context.shop.shop().rules.begin(), context.shop.shop().rules.end(),
                         [&](const Rule& r) { return r.kind == kind && r.step == word; });
    };
    while (taken("own." + std::to_string(own))) ++own;
    tell(context, rule(EventAction::kStepAdded, kind, "own." + std::to_string(own), "ready bench -", *name));
  });
}

void rules_screen(Context& context) {
  shop_page(context, "rules.page", [&](const ShownFrame& shown) {
    body(context.ui, "rules.note", context.say(Msg::kRulesNote));
    const Frame& frame = *shown.frame();
    for (int k = 0; k < kTimberKinds; ++k) {
      const auto kind = static_cast<TimberKind>(k);
      const auto n =
          std::count_if(frame.timbers.begin(), frame.timbers.end(), [&](const Timber& t) { return t.kind == kind; });
      if (n == 0) continue;
      if (list_row(context.ui, "rules.kind." + kind_word(kind), kind_name(kind, context.ui.language),
                   say_count(Msg::kWorkplaceTimbers, context.ui.language, n)))
        context.pages.push({"shop.kind", Msg::kRulesTitle, kind_screen, kind_word(kind)});
    }
  });
}

}  // namespace

Page shop_rules_page() { return {"shop.rules", Msg::kRulesTitle, rules_screen}; }

}  // namespace bentbook::screens
