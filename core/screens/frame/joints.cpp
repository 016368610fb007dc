#include "screens/frame/joints.h"

#include <string>
#include <utility>

#include "book/book_edit.h"
#include "frame/joinery.h"
#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "screens/frame/form.h"
#include "screens/frame/joinery_choice.h"
#include "screens/frame/joint_form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

std::string_view key_of(Meeting meeting) { return keys::word(keys::kMeeting, meeting); }

std::string_view meeting_name(Meeting meeting, Language language) {
  const auto msg = find_msg("meeting_" + std::string(key_of(meeting)));
  return msg ? text(*msg, language) : key_of(meeting);
}

/// …as it is in this plan.
std::string_view meeting_name(const FramePlan& plan, Meeting meeting, Language language) {
  if (meeting == Meeting::kKingFoot && plan.on_ties != OnTies::kNothing)
    return text(plan.on_ties == OnTies::kKingPosts ? Msg::kMeetingKingFootKing : Msg::kMeetingKingFootQueen, language);
  return meeting_name(meeting, language);
}

const JointType& joint_at(const Book& book, Meeting meeting) {
  return book.frame.joints[static_cast<std::size_t>(meeting)];
}

int count_of(const Frame& frame, Meeting meeting) {
  int n = 0;
  for (const Joint& joint : frame.joints) n += joint.meeting == meeting ? 1 : 0;
  return n;
}

bool of_one_end(JointKind kind) { return row_of(kind).at_end != nullptr; }

void say_refused(Context& context, const ShownFrame& shown) {
  if (!shown.frame()) refusal(context.ui, "frame.refused", frame_error_text(shown.frame().error(), voice_of(context)));
}

JointWood wood_of(const ShownFrame& shown, const Joint* joint) {
  return shown.frame() && joint != nullptr ? joint_wood(*shown.frame(), *joint) : JointWood{};
}

// ── At a kind of meeting ──────────────────────────────────────────────────────────────────────────────────────────

JointSpot meeting_spot(const ShownFrame& shown, Meeting meeting) {
  return {meeting, "frame.joints." + std::string(key_of(meeting)) + ".", joint_at(shown.book, meeting),
          shown.frame() ? joint_to_show(*shown.frame(), meeting) : nullptr};
}

void kinds_screen(Context& context) {
  const int index = keys::index_of(keys::kMeeting, context.subject);
  if (index < 0) return context.pages.pop();
  const auto meeting = static_cast<Meeting>(index);
  frame_page(context, "kinds.page", [&](const ShownFrame& shown) {
    heading(context.ui, "kinds.heading", meeting_name(shown.plan(), meeting, context.ui.language));
    const JointSpot spot = meeting_spot(shown, meeting);
    joint_cards(context, spot, wood_of(shown, spot.shown), false, true, [&](const JointType& type) {
      edit_book(context, [&](Book& next) { next = with_joint(std::move(next), meeting, type); });
      context.pages.pop();
    });
  });
}

void joint_screen(Context& context) {
  const int index = keys::index_of(keys::kMeeting, context.subject);
  if (index < 0) return context.pages.pop();
  const auto meeting = static_cast<Meeting>(index);
  frame_page(context, "joint.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const JointSpot spot = meeting_spot(shown, meeting);
    say_refused(context, shown);
    std::string where(meeting_name(shown.plan(), meeting, ui.language));
    // Where timbers of two widths meet, the left one and the right one are gauged unlike: it is this one that is drawn.
    if (spot.shown != nullptr)
      where += " · " + shown.frame()->timbers[static_cast<std::size_t>(spot.shown->member)].mark;
    if (list_row(ui, "joint.kinds", joint_name(kind_of(spot.now), ui.language), where))
      context.pages.push({"frame.joint_kinds", Msg::kFrameJoint, kinds_screen, std::string(context.subject)});
    joint_measures(context, shown, spot);
    if (shown.frame()) joint_tools(context, *shown.frame(), spot);
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
    note(ui, "end.meeting", meeting_name(shown.plan(), joint->meeting, ui.language));
    const Override o = override_of(shown.book, mark);
    const bool apart = end == End::kA ? o.has_joint_a : o.has_joint_b;
    const JointType& planned = joint_at(shown.book, joint->meeting);
    if (pick_row(ui, "end.as_planned", context.say(Msg::kEndAsPlanned), joint_name(kind_of(planned), ui.language),
                 !apart) &&
        apart)
      edit_book(context, [&](Book& next) { put_end(next, mark, end, nullptr); });
    const JointSpot spot{joint->meeting, "frame.overrides.@" + mark + (end == End::kA ? ".joint_a." : ".joint_b."),
                         !apart           ? planned
                         : end == End::kA ? o.joint_a
                                          : o.joint_b,
                         joint};
    space(ui, kGap);
    joint_cards(context, spot, joint_wood(*shown.frame(), *joint), true, apart, [&](const JointType& type) {
      edit_book(context, [&](Book& next) { put_end(next, mark, end, &type); });
    });
    if (apart) joint_measures(context, shown, spot);
    joint_tools(context, *shown.frame(), spot);
    caution(ui, "joint.caution", context.say(Msg::kJointCaution));
  });
}

void joints_screen(Context& context) {
  frame_page(context, "joints.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    if (const auto joinery = joinery_choice(context, joinery_of(shown.plan())))
      edit_book(context, [&](Book& next) { next.frame = with_joinery(std::move(next.frame), *joinery); });
    for (int i = 0; i < kMeetings; ++i) {
      const auto meeting = static_cast<Meeting>(i);
      const int count = count_of(*shown.frame(), meeting);
      if (count == 0) continue;
      const std::string second =
          std::string(joint_name(kind_of(joint_at(shown.book, meeting)), ui.language)) + " × " + std::to_string(count);
      if (list_row(ui, "joints." + std::string(key_of(meeting)), meeting_name(shown.plan(), meeting, ui.language),
                   second))
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
