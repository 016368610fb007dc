#include "screens/printing/printing.h"

#include <algorithm>
#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "printed/pages/labels.h"
#include "printed/pages/list_csv.h"
#include "screens/form/task_button.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"
#include "words/shop_words.h"

namespace bentbook::screens {
namespace {

constexpr std::array kWhat = {Msg::kPrintSheets, Msg::kPrintPatterns, Msg::kPrintLabels, Msg::kPrintLists,
                              Msg::kPlaceRaising};

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
  if (const auto what =
          choice(context.ui, "paper.what", context.say(Msg::kPrintWhat), names, static_cast<int>(memory.what)))
    memory.what = static_cast<PrintedKind>(*what);
  if (!context.subject.empty() && of_timbers(memory.what))
    if (const auto all = choice(context.ui, "paper.timbers", context.say(Msg::kPrintOf),
                                {context.subject, context.say(Msg::kPrintAll)}, memory.all ? 1 : 0))
      memory.all = *all == 1;
  if (const auto page = choice(context.ui, "paper.page", context.say(Msg::kPrintPage),
                               {"A4", context.say(Msg::kPrintLetter)}, static_cast<int>(page_of(context))))
    memory.page = static_cast<paper::PageSize>(*page);
}

/// Those of the page's size, plain paper first.
std::vector<const LabelSheet*> sheets_of(paper::PageSize page) {
  std::vector<const LabelSheet*> sheets = {find_label_sheet({}, page)};
  for (const LabelSheet& sheet : label_sheets())
    if (sheet.page == page && !sheet.cut) sheets.push_back(&sheet);
  return sheets;
}

void labels_part(Context& context) {
  std::vector<std::string> names;
  const std::vector<const LabelSheet*> sheets = sheets_of(page_of(context));
  names.reserve(sheets.size());
  for (const LabelSheet* sheet : sheets)
    names.push_back(sheet->cut ? std::string(context.say(Msg::kPrintCut))
                               : std::to_string(sheet->columns) + " × " + std::to_string(sheet->rows));
  const std::vector<std::string_view> shown(names.begin(), names.end());
  int& labels = context.printing.labels;
  labels = std::min(labels, static_cast<int>(sheets.size()) - 1);
  if (const auto chosen = choice(context.ui, "paper.labels", context.say(Msg::kPrintLabelSheet), shown, labels))
    labels = *chosen;
}

PrintOptions options_of(const Context& context) {
  const PrintingMemory& memory = context.printing;
  PrintOptions options;
  options.what = memory.what;
  options.page = page_of(context);
  if (!context.subject.empty() && !memory.all && of_timbers(memory.what)) options.marks = {context.subject};
  if (options.what == PrintedKind::kLabels)
    if (const LabelSheet* sheet = sheets_of(options.page)[static_cast<std::size_t>(memory.labels)]; !sheet->cut)
      options.label_sheet = sheet->key;
  if (options.what == PrintedKind::kRaising) options.check = context.raising.check().answer();
  const std::int64_t now = context.platform.wall_clock_ms();
  options.day = date_text(now, context.platform.clock_ahead_minutes(now));
  return options;
}

std::string file_name(const Context& context, std::string_view what, std::string_view kind) {
  return std::string(shown_name(context.desk.title(), context.ui.language)) + " " + std::string(what) +
         std::string(kind);
}

/// The pages are laid out here and now; what takes long is to write them as a PDF.
void begin(Context& context) {
  PrintingMemory& memory = context.printing;
  const PrintOptions options = options_of(context);
  Result<paper::Document> pages = print(context.desk.book(), context.desk.model(), options, voice_of(context));
  if (!pages) return context.toast(frame_error_text(pages.error(), voice_of(context)), false);
  const std::string of = options.marks.empty() ? std::string{} : options.marks.front() + " ";
  memory.name =
      file_name(context, of + std::string(context.say(kWhat[static_cast<std::size_t>(options.what)])), ".pdf");
  const PaperRequest request{std::make_shared<const paper::Document>(std::move(*pages))};
  memory.file.turn_to(fingerprint_of(request));
  memory.file.ask(context.platform, TaskKind::kPaper, request);
}

/// Of the timber that was come from.
std::vector<PatternFile> files_of(const Context& context, PatternForm form) {
  PrintOptions options;
  options.marks = {context.subject};
  return pattern_files(context.desk.book(), context.desk.model(), options, form, voice_of(context))
      .value_or(std::vector<PatternFile>{});
}

/// For a plotter, a router or a laser: a file a pattern.
void files_part(Context& context, const ShownFrame& shown) {
  PrintingMemory::Files& files = context.printing.files;
  if (files.of != shown.solved || files.mark != context.subject) {
    files = {shown.solved, context.subject, {}};
    const std::vector<PatternFile> made = files_of(context, PatternForm::kSvg);
    files.stems.reserve(made.size());
    for (const PatternFile& file : made) files.stems.push_back(file.name.substr(0, file.name.rfind('.')));
  }
  if (files.stems.empty()) return;
  heading(context.ui, "paper.files", context.say(Msg::kPrintFiles));
  const auto rows = [&](PatternForm form, const char* kind, const char* mime) {
    for (std::size_t i = 0; i < files.stems.size(); ++i) {
      const std::string name = files.stems[i] + kind;
      if (!list_row(context.ui, "paper.file." + name, name)) continue;
      const std::vector<PatternFile> made = files_of(context, form);
      if (i < made.size()) context.platform.share_file(made[i].name, mime, made[i].bytes);
    }
  };
  rows(PatternForm::kDxf, ".dxf", "image/vnd.dxf");
  rows(PatternForm::kSvg, ".svg", "image/svg+xml");
}

/// Each list for a spreadsheet.
void csv_part(Context& context) {
  constexpr std::array kLists = {Msg::kPaperCutList, Msg::kPaperOrder, Msg::kPaperPlan, Msg::kHardware,
                                 Msg::kPaperSettings};
  heading(context.ui, "paper.csv", context.say(Msg::kPrintCsv));
  for (std::size_t i = 0; i < kLists.size(); ++i) {
    const std::string_view name = context.say(kLists[i]);
    if (!list_row(context.ui, "paper.csv." + std::to_string(i), name)) continue;
    PrintOptions options = options_of(context);
    options.lists = {static_cast<PrintedList>(i)};
    const auto list = list_csv(context.desk.book(), context.desk.model(), options, voice_of(context));
    if (list)
      context.platform.share_file(file_name(context, name, ".csv"), "text/csv", *list);
    else
      context.toast(frame_error_text(list.error(), voice_of(context)), false);
  }
}

void printing_screen(Context& context) {
  frame_page(context, "paper.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    options_part(context);
    PrintingMemory& memory = context.printing;
    if (memory.what == PrintedKind::kLabels) labels_part(context);
    Asked<PaperFile>& file = memory.file;
    const TaskPressed pressed = task_button(context, "paper.make", context.say(Msg::kPrintMake), file.per_mille());
    if (pressed == TaskPressed::kStart) begin(context);
    if (pressed == TaskPressed::kStop) file.cancel(context.platform);
    note(context.ui, "paper.note", context.say(Msg::kPrintNote));
    if (memory.what == PrintedKind::kPatterns && !context.subject.empty() && !memory.all) files_part(context, shown);
    if (memory.what == PrintedKind::kLists) csv_part(context);
    if (!file.ended()) return;
    if (const Error* failure = file.failure()) context.toast(task_error_text(context, *failure), false);
    if (const PaperFile* made = file.answer()) context.platform.share_file(memory.name, "application/pdf", made->pdf);
    file.forget();
  });
}

}  // namespace

Page printing_page(std::string mark) { return {"paper", Msg::kPrintTitle, printing_screen, std::move(mark)}; }

}  // namespace bentbook::screens
