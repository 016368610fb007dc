#include "printed/pages/list_csv.h"

#include "frame/facts.h"
#include "frame/keys.h"
#include "frame/list/hardware.h"
#include "model/shop_model.h"
#include "numeric/index.h"
#include "printed/pages/list_rows.h"
#include "stock/stock_csv.h"
#include "text/csv.h"

namespace bentbook {
namespace {

std::string inches_cell(double inches) {
  return csv::quoted(print_length(Length::from_inches(inches), {LengthForm::kInchFraction, 64, 0}, Marks::kAscii).text);
}

std::string cut_csv(const Frame& frame, const Voice& voice) {
  std::string out = "mark,kind,breadth,depth,species,length,count,alike,weight_lb,stock\r\n";
  for (const CutRow& row : cut_rows(frame)) {
    const Timber& timber = frame.timbers[at(row.timber)];
    const TimberFacts facts = facts_of(timber, stock_step(voice));
    std::string alike;
    for (const int t : row.timbers)
      if (t != row.timber) alike += (alike.empty() ? "" : " ") + frame.timbers[at(t)].mark;
    for (const std::string& cell :
         {csv::quoted(csv::guarded(timber.mark)), std::string(keys::word(keys::kTimberKind, timber.kind)),
          inches_cell(timber.wood.nominal.breadth.in()), inches_cell(timber.wood.nominal.depth.in()),
          csv::quoted(csv::guarded(timber.species.name)), inches_cell(timber.length),
          std::to_string(row.timbers.size()), csv::quoted(csv::guarded(alike)), print_fixed(facts.weight_lb, 1)})
      out += cell + ',';
    out += inches_cell(facts.stock.in()) + "\r\n";
  }
  return out;
}

Result<std::string> settings_csv(const Book& book, const BookModel& model, const Voice& voice) {
  std::string out = "workplace,table_deg,tilt_deg,stop,mark,step\r\n";
  const auto work = work_of(book, model, {});
  if (!work) return tl::unexpected(work.error());
  for (const SettingRow& row : setting_rows(*work, voice))
    for (const WaitingCut& cut : row.cuts) {
      const TimberWork& on = (*work)[at(cut.work)];
      const bool set = row.place == Workplace::kSaw && !row.saw.along;
      const SawSetup& setup = row.saw.setup;
      out += std::string(keys::word(kWorkplaceWords, row.place)) + ',';
      out += (set ? print_fixed(static_cast<double>(setup.table) / 100, 2) : "") + ',';
      out += (set ? print_fixed(static_cast<double>(setup.tilt) / 100, 2) : "") + ',';
      out += (set && setup.stop != 0 ? inches_cell(static_cast<double>(setup.stop) / 64) : "") + ',';
      out += csv::quoted(csv::guarded((**model.frame).timbers[at(on.timber)].mark)) + ',';
      out += csv::quoted(csv::guarded(on.steps[at(cut.step)].id)) + "\r\n";
    }
  return out;
}

}  // namespace

Result<std::string> list_csv(const Book& book, const BookModel& model, const PrintOptions& options,
                             const Voice& voice) {
  if (!*model.frame) return tl::unexpected(model.frame->error());
  if (options.lists.size() > 1) return fail(ErrorCode::kConflict, "list");
  const Frame& frame = **model.frame;
  switch (options.lists.empty() ? PrintedList::kCut : options.lists.front()) {
    case PrintedList::kHardware:
      return write_hardware_csv(hardware_of(frame));
    case PrintedList::kSettings:
      return settings_csv(book, model, voice);
    case PrintedList::kOrder:
      return write_order_rows(plan_stock(pieces_of(frame), book.stock));
    case PrintedList::kPlan:
      return write_cutting_plan(plan_stock(pieces_of(frame), book.stock));
    case PrintedList::kCut:
      break;
  }
  return cut_csv(frame, voice);
}

}  // namespace bentbook
