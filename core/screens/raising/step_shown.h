#pragma once
/// A step with what is known of it, for the pages about it.

#include <string>

#include "raising/check.h"
#include "screens/app/context.h"
#include "screens/raising/form.h"
#include "words/words.h"

namespace bentbook::screens {

struct ShownStep {
  Context& context;
  const ShownFrame& frame;
  const RaisingPlan& plan;
  int index;
  const RaisingStep& step;
  const OrderCheck* order;  ///< null: not checked yet
  const StepCheck* check;   ///< of this step
  Voice voice;
};

/// How it stands when the sling comes off, what would move, what to mind, and the braces that would hold it.
void standing_part(ShownStep&);

/// The step at `index`, which the plan has.
[[nodiscard]] inline ShownStep shown_step(Context& context, const ShownFrame& shown, int index,
                                          const OrderCheck* order) {
  const RaisingPlan& plan = context.desk.book().raising;
  const auto i = static_cast<std::size_t>(index);
  const StepCheck* check = order != nullptr && i < order->steps.size() ? &order->steps[i] : nullptr;
  return {context, shown, plan, index, plan.steps[i], order, check, voice_of(context)};
}

/// The page of the step that is the page's subject, in a scroll area; said where there is none any more.
template <class Content>
void step_page(Context& context, ItemKey key, Content&& content) {
  raising_page(context, key, [&](const ShownFrame& shown) {
    const int index = std::stoi(context.subject);
    if (index < 0 || static_cast<std::size_t>(index) >= context.desk.book().raising.steps.size())
      return body(context.ui, "step.gone", context.say(Msg::kStepGone));
    ShownStep s = shown_step(context, shown, index, order_check(context));
    content(s);
  });
}

}  // namespace bentbook::screens
