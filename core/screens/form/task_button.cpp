#include "screens/form/task_button.h"

#include "screens/form/drawing_form.h"
#include "words/frame_words.h"

namespace bentbook::screens {

TaskPressed task_button(Context& context, ItemKey key, std::string_view label, std::optional<int> per_mille) {
  Ui& ui = context.ui;
  if (!per_mille) return button(ui, key, label, Weight::kPrimary) ? TaskPressed::kStart : TaskPressed::kNothing;
  fact(ui, std::string(key) + ".progress", label, std::to_string(*per_mille / 10) + " %", true);
  const bool stop = button(ui, std::string(key) + ".stop", context.say(Msg::kTaskStop));
  return stop ? TaskPressed::kStop : TaskPressed::kNothing;
}

std::string task_error_text(const Context& context, const Error& error) {
  if (error.where == "answer") return std::string(context.say(Msg::kRaisingUnread));
  return frame_error_text(error, voice_of(context));
}

}  // namespace bentbook::screens
