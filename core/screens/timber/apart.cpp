#include "screens/timber/apart.h"

#include <string>

#include "book/book_edit.h"
#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "screens/frame/hand.h"
#include "screens/frame/joints.h"
#include "words/frame_words.h"
#include "words/raising_words.h"

namespace bentbook::screens {
namespace {

/// Changes what is said of one timber, starting from what it is now.
template <class Edit>
void edit_apart(Context& context, const Frame* frame, std::string_view mark, Edit&& edit) {
  edit_book(context, [&](Book& book) {
    Override o = filled_override(book, mark, frame);
    edit(o);
    book = with_override(std::move(book), o);
  });
}

void wood(Context& context, const Frame& frame, const Timber& timber) {
  Ui& ui = context.ui;
  const std::string prefix = "frame.overrides.@" + timber.mark + ".";
  heading(ui, "sheet.wood", context.say(Msg::kSheetWood));
  for (const char* field : {"section.breadth", "section.depth", "wood.actual.breadth", "wood.actual.depth", "wood.bow"})
    frame_field(context, prefix + field);
  const auto change_wood = [&](auto&& edit) {
    edit_apart(context, &frame, timber.mark, [&](Override& o) {
      o.has_wood = true;
      edit(o.wood);
    });
  };
  const auto top = choice(ui, "sheet.top_reference", context.say(Msg::kSheetTopReference), {"1", "3"},
                          timber.wood.top_is_reference ? 0 : 1);
  if (top) change_wood([&](Wood& wood) { wood.top_is_reference = *top == 0; });
  const auto near = choice(ui, "sheet.side_reference", context.say(Msg::kSheetSideReference), {"2", "4"},
                           timber.wood.near_is_reference ? 0 : 1);
  if (near) change_wood([&](Wood& wood) { wood.near_is_reference = *near == 0; });
  if (timber.kind == TimberKind::kPost) frame_field(context, prefix + "pier_level");
}

/// Rows that lead to what has a page of its own; what is set apart says so.
void rows(Context& context, const ShownFrame& shown, const Timber& timber) {
  Ui& ui = context.ui;
  const std::string own(context.say(Msg::kApartOwn));
  const auto words = [&](std::string_view what, bool apart) {
    return apart ? own + ": " + std::string(what) : std::string(what);
  };
  if (list_row(ui, "sheet.species", context.say(Msg::kFieldSpecies),
               words(shown_name(timber.species.name, ui.language), timber.overridden.species)))
    context.pages.push(frame_species_page(timber.mark));
  const int index = timber_by_mark(*shown.frame(), timber.mark);
  for (const End end : {End::kA, End::kB}) {
    const Joint* joint = joint_at_end(*shown.frame(), index, end);
    if (joint == nullptr) continue;
    const bool a = end == End::kA;
    const bool apart = a ? timber.overridden.joint_a : timber.overridden.joint_b;
    if (list_row(ui, a ? "sheet.end.a" : "sheet.end.b", say(Msg::kEndJoint, ui.language, a ? "A" : "B"),
                 words(joint_name(joint->kind, ui.language), apart)))
      context.pages.push(frame_end_page(timber.mark, end));
  }
  const auto count = static_cast<std::int64_t>(timber.defects.size());
  if (list_row(ui, "sheet.defects", context.say(Msg::kDefects), say_count(Msg::kDefectsNote, ui.language, count)))
    context.pages.push(frame_defects_page(timber.mark));
}

void species_screen(Context& context) {
  const std::string mark = context.subject;
  frame_page(context, "species.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const Book& book = shown.book;
    const Override now = override_of(book, mark);
    heading(ui, "species.heading", mark);
    if (pick_row(ui, "species.as_planned", context.say(Msg::kEndAsPlanned),
                 shown_name(book.frame.species.name, ui.language), !now.has_species))
      edit_apart(context, nullptr, mark, [](Override& o) {
        o.has_species = false;
        o.species = {};
      });
    for (std::size_t i = 0; i < book.species.size(); ++i) {
      const Species& species = book.species[i];
      if (pick_row(ui, "species." + std::to_string(i), shown_name(species.name, ui.language), {},
                   now.has_species && now.species == species))
        edit_apart(context, nullptr, mark, [&](Override& o) {
          o.has_species = true;
          o.species = species;
        });
    }
  });
}

bool defect_part(Context& context, const ShownFrame& shown, const std::string& mark, std::size_t i) {
  Ui& ui = context.ui;
  const Defect defect = override_of(shown.book, mark).defects[i];
  const std::string number = std::to_string(i);
  const auto change = [&](auto&& edit) {
    edit_apart(context, nullptr, mark, [&](Override& o) { edit(o.defects[i]); });
  };
  const auto name = [&](DefectKind kind) { return defect_name(kind, ui.language); };
  if (const auto kind =
          choice(ui, "defect.kind." + number, context.say(Msg::kDefectKind),
                 {name(DefectKind::kWane), name(DefectKind::kKnot), name(DefectKind::kCheck), name(DefectKind::kHeart)},
                 static_cast<int>(defect.kind)))
    change([&](Defect& d) { d.kind = static_cast<DefectKind>(*kind); });
  if (const auto face = choice(ui, "defect.face." + number, context.say(Msg::kFieldFace), {"1", "2", "3", "4"},
                               static_cast<int>(defect.face) - 1))
    change([&](Defect& d) { d.face = static_cast<Face>(*face + 1); });
  frame_field(context, "frame.overrides.@" + mark + ".defects." + number + ".from");
  frame_field(context, "frame.overrides.@" + mark + ".defects." + number + ".to");
  if (!button(ui, "defect.remove." + number, context.say(Msg::kHandFeatureRemove), Weight::kDestructive)) return true;
  edit_apart(context, nullptr, mark,
             [&](Override& o) { o.defects.erase(o.defects.begin() + static_cast<std::ptrdiff_t>(i)); });
  return false;
}

void defects_screen(Context& context) {
  const std::string mark = context.subject;
  frame_page(context, "defects.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    heading(ui, "defects.heading", mark);
    body(ui, "defects.how", context.say(Msg::kDefectsHow));
    const std::size_t count = override_of(shown.book, mark).defects.size();
    for (std::size_t i = 0; i < count; ++i) {
      if (!defect_part(context, shown, mark, i)) return;
      space(ui, 16);
    }
    if (count < 50 && button(ui, "defects.add", context.say(Msg::kDefectAdd), Weight::kPrimary))
      edit_apart(context, nullptr, mark, [](Override& o) {
        o.defects.push_back({DefectKind::kKnot, Face::kTop, Length::feet(1), Length::inches(18)});
      });
  });
}

