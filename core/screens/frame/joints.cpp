#include "screens/frame/joints.h"

#include <functional>
#include <string>
#include <utility>

#include "book/book_edit.h"
#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

std::string_view key_of(Meeting meeting) { return keys::word(keys::kMeeting, meeting); }

std::string_view meeting_name(Meeting meeting, Language language) {
  const auto msg = find_msg("meeting_" + std::string(key_of(meeting)));
  return msg ? text(*msg, language) : key_of(meeting);
}

std::string_view tool_name(ToolSetting setting, Language language) {
  const std::string_view word = keys::word(kToolWords, setting);
  const auto msg = find_msg("tool_" + std::string(word));
  return msg ? text(*msg, language) : word;
}

const JointType& joint_at(const Book& book, Meeting meeting) {
  return book.frame.joints[static_cast<std::size_t>(meeting)];
}

int count_of(const Frame& frame, Meeting meeting) {
  int n = 0;
  for (const Joint& joint : frame.joints) n += joint.meeting == meeting ? 1 : 0;
  return n;
}

/// A joint that is chosen and measured: a meeting's, or that of one timber's end.
struct Spot {
  Meeting meeting;
  std::string field;  ///< path before its measures
  JointType now;
  bool chosen = true;  ///< false: an end that has its meeting's joint
  std::function<void(Book&, const JointType&)> put;
};

bool of_one_end(JointKind kind) { return row_of(kind).at_end != nullptr; }

void kinds(Context& context, const Book& book, const Spot& spot, bool one_end) {
  Ui& ui = context.ui;
  const auto pick = [&](const JointType& type) { edit_book(context, [&](Book& next) { spot.put(next, type); }); };
  for (const JointRow& row : joint_table()) {
    const JointKind kind = kind_of(row.usual());
    if (!fits(spot.meeting, kind) || (one_end && !of_one_end(kind))) continue;
    const std::string key = "joint.kind." + std::string(row.word);
    const bool now = spot.chosen && kind_of(spot.now) == kind;
    if (pick_row(ui, key, joint_name(kind, ui.language), {}, now) && !now) pick(row.usual());
  }
  int n = 0;
  bool headed = false;
  for (const NamedJoint& named : book.joints) {
    const std::string key = "joint.named." + std::to_string(n++);
    const JointKind kind = kind_of(named.type);
    if (!fits(spot.meeting, kind) || (one_end && !of_one_end(kind))) continue;
    if (!std::exchange(headed, true)) heading(ui, "joint.named", context.say(Msg::kJointNamed), 3);
    if (pick_row(ui, key, shown_name(named.name, ui.language), joint_name(kind, ui.language),
                 spot.chosen && named.type == spot.now))
      pick(named.type);
  }
}

void slot_choice(Context& context, const Spot& spot) {
  const auto* plate = std::get_if<KnifePlate>(&spot.now);
  if (plate == nullptr) return;
  const auto open = choice(context.ui, "joint.open", context.say(Msg::kJointSlotOpen),
                           {context.say(Msg::kSlotTop), context.say(Msg::kSlotBottom), context.say(Msg::kSlotBoth),
                            context.say(Msg::kSlotBlind)},
                           static_cast<int>(plate->open));
  if (!open) return;
  KnifePlate next_plate = *plate;
  next_plate.open = static_cast<SlotOpen>(*open);
  edit_book(context, [&](Book& next) { spot.put(next, next_plate); });
}

void measures(Context& context, const Spot& spot) {
  for (const std::string& measure : field_paths(described_as_is(spot.now))) {
    const std::string path = spot.field + measure;
    const std::string_view name = joint_measure_name(measure, context.ui.language);
    const auto field = name.empty() ? std::nullopt : field_now(context, path);
    if (field && field->kind() == FieldKind::kFlag)
      given_flag(context, path, name);
    else if (field)
      given_field(context, path, name);
  }
}

void choose_and_measure(Context& context, const ShownFrame& shown, const Spot& spot, bool one_end) {
  if (!shown.frame()) caution(context.ui, "frame.refused", frame_error_text(shown.frame().error(), voice_of(context)));
  kinds(context, shown.book, spot, one_end);
  space(context.ui, 16);
  if (spot.chosen) {
    slot_choice(context, spot);
    measures(context, spot);
  }
}

/// What tools are set to at the first such joint.
template <class Wanted>
void tools(Context& context, const Frame& frame, Wanted&& wanted) {
  Ui& ui = context.ui;
  for (const Joint& joint : frame.joints) {
    if (!wanted(joint) || joint.tools.count == 0) continue;
    heading(ui, "joint.tools", context.say(Msg::kJointTools), 3);
    for (int i = 0; i < joint.tools.count; ++i) {
      const ToolNumber& tool = joint.tools[i];
      std::string name(tool_name(tool.setting, ui.language));
      name += ", " + frame.timbers[static_cast<std::size_t>(tool.timber)].mark;
      if (tool.from) name += ", " + say(Msg::kSheetFace, ui.language, std::to_string(static_cast<int>(*tool.from)));
      fact(ui, "joint.tool." + std::to_string(i), name, say_tool_inches(tool.value, voice_of(context)), true);
    }
    return;
  }
}

