#include "tasks/pattern_task.h"

#include "paper/svg.h"
#include "words/figures.h"

namespace bentbook {

Result<PatternSheet> run_pattern(const PatternRequest& request, const Progress& progress) {
  const auto pair = solve_rafters(request.rafter);
  if (!pair) return tl::unexpected(pair.error());
  const Rafter& rafter = request.side == Side::kRight ? pair->right : pair->left;
  const draw::Drawing drawing = pattern_drawing(request.rafter, rafter, request.side);
  Voice voice;
  voice.language = request.language;
  voice.lengths.denominator = request.denominator;
  const SvgSheet sheet{1, std::string(text(Msg::kFieldRafter, voice.language)), language_tag(voice.language)};
  PatternSheet out;
  out.svg = write_svg(
      drawing, sheet,
      [&](std::string_view key) {
        const FigureText figure = rafter_figure(key, request.rafter, *pair, voice);
        return key.starts_with("marks_") ? figure.name + " " + figure.text : figure.text;
      },
      progress);
  if (out.svg.empty()) return fail(ErrorCode::kEmpty, "cancelled");
  return out;
}

}  // namespace bentbook
