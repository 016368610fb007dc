#include "screens/frame/plan_view.h"

#include <string>
#include <utility>

#include "frame/drawings/plan_drawing.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// The field that a figure of plan_drawing.h shows.
std::string path_of(std::string_view figure) {
  constexpr std::string_view kBay = "bay:";
  if (!figure.starts_with(kBay)) return "frame." + std::string(figure);
  return "frame.bays.@" + std::string(figure.substr(kBay.size())) + ".width";
}

}  // namespace

bentbook::FigureText plan_figure(const ShownFrame& shown, std::string_view key, const Voice& voice) {
  const auto name = [&](Msg msg) { return std::string(text(msg, voice.language)); };
  if (key == "length") return {say_length(outside_length(shown.plan()), voice), name(Msg::kFrameLength)};
  if (key.starts_with("in_12")) return pitch_run_figure(voice);
  if (key == "peak_top") {
    std::string said = say_inches(shown.frame()->ridge_z, voice);
    std::string named = say(Msg::kAsidePeak, voice.language, said);
    return {std::move(said), name(Msg::kFramePeakTop), std::move(named)};
  }
  const std::string path = path_of(key);
  const auto field = field_at(shown.book, path);
  if (field && field->kind() == FieldKind::kSlope) return pitch_figure(std::get<Slope>(field->value), voice);
  return {field ? field_text(voice, *field) : std::string{}, frame_field_name(path, voice.language)};
}

void plan_view(Context& context, const ShownFrame& shown, ItemKey prefix, Msg name, float height,
               const draw::Drawing& drawing) {
  const Voice voice = voice_of(context);
  const auto words = [&](std::string_view key) {
    bentbook::FigureText figure = plan_figure(shown, key, voice);
    // Large type has no room for the word beside the number.
    if (key == "peak_top" && !has_usual_type(context)) figure.drawn.clear();
    return figure;
  };
  const auto tapped = drawing_form(context, prefix, context.say(name), drawing_height(context, height), drawing, words);
  if (!tapped) return;
  const std::string path = path_of(*tapped);
  open_field(context, path, frame_field_name(path, context.ui.language));
}

}  // namespace bentbook::screens
