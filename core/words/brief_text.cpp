#include "words/brief_text.h"

#include <algorithm>
#include <vector>

#include "numeric/index.h"
#include "raising/holding.h"
#include "raising/lifting/pick.h"
#include "raising/order.h"
#include "text/utf8.h"
#include "words/raise_text.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

constexpr std::size_t kName = 34, kWeight = 8, kUp = 24;  ///< columns

/// Filled up with blanks, at least one.
std::string column(std::string_view words, std::size_t columns) {
  std::string out(words);
  for (std::size_t n = count_characters(words); n < columns; ++n) out += ' ';
  return out + ' ';
}

class Brief {
 public:
  Brief(const Book& book, const Frame& frame, const Voice& voice)
      : book_(book), frame_(frame), voice_(voice), bodies_(pick_bodies(frame, book.raising)) {}

  std::string whole(const OrderCheck* check) {
    const RaisingPlan& plan = book_.raising;
    plain(book_.title.empty() ? std::string(said(Msg::kBriefTitlePlain))
                              : say(Msg::kBriefTitle, voice_.language, shown_name(book_.title, voice_.language)));
    plain(checked_text(check, voice_.language));
    plain(said(Msg::kRaisingCaution));
    plain(say(Msg::kRaiseStopWind, voice_.language, say_kept(plan.loads.wind_mph, KeptIn::kMph, voice_)));
    for (const std::string& words : whole_raising_texts(plan, voice_)) plain(words);
    if (const double high = highest_by_hand(); high > 0) plain(pick_note_text({PickNoteId::kUpHigh, high}, voice_));
    out_ += '\n';
    for (std::size_t s = 0; s < plan.steps.size(); ++s) step(s, check);
    const std::vector<TemporaryTime> times = temporary_times(frame_, plan);
    if (times.empty()) return std::move(out_);
    out_ += '\n';
    plain(say(Msg::kBriefTemporaries, voice_.language, std::to_string(most_temporaries_up(plan))));
    for (const TemporaryTime& time : times) out_ += wrapped("  ", temporary_time_text(time, frame_, plan, voice_));
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string_view said(Msg msg) const { return text(msg, voice_.language); }
  void plain(std::string_view words) { out_ += wrapped("", words); }

  /// How far up what hands set comes to lie, inches; 0: nothing does where they do not reach.
  [[nodiscard]] double highest_by_hand() const {
    double high = 0;
    for (const RaisingStep& step : book_.raising.steps)
      for (const PickNote& note : pick_of_step(frame_, book_.raising, bodies_, step).notes)
        if (note.id == PickNoteId::kUpHigh) high = std::max(high, note.value);
    return high;
  }

  void step(std::size_t s, const OrderCheck* check) {
    const RaisingStep& step = book_.raising.steps[s];
    const std::string number = std::to_string(s + 1);
    std::string line = std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "  ";
    const std::string name = step_name(step, frame_, voice_.language);
    line += column(name, kName);
    if (count_characters(name) > kName) {
      out_ += line.substr(0, line.find_last_not_of(' ') + 1) + '\n';
      line = std::string(kName + 6, ' ');
    }
    const std::vector<int> timbers = timbers_of(frame_, step.marks);
    if (!timbers.empty()) {
      const Pick pick = pick_of_step(frame_, book_.raising, bodies_, step);
      std::vector<double> parts;
      parts.reserve(timbers.size());
      for (const int t : timbers) parts.push_back(bodies_[at(t)].weight_lb);
      line += column(say_sum(parts, voice_), kWeight) + column(goes_up_text(pick, voice_), kUp);
    }
    line += temporaries_text(step);
    out_ += line.substr(0, line.find_last_not_of(' ') + 1) + '\n';
    if (check == nullptr) return;
    for (const OrderFault& fault : check->faults)
      if (fault.step == static_cast<int>(s)) out_ += wrapped("   ! ", order_fault_text(fault, voice_));
  }

  const Book& book_;
  const Frame& frame_;
  const Voice& voice_;
  std::vector<PickBody> bodies_;
  std::string out_;
};

}  // namespace

std::string raising_brief(const Book& book, const Frame& frame, const Voice& voice, const OrderCheck* check) {
  return Brief(book, frame, voice).whole(check);
}

std::string temporary_time_text(const TemporaryTime& time, const Frame& frame, const RaisingPlan& plan,
                                const Voice& voice) {
  const Temporary& temporary = plan.temporaries[at(time.temporary)];
  Voice stick = voice;  // the next whole inch or millimetre reaches
  stick.lengths.denominator = 1;
  stick.lengths.decimals = stick.lengths.form == LengthForm::kMm ? 0 : 3;
  return say(Msg::kBriefTemporary, voice.language,
             {{"where", temporary_text(temporary, frame, voice)},
              {"length", say_length_at_least(Length::from_inches(time.length), stick)},
              {"thickness", say_near(temporary.thickness, voice)},
              {"from", std::to_string(time.from + 1)},
              {"to", time.to < 0 ? std::string("-") : std::to_string(time.to + 1)}});
}

}  // namespace bentbook
