#include "screens/app/task_button.h"

#include "ui/widgets_inside.h"

namespace bentbook::screens {

std::optional<std::string> task_button(Context& context, ItemKey key, std::string_view label, std::string_view id,
                                       const std::function<std::string()>& request) {
  Ui& ui = context.ui;
  auto& running = ui.memory.tasks;
  auto task = running.find(id);
  std::optional<std::string> result;
  PlatformEvent event;
  while (context.take_event(id, event)) {
    if (task == running.end()) continue;  // stopped meanwhile
    if (event.kind == EventKind::kTaskProgress) {
      task->second = static_cast<int>(event.number);
      continue;
    }
    if (event.kind == EventKind::kTaskDone) result = event.text;
    if (event.kind == EventKind::kTaskFailed) context.toast(event.text, false);
    running.erase(task);
    task = running.end();
  }
  if (task == running.end()) {
    if (button(ui, key, label, Weight::kPrimary)) {
      running.emplace(id, 0);
      context.platform.start_task(id, request());
    }
    return result;
  }
  fact(ui, std::string(key) + ".progress", label, std::to_string(task->second / 10) + " %", true);
  if (button(ui, std::string(key) + ".stop", context.say(Msg::kTaskStop))) {
    context.platform.cancel_task(id);
    running.erase(task);
  }
  return result;
}

}  // namespace bentbook::screens
