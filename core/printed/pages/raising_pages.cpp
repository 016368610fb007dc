#include "printed/pages/raising_pages.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "printed/flow.h"
#include "printed/pages/raising_picture.h"
#include "printed/pages/raising_rows.h"
#include "raising/check.h"
#include "raising/holding.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "raising/order.h"
#include "words/brief_text.h"
#include "words/frame_words.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

using paper::Align;

constexpr int kPicturesAcross = 4;
constexpr double kPictureGap = 5, kPictureHigh = 32;  // mm

class RaisingPages {
 public:
  RaisingPages(const Book& book, const Frame& frame, const PrintOptions& options, const Voice& voice)
      : plan_(book.raising),
        frame_(frame),
        check_(options.check),
        voice_(voice),
        flow_(options, caution_foot({Msg::kRaisingCaution}, voice.language, room_of(options.page).width())) {}

  paper::Document all() {
    head();
    if (!plan_.steps.empty()) {
      steps();
      temporaries();
      pictures();
    }
    loads();
    stacks();
    return flow_.finished();
  }

 private:
  [[nodiscard]] std::string said(Msg msg) const { return std::string(text(msg, voice_.language)); }

  void head() {
    flow_.title(said(plan_.steps.empty() ? Msg::kRaiseTitlePlain : Msg::kBriefTitlePlain));
    if (plan_.steps.empty()) return flow_.words(said(Msg::kRaiseNoSteps), true);
    flow_.words(std::string(checked_text(check_, voice_.language)), true);
    flow_.words(say(Msg::kRaiseStopWind, voice_.language, say_kept(plan_.loads.wind_mph, KeptIn::kMph, voice_)), true);
    flow_.words(said(Msg::kStandingNotForNight));
    for (const std::string& words : whole_raising_texts(plan_, voice_)) flow_.words(words);
    if (check_ == nullptr) return;
    for (const OrderFault& fault : check_->faults)
      if (fault.step < 0) flow_.words(order_fault_text(fault, voice_), true);
    if (!check_->left_out.empty())
      flow_.words(say(Msg::kRaiseLeftOut, voice_.language, marks_text(frame_, check_->left_out)), true);
  }

  void steps() {
    const std::vector<PickBody> bodies = pick_bodies(frame_, plan_);
    std::vector<TableRow> rows;
    rows.reserve(plan_.steps.size());
    for (std::size_t s = 0; s < plan_.steps.size(); ++s) {
      const RaisingStep& step = plan_.steps[s];
      TableRow row{
          std::to_string(s + 1), std::to_string(step.day), step_name(step, frame_, voice_.language), {}, {}, {}};
      const std::vector<int> timbers = timbers_of(frame_, step.marks);
      if (!timbers.empty()) {
        std::vector<double> parts;
        parts.reserve(timbers.size());
        for (const int t : timbers) parts.push_back(bodies[at(t)].weight_lb);
        row[3] = say_sum(parts, voice_);
        row[4] = goes_up_text(pick_of_step(frame_, plan_, bodies, step), voice_);
      }
      row[5] = temporaries_text(step);
      if (check_ != nullptr)
        for (const OrderFault& fault : check_->faults)
          if (fault.step == static_cast<int>(s)) row[2] += "\n! " + order_fault_text(fault, voice_);
      rows.push_back(std::move(row));
    }
    flow_.gap(1.5);
    flow_.table({{said(Msg::kStepNumber), Align::kRight, false, true},
                 {said(Msg::kPaperDay), Align::kRight},
                 {said(Msg::kPaperComes), Align::kLeft, true, true},
                 {said(Msg::kSheetWeight), Align::kRight},
                 {said(Msg::kPaperGoesUp)},
                 {said(Msg::kPaperBraces)}},
                alike_as_one(frame_, plan_.steps, rows, voice_.language));
  }

  void temporaries() {
    const std::vector<TemporaryTime> times = temporary_times(frame_, plan_);
    if (times.empty()) return;
    flow_.heading(say(Msg::kBriefTemporaries, voice_.language, std::to_string(most_temporaries_up(plan_))));
    for (const TemporaryTime& time : times) flow_.words(temporary_time_text(time, frame_, plan_, voice_));
  }

