#include "screens/frame/joint_form.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

#include "book/book_edit.h"
#include "frame/drawings/joint_drawing.h"
#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "screens/form/drawn_card.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

struct ViewShown {
  const char* key;
  Msg name;
  float height;
};
ViewShown shown_as(JointView view) {
  switch (view) {
    case JointView::kSide:
      return {"joint.side", Msg::kJointViewSide, 340};
    case JointView::kEnd:
      return {"joint.end", Msg::kJointViewEnd, 250};
    case JointView::kMouth:
      break;
  }
  return {"joint.mouth", Msg::kJointViewMouth, 190};
}

std::string_view tool_name(ToolSetting setting, Language language) {
  const std::string_view word = keys::word(kToolWords, setting);
  const auto msg = find_msg("tool_" + std::string(word));
  return msg ? text(*msg, language) : word;
}

bool stands_aside(const draw::Drawing& drawing, std::string_view key) {
  return std::any_of(drawing.notes.begin(), drawing.notes.end(),
                     [&](const draw::Note& note) { return note.key == key; });
}

/// Of a count or a flag, or of a measure that stands beside the drawing and must say what it is.
std::string said_aside(std::string_view measure, const Field& field, const std::string& value, Language language) {
  if (field.kind() == FieldKind::kCount && measure != "one_in") {
    const Msg what = measure == "pegs"               ? Msg::kJointPegs
                     : measure == "temporary_screws" ? Msg::kJointScrews
                                                     : Msg::kJointPins;
    return say_count(what, language, std::get<std::int64_t>(field.value));
  }
  std::string id = "joint_aside_";
  for (const char c : measure) id += c == '.' ? '_' : c;
  const auto* length = std::get_if<Length>(&field.value);
  const auto* flag = std::get_if<bool>(&field.value);
  if ((length != nullptr && length->count == 0) || (flag != nullptr && !*flag))
    if (const auto none = find_msg(id + "_none")) return std::string(text(*none, language));
  const auto msg = find_msg(id);
  if (!msg) return value;
  return flag != nullptr ? std::string(text(*msg, language)) : say(*msg, language, value);
}

void tapped(Context& context, const JointSpot& spot, const std::string& measure) {
  const std::string path = spot.field + measure;
  const auto field = field_now(context, path);
  if (field && field->kind() == FieldKind::kFlag)
    put_field(context, path, !std::get<bool>(field->value));
  else
    open_field(context, path, frame_field_name(path, context.ui.language));
}

void draw_view(Context& context, const ShownFrame& shown, const JointSpot& spot, const JointWood& wood,
               const JointDrawing& view) {
  const ViewShown as = shown_as(view.view);
  // What a weld relief is, its drawing does not say.
  if (view.view == JointView::kMouth) note(context.ui, "joint.mouth.title", context.say(as.name));
  const auto pressed = drawing_form(
      context, as.key, context.say(as.name), drawing_height(context, as.height), view.drawing,
      [&](std::string_view key) { return joint_figure(key, shown.book, spot, wood, view.drawing, voice_of(context)); });
  if (pressed) tapped(context, spot, *pressed);
}

void slot_choice(Context& context, const JointSpot& spot) {
  if (!std::holds_alternative<KnifePlate>(spot.now)) return;
  given_choice(context, spot.field + "open", context.say(Msg::kJointSlotOpen),
               {context.say(Msg::kSlotTop), context.say(Msg::kSlotBottom), context.say(Msg::kSlotBoth),
                context.say(Msg::kSlotBlind)});
}

bool is_drawn(const std::vector<JointDrawing>& drawings, std::string_view measure) {
  const auto has = [&](const auto& figures) {
    return std::any_of(figures.begin(), figures.end(), [&](const auto& figure) { return figure.key == measure; });
  };
  return std::any_of(drawings.begin(), drawings.end(), [&](const JointDrawing& drawn) {
    return has(drawn.drawing.dimensions) || has(drawn.drawing.notes);
  });
}

void rows_below(Context& context, const JointSpot& spot, const std::vector<JointDrawing>& drawings) {
  for (const std::string& measure : field_paths(described_as_is(spot.now))) {
    if (is_drawn(drawings, measure) || !is_used(spot.now, measure)) continue;
    const std::string path = spot.field + measure;
    const std::string_view name = joint_measure_name(measure, context.ui.language);
    const auto field = name.empty() ? std::nullopt : field_now(context, path);
    if (field && field->kind() == FieldKind::kFlag)
      given_flag(context, path, name);
    else if (field)
      given_field(context, path, name);
  }
}

}  // namespace

