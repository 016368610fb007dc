#include "screens/printing/printing.h"

#include <array>
#include <memory>
#include <utility>

#include "screens/form/task_button.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"
#include "words/shop_words.h"

namespace bentbook::screens {
namespace {

constexpr std::array kWhat = {Msg::kPrintSheets, Msg::kPrintPatterns, Msg::kPrintLabels, Msg::kPrintLists,
                              Msg::kPrintRaising};

paper::PageSize page_of(const Context& context) {
  if (context.printing.page) return *context.printing.page;
  return is_metric(voice_of(context).lengths.form) ? paper::PageSize::kA4 : paper::PageSize::kLetter;
}

/// Lists and the raising are of the whole book.
bool of_timbers(PrintedKind what) { return what <= PrintedKind::kLabels; }

void options_part(Context& context) {
  PrintingMemory& memory = context.printing;
  std::array<std::string_view, kWhat.size()> names;
  for (std::size_t i = 0; i < kWhat.size(); ++i) names[i] = context.say(kWhat[i]);
  if (const auto what = choice(context.ui, "paper.what", context.say(Msg::kPrintWhat), names,
                               static_cast<int>(memory.what)))
    memory.what = static_cast<PrintedKind>(*what);
  if (!context.subject.empty() && of_timbers(memory.what))
    if (const auto all = choice(context.ui, "paper.timbers", context.say(Msg::kTimbersTitle),
                                {context.subject, context.say(Msg::kPrintAll)}, memory.all ? 1 : 0))
      memory.all = *all == 1;
  if (const auto page =
          choice(context.ui, "paper.page", context.say(Msg::kPrintPage), {"A4", context.say(Msg::kPrintLetter)},
                 static_cast<int>(page_of(context))))
    memory.page = static_cast<paper::PageSize>(*page);
}

PrintOptions options_of(const Context& context) {
  const PrintingMemory& memory = context.printing;
  PrintOptions options;
  options.what = memory.what;
  options.page = page_of(context);
  if (!context.subject.empty() && !memory.all && of_timbers(memory.what)) options.marks = {context.subject};
  const std::int64_t now = context.platform.wall_clock_ms();
  options.day = date_text(now, context.platform.clock_ahead_minutes(now));
  return options;
}

/// The pages are laid out here and now; what takes long is to write them as a PDF.
void begin(Context& context) {
  PrintingMemory& memory = context.printing;
  const PrintOptions options = options_of(context);
  Result<paper::Document> pages = print(context.desk.book(), context.desk.model(), options, voice_of(context));
  if (!pages) return context.toast(frame_error_text(pages.error(), voice_of(context)), false);
  memory.name = std::string(shown_name(context.desk.title(), context.ui.language)) + " " +
                (options.marks.empty() ? std::string{} : options.marks.front() + " ") +
                std::string(context.say(kWhat[static_cast<std::size_t>(options.what)])) + ".pdf";
  const PaperRequest request{std::make_shared<const paper::Document>(std::move(*pages))};
  memory.file.turn_to(fingerprint_of(request));
  memory.file.ask(context.platform, TaskKind::kPaper, request);
}

void printing_screen(Context& context) {
  frame_page(context, "paper.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    options_part(context);
    Asked<PaperFile>& file = context.printing.file;
    const TaskPressed pressed =
        task_button(context, "paper.make", context.say(Msg::kPrintMake), file.per_mille());
    if (pressed == TaskPressed::kStart) begin(context);
    if (pressed == TaskPressed::kStop) file.cancel(context.platform);
    note(context.ui, "paper.note", context.say(Msg::kPrintNote));
    if (!file.ended()) return;
    if (const Error* failure = file.failure()) context.toast(task_error_text(context, *failure), false);
    if (const PaperFile* made = file.answer())
      context.platform.share_file(context.printing.name, "application/pdf", made->pdf);
    file.forget();
  });
}

}  // namespace

Page printing_page(std::string mark) {
  return {"paper", Msg::kPrintTitle, printing_screen, std::move(mark)};
}

}  // namespace bentbook::screens
