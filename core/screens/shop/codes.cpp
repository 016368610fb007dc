#include "screens/shop/codes.h"

#include <algorithm>
#include <string>
#include <utility>

#include "paper/code.h"
#include "screens/shop/form.h"
#include "screens/shop/pass.h"
#include "screens/shop/timber.h"
#include "shop/log/chunk.h"
#include "ui/widgets_inside.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// More take so long from screen to camera that a file is offered first.
constexpr std::size_t kManyEvents = 5000;
constexpr double kEachMs = 350;  // long enough for a camera, short enough that a missed one comes round soon

/// Dark on light whatever the theme: readers want it so.
void draw_code(Ui& ui, const Code& code, Rect box) {
  ImDrawList& list = pen(ui);
  constexpr ImU32 kLight = IM_COL32_WHITE, kDark = IM_COL32(0, 0, 0, 255);
  list.AddRectFilled(top_left(box), bottom_right(box), kLight);
  const float module = box.w / static_cast<float>(code.size + 2 * kQuietModules);
  const float left = box.x + (box.w - module * static_cast<float>(code.size)) / 2;
  const float top = box.y + (box.h - module * static_cast<float>(code.size)) / 2;
  for (int y = 0; y < code.size; ++y)
    for (int x = 0, end = 0; x < code.size; x = std::max(x + 1, end)) {
      if (!code.at(x, y)) continue;
      for (end = x + 1; end < code.size && code.at(end, y);) ++end;
      list.AddRectFilled({left + module * static_cast<float>(x), top + module * static_cast<float>(y)},
                         {left + module * static_cast<float>(end), top + module * static_cast<float>(y + 1)}, kDark);
    }
}

void code_picture(Context& context, ItemKey key, const std::string& text, std::string_view name, CodeLevel level) {
  Ui& ui = context.ui;
  const Result<Code> code = make_code(text, level);
  if (!code) return refusal(ui, key, frame_error_text(code.error(), voice_of(context)));
  const float side = std::min({ui.column.width, context.page.h - 160, 560.0F});
  const Rect row = take_box(ui, std::max(side, 120.0F));
  const Rect box{row.x + (row.w - row.h) / 2, row.y, row.h, row.h};
  draw_code(ui, *code, box);
  picture(ui, key, name, box);
}

/// How long it takes, before it begins, and the file that is quicker.
void many_codes(Context& context, ShopMemory::Codes& kept) {
  Ui& ui = context.ui;
  if (kept.pieces.empty()) {
    refusal(ui, "codes.many", context.say(Msg::kCodesTooMany));
  } else {
    const auto minutes = static_cast<int>(kEachMs * static_cast<double>(kept.pieces.size()) / 60000) + 1;
    body(ui, "codes.many",
         say_count(Msg::kCodesMany, ui.language, minutes, {{"all", std::to_string(kept.pieces.size())}}));
  }
  if (button(ui, "codes.file", context.say(Msg::kCodesFile), Weight::kPrimary))
    context.platform.share_file(log_file_name(context, "log"), "text/plain", kept.bytes);
  if (!kept.pieces.empty() && button(ui, "codes.begin", context.say(Msg::kCodesBegin))) kept.begun = true;
}

void codes_screen(Context& context) {
  shop_page(context, "codes.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    ShopMemory::Codes& kept = context.shop_memory.codes;
    if (!kept.begun) return many_codes(context, kept);
    if (ui.now_ms - kept.since_ms >= kEachMs) {
      kept.shown = (kept.shown + 1) % kept.pieces.size();
      kept.since_ms = ui.now_ms;
    }
    if (kept.pieces.size() > 1) ui.memory.wake_at(kept.since_ms + kEachMs);
    const std::string which = say(Msg::kCodesCount, ui.language,
                                  {{"n", std::to_string(kept.shown + 1)}, {"all", std::to_string(kept.pieces.size())}});
    code_picture(context, "codes.code", kept.pieces[kept.shown], which, CodeLevel::kLow);
    note(ui, "codes.count", which);
    body(ui, "codes.how", context.say(Msg::kCodesHow));
    if (kept.turn != context.shop.turn()) note(ui, "codes.newer", context.say(Msg::kCodesNewer));
  });
}

/// The code for a timber's own label: it opens its page in the shop.
void label_screen(Context& context) {
  shop_page(context, "label.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const std::string text = label_text({std::string(context.shop.book()), context.subject});
    code_picture(context, "label.code", text, context.subject, CodeLevel::kHigh);
    answer(ui, "label.mark", context.say(Msg::kShopLabel), context.subject);
    const Result<Code> code = make_code(text, CodeLevel::kHigh);
    if (code && button(ui, "label.share", context.say(Msg::kLabelShare)))
      context.platform.share_file(context.subject + ".svg", "image/svg+xml", code_svg(*code, 1.0, context.subject));
  });
}

void open_label(Context& context, const TimberLabel& label) {
  context.platform.end_scan();
  if (label.book != context.shop.book()) return context.toast(std::string(context.say(Msg::kLabelOtherBook)), false);
  context.pages.push(shop_timber_page(label.mark));
}

/// A whole file from its codes is looked at.
void receive_whole(Context& context) {
  const auto bytes = context.pieces.take_whole();
  if (!bytes) return;
  context.platform.end_scan();
  if (!*bytes) return context.toast(frame_error_text(bytes->error(), voice_of(context)), false);
  context.shop_memory.scan.received = **bytes;
  context.pages.push(shop_receive_page());
}

}  // namespace

void take_scans(Context& context) {
  bool ended = false;
  for (const PlatformEvent& event : std::exchange(context.shop_memory.scan.events, {})) {
    if (event.kind == EventKind::kScanEnded) {
      ended = true;
      if (event.text.empty()) continue;
      context.toast(std::string(context.say(event.text == "denied" ? Msg::kScanDenied : Msg::kScanNone)), false);
    } else if (const Result<TimberLabel> label = read_label(event.text)) {
      // One that hangs in the picture does not end the reading of a log.
      if (context.pieces.sets().empty()) open_label(context, *label);
    } else {
      context.pieces.add(event.text);
    }
  }
  receive_whole(context);
  context.pieces.keep(context.ui.now_ms, ended);
}

void show_codes(Context& context, std::string bytes, std::size_t events) {
  Result<std::vector<std::string>> pieces = make_chunks(bytes);
  ShopMemory::Codes& kept = context.shop_memory.codes;
  kept = {std::move(bytes), context.shop.turn(), pieces ? std::move(*pieces) : std::vector<std::string>{}};
  kept.begun = pieces.has_value() && events <= kManyEvents;
  kept.since_ms = context.ui.now_ms;
  context.pages.push({"shop.codes", Msg::kCodesTitle, codes_screen});
}

Page shop_label_page(std::string mark) { return {"shop.label", Msg::kShopLabel, label_screen, std::move(mark)}; }

}  // namespace bentbook::screens