  /// Rows of pictures, each with its steps' numbers and what comes.
  void pictures() {
    const std::vector<PicturedSteps> shown = pictured_steps(frame_, plan_);
    const double width = (flow_.width() - kPictureGap * (kPicturesAcross - 1)) / kPicturesAcross;
    const RaisingPicture picture(frame_, width, kPictureHigh);
    flow_.heading(said(Msg::kPaperPictures));
    for (std::size_t i = 0; i < shown.size(); i += kPicturesAcross) {
      PagePart row;
      double words = 0;
      for (std::size_t n = i; n < std::min(shown.size(), i + kPicturesAcross); ++n) {
        const double x = static_cast<double>(n - i) * (width + kPictureGap);
        words = std::max(words, paper::put_lines(row.drawn, {x, 0}, caption(shown[n]), {kBodyLetters, true}, width));
      }
      for (std::size_t n = i; n < std::min(shown.size(), i + kPicturesAcross); ++n) {
        std::vector<int> comes;
        for (std::size_t s = shown[n].first; s <= shown[n].last; ++s)
          for (const int timber : timbers_of(frame_, marks_in(plan_.steps[s]))) comes.push_back(timber);
        const std::vector<int> stands = standing_before(frame_, plan_, shown[n].first);
        const double x = static_cast<double>(n - i) * (width + kPictureGap);
        paper::put(row.drawn, picture.of(stands, comes), {x, words + 1});
      }
      row.height = words + kPictureHigh + 4;
      flow_.add(std::move(row));
    }
  }
  [[nodiscard]] std::string caption(const PicturedSteps& steps) const {
    std::string out = std::to_string(steps.first + 1);
    if (steps.last == steps.first) return out + ". " + step_name(plan_.steps[steps.first], frame_, voice_.language);
    const std::vector<int> some = timbers_of(frame_, plan_.steps[steps.first].marks);
    out += "–" + std::to_string(steps.last + 1) + ". ";
    return out + std::string(kind_name(frame_.timbers[at(some.front())].kind, voice_.language));
  }

  /// Timbers that lie on each other and are alike are one row, the lowest first.
  void stack_table(const std::vector<LoadedTimber>& timbers) {
    std::vector<TableRow> rows;
    const LoadedTimber* before = nullptr;
    int count = 0;
    for (const LoadedTimber& t : timbers) {
      const Timber& own = frame_.timbers[at(t.timber)];
      const bool same = before != nullptr && before->step == t.step && before->too_long == t.too_long &&
                        before->too_heavy == t.too_heavy &&
                        say_inches(before->length, voice_) == say_inches(t.length, voice_) &&
                        say_wet(before->weight_lb, voice_) == say_wet(t.weight_lb, voice_);
      before = &t;
      if (same) {
        rows.back()[1] += ", " + own.mark;
        rows.back()[0] = std::to_string(++count);
        continue;
      }
      count = 1;
      rows.push_back(
          {"1", own.mark, say_inches(t.length, voice_), say_wet(t.weight_lb, voice_),
           t.step < 0 ? said(Msg::kRaiseNoStep) : say(Msg::kRaiseOfStep, voice_.language, std::to_string(t.step + 1))});
      if (t.too_long) rows.back()[4] += "\n" + said(Msg::kRaiseTooLong);
      if (t.too_heavy) rows.back()[4] += "\n" + said(Msg::kRaiseTooHeavy);
    }
    flow_.table({{said(Msg::kStockCount), Align::kRight},
                 {said(Msg::kPaperMarks), Align::kLeft, true, true},
                 {said(Msg::kPaperLength), Align::kRight},
                 {said(Msg::kPaperWeightEach), Align::kRight},
                 {said(Msg::kPaperWanted)}},
                rows);
  }

  void loads() {
    const std::vector<TruckLoad> loads = truck_loads(frame_, plan_);
    if (loads.empty()) return;
    flow_.turn();
    flow_.title(said(Msg::kRaiseLoads));
    int number = 0;
    for (const TruckLoad& load : loads) {
      flow_.heading(say(Msg::kRaiseLoad, voice_.language,
                        {{"number", std::to_string(++number)},
                         {"weight", say_wet(weights_of(load.timbers), voice_)},
                         {"longest", say_inches(load.longest, voice_)}}));
      stack_table(load.timbers);
    }
  }

  void stacks() {
    if (plan_.steps.empty()) return;  // then a stack says no more than a load
    flow_.turn();
    flow_.title(said(Msg::kRaiseStacks));
    for (const LayDownStack& stack : lay_down(frame_, plan_)) {
      const std::string weight = say_wet(weights_of(stack.timbers), voice_);
      flow_.heading(stack.day > 0 ? say(Msg::kRaiseStack, voice_.language,
                                        {{"day", std::to_string(stack.day)}, {"weight", weight}})
                                  : say(Msg::kRaiseStackRest, voice_.language, {{"weight", weight}}));
      stack_table(stack.timbers);
    }
  }

  const RaisingPlan& plan_;
  const Frame& frame_;
  const OrderCheck* check_;
  const Voice& voice_;
  PageFlow flow_;
};

}  // namespace

Result<paper::Document> print_raising(const Book& book, const BookModel& model, const PrintOptions& options,
                                      const Voice& voice) {
  if (!*model.frame) return tl::unexpected(model.frame->error());
  if ((**model.frame).timbers.empty()) return fail(ErrorCode::kEmpty, "paper");
  return RaisingPages(book, **model.frame, options, voice).all();
}

}  // namespace bentbook
