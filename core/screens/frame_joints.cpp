// The Frame place's joints: which one at which kind of meeting, and its measures.

#include <string>

#include "answers/frame_words.h"
#include "book/book_edit.h"
#include "frame/keys.h"
#include "screens/frame_form.h"
#include "screens/frame_pages.h"

namespace bentbook::screens {
namespace {

std::string_view key_of(Meeting meeting) { return keys::word(keys::kMeeting, meeting); }

std::string_view meeting_name(Meeting meeting, Language language) {
  const auto msg = find_msg("meeting_" + std::string(key_of(meeting)));
  return msg ? text(*msg, language) : key_of(meeting);
}

std::string_view tool_name(ToolSetting setting, Language language) {
  constexpr Msg kNames[] = {Msg::kToolDepthStop, Msg::kToolShim, Msg::kToolJig, Msg::kToolFence};
  return text(kNames[static_cast<std::size_t>(setting)], language);
}

const JointType& joint_at(const Book& book, Meeting meeting) {
  return book.frame.joints[static_cast<std::size_t>(meeting)];
}

int count_of(const Frame& frame, Meeting meeting) {
  int n = 0;
  for (const Joint& joint : frame.joints) n += joint.meeting == meeting ? 1 : 0;
  return n;
}

void kinds(Context& context, const Book& book, Meeting meeting) {
  Ui& ui = context.ui;
  const JointType& now = joint_at(book, meeting);
  const auto pick = [&](const JointType& type) {
    edit_book(context, [&](Book& next) { next = with_joint(std::move(next), meeting, type); });
  };
  for (int k = 0; k <= static_cast<int>(JointKind::kScarf); ++k) {
    const auto kind = static_cast<JointKind>(k);
    if (!fits(meeting, kind)) continue;
    const std::string key = "joint.kind." + std::string(keys::word(keys::kJointKind, kind));
    if (pick_row(ui, key, joint_name(kind, ui.language), {}, kind_of(now) == kind) && kind_of(now) != kind)
      pick(joint_of_kind(kind));
  }
  int n = 0;
  for (const NamedJoint& named : book.joints) {
    const std::string key = "joint.named." + std::to_string(n++);
    if (!fits(meeting, kind_of(named.type))) continue;
    if (n == 1) heading(ui, "joint.named", context.say(Msg::kJointNamed), 3);
    if (pick_row(ui, key, named.name, joint_name(kind_of(named.type), ui.language), named.type == now))
      pick(named.type);
  }
}

void slot_choice(Context& context, const Book& book, Meeting meeting) {
  const auto* plate = std::get_if<KnifePlate>(&joint_at(book, meeting));
  if (plate == nullptr) return;
  const auto open = choice(context.ui, "joint.open", context.say(Msg::kJointSlotOpen),
                           {context.say(Msg::kSlotTop), context.say(Msg::kSlotBottom), context.say(Msg::kSlotBoth),
                            context.say(Msg::kSlotBlind)},
                           static_cast<int>(plate->open));
  if (!open) return;
  edit_book(context, [&](Book& next) {
    std::get<KnifePlate>(next.frame.joints[static_cast<std::size_t>(meeting)]).open = static_cast<SlotOpen>(*open);
  });
}

void measures(Context& context, const Book& book, Meeting meeting) {
  JointType type = joint_at(book, meeting);
  const std::string prefix = "joint:" + std::string(key_of(meeting)) + ":";
  for (const JointMeasure& measure : measures_of(type)) {
    const std::string field = prefix + std::string(measure.name);
    if (measure.length != nullptr) {
      plan_row(context, book, field);
    } else if (measure.count != nullptr) {
      count_row(context, book, field, {}, 20);
    } else if (toggle(context.ui, field, field_name(measure.name, context.ui.language), *measure.flag)) {
      *measure.flag = !*measure.flag;
      edit_book(context, [&](Book& next) { next = with_joint(std::move(next), meeting, type); });
    }
  }
}

/// What tools are set to at the first joint of this kind.
void tools(Context& context, const Frame& frame, Meeting meeting) {
  Ui& ui = context.ui;
  for (const Joint& joint : frame.joints) {
    if (joint.meeting != meeting || joint.tools.count == 0) continue;
    heading(ui, "joint.tools", context.say(Msg::kJointTools), 3);
    for (int i = 0; i < joint.tools.count; ++i) {
      const ToolNumber& tool = joint.tools[i];
      const std::string& mark = frame.timbers[static_cast<std::size_t>(tool.timber)].mark;
      fact(ui, "joint.tool." + std::to_string(i), std::string(tool_name(tool.setting, ui.language)) + ", " + mark,
           say_inches(tool.value, voice_of(context)), true);
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
    if (!shown.frame()) caution(ui, "frame.refused", frame_error_text(shown.frame().error(), voice_of(context)));
    kinds(context, shown.book, meeting);
    space(ui, 16);
    slot_choice(context, shown.book, meeting);
    measures(context, shown.book, meeting);
    if (shown.frame()) tools(context, *shown.frame(), meeting);
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

Page frame_joints_page() { return {"frame.joints", Msg::kFrameJoints, joints_screen}; }

}  // namespace bentbook::screens
