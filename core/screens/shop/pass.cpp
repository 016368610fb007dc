#include "screens/shop/pass.h"

#include <string>

#include "screens/shop/codes.h"
#include "screens/shop/form.h"
#include "shop/log/log_file.h"
#include "shop/log/seen.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kPlain = "text/plain";

void pass_screen(Context& context) {
  shop_page(context, "pass.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const Log* log = context.shop.whole_log();
    if (log == nullptr) return note(ui, "pass.reading", context.say(Msg::kShopReading));
    fact(ui, "pass.events", context.say(Msg::kShopEvents), std::to_string(log->events.size()), true);
    heading(ui, "pass.send", context.say(Msg::kPassSend));
    if (button(ui, "pass.share", context.say(Msg::kPassShare), Weight::kPrimary))
      context.platform.share_file(log_file_name(context, "log"), std::string(kPlain), write_log(*log));
    if (button(ui, "pass.codes", context.say(Msg::kPassCodes)))
      show_codes(context, write_log(*log), log->events.size());
    heading(ui, "pass.receive", context.say(Msg::kPassReceive));
    if (button(ui, "pass.open", context.say(Msg::kPassOpen))) {
      context.shop_memory.scan.received.clear();
      context.platform.open_file();
    }
    if (button(ui, "pass.scan", context.say(Msg::kPassScan))) context.platform.begin_scan();
    // Of several sets the one that was begun last.
    if (const std::vector<Chunks>& sets = context.pieces.sets(); !sets.empty()) {
      const Chunks& chunks = sets.back();
      note(ui, "pass.pieces",
           say(Msg::kCodesGot, ui.language,
               {{"n", std::to_string(chunks.count())}, {"all", std::to_string(chunks.total)}}));
    }
    heading(ui, "pass.lack", context.say(Msg::kPassLack));
    body(ui, "pass.lack_note", context.say(Msg::kPassLackNote));
    if (button(ui, "pass.seen", context.say(Msg::kPassSeen)))
      context.platform.share_file(log_file_name(context, "has"), std::string(kPlain),
                                  write_seen(context.shop.book(), seen_of(*log)));
    if (button(ui, "pass.seen_codes", context.say(Msg::kPassSeenCodes)))
      show_codes(context, write_seen(context.shop.book(), seen_of(*log)), 0);
  });
}

void refused(Context& context, std::string_view why) {
  refusal(context.ui, "receive.refused", why);
  body(context.ui, "receive.left", context.say(Msg::kReceiveLeft));
}

void refused(Context& context, const Error& error) { refused(context, frame_error_text(error, voice_of(context))); }

/// Another phone's log: what is new in it, and taking it.
void receive_log(Context& context, const Log& own, std::string_view bytes) {
  Ui& ui = context.ui;
  const LogScan scan = scan_log(bytes);
  if (!scan.troubles.empty()) return refused(context, log_trouble_text(scan.troubles.front(), voice_of(context)));
  const Log* log = &scan.log;
  const Result<Log> both = merged(own, *log);
  if (!both) return refused(context, both.error());
  const std::size_t fresh = both->events.size() - own.events.size();
  fact(ui, "receive.events", context.say(Msg::kReceiveEvents), std::to_string(log->events.size()));
  fact(ui, "receive.new", context.say(Msg::kReceiveNew), std::to_string(fresh));
  if (fresh == 0) {
    context.pieces.forget(bytes);
    return body(ui, "receive.nothing", context.say(Msg::kReceiveNothing));
  }
  if (!button(ui, "receive.take", context.say(Msg::kReceiveTake), Weight::kPrimary)) return;
  if (const Result<int> taken = context.shop.merge(*log)) {
    context.pieces.forget(bytes);
    context.shop_memory.scan.received.clear();
    context.toast(say_count(Msg::kReceiveTaken, ui.language, *taken), false);
    context.pages.go(Place::kShop);
  }
}

/// What another phone has: what it lacks, and sending that.
void receive_seen(Context& context, const Log& own, std::string_view bytes) {
  Ui& ui = context.ui;
  const Result<SeenFile> seen = read_seen(bytes);
  if (!seen) return refused(context, seen.error());
  if (seen->book != own.book) return refused(context, {ErrorCode::kConflict, "book"});
  const Log lacking = events_beyond(own, seen->seen);
  context.pieces.forget(bytes);  // read, it is of no more use
  fact(ui, "receive.lacks", context.say(Msg::kReceiveLacks), std::to_string(lacking.events.size()));
  if (lacking.events.empty()) return body(ui, "receive.nothing", context.say(Msg::kReceiveHasAll));
  if (button(ui, "receive.send", context.say(Msg::kReceiveSend), Weight::kPrimary))
    context.platform.share_file(log_file_name(context, "log"), std::string(kPlain), write_log(lacking));
  if (button(ui, "receive.codes", context.say(Msg::kReceiveCodes)))
    show_codes(context, write_log(lacking), lacking.events.size());
}

void receive_screen(Context& context) {
  shop_page(context, "receive.page", [&](const ShownFrame&) {
    const std::string& scanned = context.shop_memory.scan.received;
    const std::string bytes = scanned.empty() ? context.file.text : scanned;
    const bool named = scanned.empty() && !context.file.key.empty();
    heading(context.ui, "receive.name", named ? context.file.key : context.say(Msg::kPassReceive));
    const Log* own = context.shop.whole_log();
    if (own == nullptr) return note(context.ui, "receive.reading", context.say(Msg::kShopReading));
    if (is_seen_file(bytes))
      receive_seen(context, *own, bytes);
    else
      receive_log(context, *own, bytes);
  });
}

}  // namespace

std::string log_file_name(const Context& context, std::string_view what) {
  return context.desk.title() + " " + std::string(what) + ".txt";
}

bool is_log_file(std::string_view bytes) { return bytes.starts_with("bentbook log ") || is_seen_file(bytes); }
bool is_seen_file(std::string_view bytes) { return bytes.starts_with("bentbook seen "); }

Page shop_pass_page() { return {"shop.pass", Msg::kPassTitle, pass_screen}; }
Page shop_receive_page() { return {"shop.receive", Msg::kReceiveTitle, receive_screen}; }

}  // namespace bentbook::screens