/// A post takes its braces with it: all that goes is named.
void take_out(Context& context, const ShownFrame& shown, const std::string& mark) {
  if (!button(context.ui, "sheet.take_out", context.say(Msg::kSheetTakeOut), Weight::kDestructive)) return;
  Override out = override_of(shown.book, mark);
  out.removed = true;
  const Result<Frame> without = solve_frame(with_override(shown.book, out).frame);
  edit_apart(context, nullptr, mark, [](Override& o) { o.removed = true; });
  std::vector<std::string> gone = without ? marks_gone(*shown.frame(), *without) : std::vector{mark};
  const auto count = static_cast<std::int64_t>(gone.size());
  constexpr std::size_t kNamed = 6;
  std::string marks;
  if (gone.size() > kNamed + 1) {
    gone.resize(kNamed);
    marks = say(Msg::kMarksAndMore, context.ui.language,
                {{"marks", marks_text(gone)}, {"n", std::to_string(count - static_cast<std::int64_t>(kNamed))}});
  } else {
    marks = marks_text(gone);
  }
  context.toast(say_count(Msg::kSheetTakenOut, context.ui.language, count, {{"marks", marks}}), true);
  context.pages.pop();
}

}  // namespace

void timber_apart(Context& context, const ShownFrame& shown, const Timber& timber) {
  Ui& ui = context.ui;
  const std::string mark = timber.mark;
  if (timber.overridden.added) {
    if (list_row(ui, "sheet.edit_hand", context.say(Msg::kHandEdit), {})) context.pages.push(frame_hand_page(mark));
    return;
  }
  wood(context, *shown.frame(), timber);
  rows(context, shown, timber);
  space(ui, 16);
  if (says_something(override_of(shown.book, mark)) &&
      button(ui, "sheet.as_planned", context.say(Msg::kSheetAsPlanned))) {
    edit_book(context, [&](Book& book) {
      Override none;
      none.mark = mark;
      book = with_override(std::move(book), none);
    });
    context.toast(say(Msg::kSheetAsPlannedDone, ui.language, mark), true);
  }
  take_out(context, shown, mark);
}

Page frame_species_page(std::string mark) {
  return {"frame.species", Msg::kFieldSpecies, species_screen, std::move(mark)};
}
Page frame_defects_page(std::string mark) { return {"frame.defects", Msg::kDefects, defects_screen, std::move(mark)}; }

}  // namespace bentbook::screens
