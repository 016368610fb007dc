#include "screens/app/held.h"

#include "measure/other_units.h"
#include "ui/registry.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

/// A page is about one text: the answer's name, a line's end, what it says.
std::string_view name_of(std::string_view subject) { return subject.substr(0, subject.find('\n')); }
std::string_view value_of(std::string_view subject) { return subject.substr(subject.find('\n') + 1); }

void held_screen(Context& context) {
  Ui& ui = context.ui;
  const std::string subject = context.subject;  // the page may leave the stack while it draws
  const std::string name(name_of(subject)), value(value_of(subject));
  begin_scroll(ui, "held.page", context.page);
  space(ui, kGap);
  const auto row = [&](ItemKey key, std::string_view label, const std::string& text) {
    answer(ui, key, label, text);
    if (button(ui, std::string(key) + ".copy", context.say(Msg::kAnswerCopy))) context.platform.copy_text(text);
    space(ui, kGap);
  };
  row("held.value", name, value);
  const auto other = in_other_units(value);
  if (other) row("held.other", context.say(Msg::kAnswerOther), *other);
  if (button(ui, "held.share", context.say(Msg::kAnswerShare)))
    context.platform.share_text(name + ": " + value + (other ? " (" + *other + ")" : std::string{}));
  end_scroll(ui);
}

}  // namespace

Page held_page(const Item& answer) {
  // What stands in parentheses is the same, more exactly.
  const std::string shown = answer.value.substr(0, answer.value.find(" ("));
  return {"held", Msg::kAnswerTitle, held_screen, answer.name + '\n' + shown};
}

}  // namespace bentbook::screens
