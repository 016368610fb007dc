#include "tasks/task.h"

#include <rapidjson/document.h>

#include "book/json_text.h"
#include "book/places.h"
#include "paper/svg.h"
#include "roof/pattern.h"
#include "words/figures.h"

namespace bentbook {
namespace {

struct PatternRequest {
  std::string_view task, language = "en";
  bool right = false;
  int denominator = 16;
  std::string rafter;
};

std::string_view text_of(const rapidjson::Document& document, const char* key, std::string_view usual) {
  const rapidjson::Value* value = json_member(document, key);
  if (!value || !value->IsString()) return usual;
  return {value->GetString(), value->GetStringLength()};
}

int division_of(const rapidjson::Document& document) {
  const rapidjson::Value* value = json_member(document, "denominator");
  if (!value || !value->IsInt()) return 16;
  const int d = value->GetInt();
  return d == 8 || d == 32 || d == 64 ? d : 16;
}

Result<std::string> pattern(const PatternRequest& request, const Progress& progress) {
  const auto input = read_rafter(request.rafter);
  if (!input) return tl::unexpected(input.error());
  const auto pair = solve_rafters(*input);
  if (!pair) return tl::unexpected(pair.error());
  const Side side = request.right ? Side::kRight : Side::kLeft;
  const draw::Drawing drawing = pattern_drawing(*input, request.right ? pair->right : pair->left, side);
  Voice voice;
  voice.language = language_of(request.language);
  voice.lengths.denominator = request.denominator;
  const SvgSheet sheet{1, std::string(text(Msg::kFieldRafter, voice.language)), language_tag(voice.language)};
  std::string svg = write_svg(
      drawing, sheet,
      [&](std::string_view key) {
        const FigureText figure = rafter_figure(key, *input, *pair, voice);
        return key.starts_with("marks_") ? figure.name + " " + figure.text : figure.text;
      },
      progress);
  if (svg.empty()) return fail(ErrorCode::kEmpty, "cancelled");
  return svg;
}

}  // namespace

Result<std::string> run_task(std::string_view request, const Progress& progress) {
  rapidjson::Document document;
  if (auto ok = parse_json_object(document, request, "task"); !ok) return tl::unexpected(ok.error());
  PatternRequest r;
  r.task = text_of(document, "task", "");
  if (r.task != "pattern") return fail(ErrorCode::kUnknownOption, "task");
  r.language = text_of(document, "language", "en");
  r.right = text_of(document, "side", "left") == "right";
  r.denominator = division_of(document);
  const rapidjson::Value* rafter = json_member(document, "rafter");
  if (!rafter) return fail(ErrorCode::kMissing, "rafter");
  r.rafter = json_text(*rafter);
  return pattern(r, progress);
}

std::string pattern_request(std::string_view rafter_json, bool right, std::string_view language_tag, int denominator) {
  std::string out = R"({"task":"pattern","side":")";
  out += right ? "right" : "left";
  out += R"(","language":")";
  out += bentbook::language_tag(language_of(language_tag));
  out += R"(","denominator":)" + std::to_string(denominator) + R"(,"rafter":)";
  out += rafter_json;
  return out + "}";
}

}  // namespace bentbook