void joint_screen(Context& context) {
  const int index = keys::index_of(keys::kMeeting, context.subject);
  if (index < 0) return context.pages.pop();
  const auto meeting = static_cast<Meeting>(index);
  frame_page(context, "joint.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    heading(ui, "joint.heading", meeting_name(meeting, ui.language));
    const Spot spot{
        meeting, "frame.joints." + std::string(key_of(meeting)) + ".", joint_at(shown.book, meeting), true,
        [meeting](Book& next, const JointType& type) { next = with_joint(std::move(next), meeting, type); }};
    choose_and_measure(context, shown, spot, false);
    if (shown.frame()) tools(context, *shown.frame(), [&](const Joint& j) { return j.meeting == meeting; });
    caution(ui, "joint.caution", context.say(Msg::kJointCaution));
  });
}

// ── At one end of one timber ──────────────────────────────────────────────────────────────────────────────────────

void put_end(Book& book, const std::string& mark, End end, const JointType* type) {
  Override o = override_of(book, mark);
  (end == End::kA ? o.has_joint_a : o.has_joint_b) = type != nullptr;
  (end == End::kA ? o.joint_a : o.joint_b) = type != nullptr ? *type : JointType{};
  book = with_override(std::move(book), o);
}

/// `subject`: "<a|b>:<mark>".
void end_screen(Context& context) {
  const std::string mark = context.subject.substr(2);
  const End end = context.subject[0] == 'a' ? End::kA : End::kB;
  frame_page(context, "end.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    const int timber = timber_by_mark(*shown.frame(), mark);
    const Joint* joint = timber < 0 ? nullptr : joint_at_end(*shown.frame(), timber, end);
    if (joint == nullptr) return note(ui, "end.gone", say(Msg::kBookNoMark, ui.language, mark));
    heading(ui, "end.heading", mark + " · " + say(Msg::kEndJoint, ui.language, end == End::kA ? "A" : "B"));
    note(ui, "end.meeting", meeting_name(joint->meeting, ui.language));
    const Override o = override_of(shown.book, mark);
    const bool apart = end == End::kA ? o.has_joint_a : o.has_joint_b;
    const JointType now = !apart ? joint_at(shown.book, joint->meeting) : end == End::kA ? o.joint_a : o.joint_b;
    if (pick_row(ui, "end.as_planned", context.say(Msg::kEndAsPlanned),
                 joint_name(kind_of(joint_at(shown.book, joint->meeting)), ui.language), !apart) &&
        apart)
      edit_book(context, [&](Book& next) { put_end(next, mark, end, nullptr); });
    const Spot spot{joint->meeting, "frame.overrides.@" + mark + (end == End::kA ? ".joint_a." : ".joint_b."), now,
                    apart, [&](Book& next, const JointType& type) { put_end(next, mark, end, &type); }};
    choose_and_measure(context, shown, spot, true);
    tools(context, *shown.frame(), [&](const Joint& j) { return &j == joint; });
    caution(ui, "joint.caution", context.say(Msg::kJointCaution));
  });
}

void joints_screen(Context& context) {
  frame_page(context, "joints.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    for (int i = 0; i < kMeetings; ++i) {
      const auto meeting = static_cast<Meeting>(i);
      const int count = count_of(*shown.frame(), meeting);
      if (count == 0) continue;
      const std::string second =
          std::string(joint_name(kind_of(joint_at(shown.book, meeting)), ui.language)) + " × " + std::to_string(count);
      if (list_row(ui, "joints." + std::string(key_of(meeting)), meeting_name(meeting, ui.language), second))
        context.pages.push({"frame.joint", Msg::kFrameJoint, joint_screen, std::string(key_of(meeting))});
    }
  });
}

}  // namespace

const Joint* joint_at_end(const Frame& frame, int timber, End end) {
  for (const Joint& joint : frame.joints)
    if (joint.member == timber && joint.end == end && !joint.crossing && of_one_end(joint.kind)) return &joint;
  return nullptr;
}

Page frame_end_page(const std::string& mark, End end) {
  return {"frame.end", Msg::kFrameJoint, end_screen, (end == End::kA ? "a:" : "b:") + mark};
}
Page frame_joints_page() { return {"frame.joints", Msg::kFrameJoints, joints_screen}; }

}  // namespace bentbook::screens