bentbook::FigureText joint_figure(std::string_view key, const Book& book, const JointSpot& spot, const JointWood& wood,
                                  const draw::Drawing& drawing, const Voice& voice) {
  if (const auto told = joint_answer(spot.now, wood, key)) {
    const auto name = find_msg("joint_answer_" + std::string(key));
    if (key == "slope") return {say_angle(Angle::from_degrees(*told), voice), field_name("pitch", voice.language)};
    // A rafter is marked, the others are tools' settings.
    const bool marked = std::holds_alternative<BirdsMouth>(spot.now);
    std::string said = marked ? say_inches(*told, voice) : say_tool_inches(*told, voice);
    if (stands_aside(drawing, key))
      if (const auto aside = find_msg("joint_aside_" + std::string(key))) said = say(*aside, voice.language, said);
    return {said, std::string(name ? text(*name, voice.language) : key)};
  }
  const auto field = field_at(book, spot.field + std::string(key));
  if (!field) return {};
  std::string value = field_text(voice, *field);
  if (stands_aside(drawing, key)) value = said_aside(key, *field, value, voice.language);
  return {std::move(value), std::string(joint_measure_name(key, voice.language))};
}

void joint_measures(Context& context, const ShownFrame& shown, const JointSpot& spot) {
  std::vector<JointDrawing> drawings;
  if (shown.frame() && spot.shown != nullptr) {
    const JointWood wood = joint_wood(*shown.frame(), *spot.shown);
    drawings = joint_drawings(spot.now, wood);
    for (const JointDrawing& view : drawings) {
      draw_view(context, shown, spot, wood, view);
      if (view.view == JointView::kEnd) slot_choice(context, spot);
    }
  } else {
    slot_choice(context, spot);
  }
  rows_below(context, spot, drawings);
}

void joint_tools(Context& context, const Frame& frame, const JointSpot& spot) {
  if (spot.shown == nullptr || spot.shown->tools.count == 0) return;
  Ui& ui = context.ui;
  heading(ui, "joint.tools", context.say(Msg::kJointTools), 3);
  for (int i = 0; i < spot.shown->tools.count; ++i) {
    const ToolNumber& tool = spot.shown->tools[i];
    std::string name(tool_name(tool.setting, ui.language));
    name += ", " + frame.timbers[static_cast<std::size_t>(tool.timber)].mark;
    if (tool.from) name += ", " + say(Msg::kSheetFace, ui.language, std::to_string(static_cast<int>(*tool.from)));
    fact(ui, "joint.tool." + std::to_string(i), name, say_tool_inches(tool.value, voice_of(context)), true);
  }
}

void joint_cards(Context& context, const JointSpot& spot, const JointWood& wood, bool one_end, bool chosen,
                 FunctionRef<void(const JointType&)> pick) {
  Ui& ui = context.ui;
  std::vector<DrawnOption> cards;
  std::vector<JointType> types;
  int now = -1;
  const auto takes = [&](JointKind kind) {
    return fits(spot.meeting, kind) && (!one_end || row_of(kind).at_end != nullptr);
  };
  for (const JointRow& row : joint_table()) {
    const JointType type = row.usual();
    if (!takes(kind_of(type))) continue;
    if (chosen && kind_of(type) == kind_of(spot.now)) now = static_cast<int>(cards.size());
    cards.push_back({"joint.kind." + std::string(row.word), joint_name(kind_of(type), ui.language),
                     joint_drawings(type, wood).front().drawing});
    types.push_back(type);
  }
  if (const auto at = drawn_choice(context, context.say(Msg::kFrameJoint), std::move(cards), now); at && *at != now)
    pick(types[static_cast<std::size_t>(*at)]);
  int n = 0;
  bool headed = false;
  for (const NamedJoint& named : context.desk.book().joints) {
    const std::string key = "joint.named." + std::to_string(n++);
    if (!takes(kind_of(named.type))) continue;
    if (!std::exchange(headed, true)) heading(ui, "joint.named", context.say(Msg::kJointNamed), 3);
    if (pick_row(ui, key, shown_name(named.name, ui.language), joint_name(kind_of(named.type), ui.language),
                 chosen && named.type == spot.now))
      pick(named.type);
  }
}

}  // namespace bentbook::screens
