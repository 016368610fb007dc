#include "screens/frame/hardware.h"

#include <string>

#include "frame/list/hardware.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

void hardware_rows(Context& context, const std::string& key, const std::vector<HardwareRow>& rows) {
  const Voice voice = voice_of(context);
  int n = 0;
  for (const HardwareRow& row : rows)
    fact(context.ui, key + "." + std::to_string(n++), hardware_text(row, voice), std::to_string(row.count));
}

void hardware_screen(Context& context) {
  frame_page(context, "hardware.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    Ui& ui = context.ui;
    const std::vector<HardwareRow> rows = hardware_of(*shown.frame());
    if (rows.empty()) return body(ui, "hardware.none", context.say(Msg::kHardwareNone));
    heading(ui, "hardware.all", context.say(Msg::kHardwareAll));
    hardware_rows(context, "hardware.all", hardware_in_all(rows));
    for (std::size_t i = 0; i < rows.size();) {
      std::size_t end = i;
      while (end < rows.size() && rows[end].bent == rows[i].bent) ++end;
      const std::string bent = std::to_string(rows[i].bent), key = "hardware.bent." + bent;
      heading(ui, key,
              rows[i].bent < 0 ? std::string(context.say(Msg::kListNoBent)) : say(Msg::kViewBent, ui.language, bent));
      hardware_rows(context, key,
                    {rows.begin() + static_cast<std::ptrdiff_t>(i), rows.begin() + static_cast<std::ptrdiff_t>(end)});
      i = end;
    }
    if (button(ui, "hardware.share", context.say(Msg::kHardwareShare)))
      context.platform.share_file(context.desk.title() + ".csv", "text/csv", write_hardware_csv(rows));
  });
}

}  // namespace

Page frame_hardware_page() { return {"frame.hardware", Msg::kHardware, hardware_screen}; }

}  // namespace bentbook::screens
