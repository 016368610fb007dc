#include "screens/shop/writers.h"

#include <algorithm>
#include <string>
#include <vector>

#include "screens/shop/form.h"
#include "shop/log/writers.h"
#include "text/invisible.h"

namespace bentbook::screens {
namespace {

constexpr std::size_t kMostRows = 100;

std::string shown_who(const Context& context, const Writer& writer) {
  return writer.who.empty() ? std::string(context.say(Msg::kShopNobody)) : made_visible(writer.who);
}

std::string writer_text(const Context& context, const Writer& writer, std::int64_t left_out) {
  std::string out = say(Msg::kWritersRow, context.ui.language,
                        {{"phones", std::to_string(writer.devices.size())},
                         {"events", std::to_string(writer.events)},
                         {"from", clock_text(context, writer.from)},
                         {"to", clock_text(context, writer.to)}});
  if (left_out > 0) out += " · " + say_count(Msg::kWritersLeftOut, context.ui.language, left_out);
  return out;
}

std::int64_t left_out_of(const Context& context, const Writer& writer) {
  const Devices& left_out = context.shop.left_out();
  return std::count_if(writer.devices.begin(), writer.devices.end(),
                       [&](std::uint64_t device) { return left_out.count(device) != 0; });
}

/// One name's phones, all of them out or in again.
void writer_part(Context& context, const Writer& writer) {
  Ui& ui = context.ui;
  const std::int64_t out = left_out_of(context, writer);
  fact(ui, "writer.who", shown_who(context, writer), writer_text(context, writer, out));
  body(ui, "writer.how", context.say(Msg::kWritersHow));
  Devices devices = context.shop.left_out();
  if (out < static_cast<std::int64_t>(writer.devices.size()) &&
      hold_row(context, "writer.leave_out", context.say(Msg::kWritersLeaveOut))) {
    devices.insert(writer.devices.begin(), writer.devices.end());
    context.shop.leave_out(devices);
  }
  if (out > 0 && hold_row(context, "writer.take_in", context.say(Msg::kWritersTakeIn))) {
    for (const std::uint64_t device : writer.devices) devices.erase(device);
    context.shop.leave_out(devices);
  }
}

Page writer_page(std::string who);

void writers_screen(Context& context) {
  shop_page(context, "writers.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const Log* log = context.shop.whole_log();
    if (log == nullptr) return note(ui, "writers.reading", context.say(Msg::kShopReading));
    std::size_t n = 0;
    const std::vector<Writer> writers = writers_of(*log);
    for (const Writer& writer : writers) {
      if (n == kMostRows) break;
      if (list_row(ui, "writers." + std::to_string(n++), shown_who(context, writer),
                   writer_text(context, writer, left_out_of(context, writer))))
        context.pages.push(writer_page(writer.who));
    }
    if (writers.size() > n)
      note(ui, "writers.more", say(Msg::kFrameMoreFindings, ui.language, std::to_string(writers.size() - n)));
    body(ui, "writers.how", context.say(Msg::kWritersHow));
  });
}

void writer_screen(Context& context) {
  shop_page(context, "writer.page", [&](const ShownFrame&) {
    const Log* log = context.shop.whole_log();
    if (log == nullptr) return note(context.ui, "writer.reading", context.say(Msg::kShopReading));
    for (const Writer& writer : writers_of(*log))
      if (writer.who == context.subject) return writer_part(context, writer);
    context.pages.pop();
  });
}

Page writer_page(std::string who) { return {"shop.writer", Msg::kWritersTitle, writer_screen, std::move(who)}; }

}  // namespace

Page shop_writers_page() { return {"shop.writers", Msg::kWritersTitle, writers_screen}; }

}  // namespace bentbook::screens
