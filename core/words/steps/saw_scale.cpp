#include "words/steps/saw_scale.h"

#include "cut/setting.h"

namespace bentbook {

ScaleWords scale_words(const Saw& saw, std::int64_t hundredths, const Voice& voice) {
  const Angle exact{(hundredths < 0 ? -hundredths : hundredths) * (Angle::kPerDegree / 100)};
  // Which of the two marks is nearer does not hang on the depth.
  const Result<Graduations> marks = graduations(saw, Length::inches(1), exact);
  if (saw.kind == SawKind::kHand || !marks) return {say_angle(exact, voice), {}};
  return {say_reading(marks->best().reads, voice),
          marks->on_mark ? std::string{} : say(Msg::kSawExactly, voice.language, say_angle(exact, voice, 2))};
}

Msg swing_name(SawKind saw) { return saw == SawKind::kChainsawBar ? Msg::kStepNumberTable : Msg::kStepNumberGuide; }

}  // namespace bentbook
