#include "screens/raising/braces.h"

#include <algorithm>
#include <optional>
#include <string>

#include "screens/raising/form.h"

namespace bentbook::screens {
namespace {

/// The mark of a timber of the frame, typed; none: the row was left as it is.
std::optional<std::string> typed_mark(Context& context, const Frame& frame, const std::string& key,
                                      std::string_view name, const std::string& now) {
  auto told = text_field(context.ui, key, name, now);
  if (!told || told->empty() || timber_by_mark(frame, *told) >= 0) return told;
  context.toast(say(Msg::kFaultUnknownMark, context.ui.language, {{"mark", *told}}), false);
  return std::nullopt;
}

std::string path_of(const Temporary& temporary) { return "temporaries.@" + temporary.name; }

void from_part(Context& context, const Frame& frame, const Temporary& temporary) {
  heading(context.ui, "brace.from.heading", context.say(Msg::kBraceFrom), 3);
  const std::string path = path_of(temporary) + ".from";
  if (auto mark = typed_mark(context, frame, "brace.from.mark", context.say(Msg::kBraceMark), temporary.from.mark))
    put_field(context, "raising." + path + ".mark", std::move(*mark));
  if (!temporary.from.mark.empty()) raising_field(context, path + ".station", Msg::kBraceStation);
}

/// The other end: at a timber, or on the ground.
void to_part(Context& context, const Frame& frame, const Temporary& temporary) {
  heading(context.ui, "brace.to.heading", context.say(Msg::kBraceTo), 3);
  const std::string path = path_of(temporary);
  if (auto mark = typed_mark(context, frame, "brace.to.mark", context.say(Msg::kBraceMarkOrGround), temporary.to.mark))
    put_field(context, "raising." + path + ".to.mark", std::move(*mark));
  if (!temporary.to.mark.empty()) return raising_field(context, path + ".to.station", Msg::kBraceStation);
  raising_field(context, path + ".ground_x", Msg::kBraceGroundX);
  raising_field(context, path + ".ground_y", Msg::kBraceGroundY);
  raising_field(context, path + ".ground_z", Msg::kBraceGroundZ);
}

void temporary_screen(Context& context) {
  raising_page(context, "brace.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    const std::string name = context.subject;
    const auto it = std::find_if(plan.temporaries.begin(), plan.temporaries.end(),
                                 [&](const Temporary& t) { return t.name == name; });
    if (it == plan.temporaries.end()) return body(ui, "brace.gone", context.say(Msg::kStepGone));
    heading(ui, "brace.title", temporary_text(*it, voice_of(context)));
    const std::string path = path_of(*it);
    given_choice(
        context, "raising." + path + ".kind", context.say(Msg::kBraceKind),
        {context.say(Msg::kTemporaryGuy), context.say(Msg::kTemporaryDiagonal), context.say(Msg::kTemporaryProp)});
    from_part(context, *shown.frame(), *it);
    to_part(context, *shown.frame(), *it);
    if (it->kind == TemporaryKind::kDiagonal) raising_field(context, path + ".thickness", Msg::kBraceThickness);
    raising_field(context, path + ".rated", Msg::kBraceRated);
    note(ui, "brace.rated_note", context.say(Msg::kBraceRatedNote));
    if (!button(ui, "brace.delete", context.say(Msg::kBraceDelete), Weight::kDestructive)) return;
    edit_raising(context, [&](RaisingPlan& p) { drop_temporary(p, name); });
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  });
}

void temporaries_screen(Context& context) {
  raising_page(context, "braces.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    body(ui, "braces.note", context.say(Msg::kBracesNote));
    for (const Temporary& t : plan.temporaries)
      if (list_row(ui, "braces." + t.name, temporary_text(t, voice_of(context)),
                   t.rated.count == 0 ? std::string(context.say(Msg::kBraceNoRating))
                                      : say_weight(t.rated.lb(), voice_of(context))))
        context.pages.push(raising_temporary_page(t.name));
    if (!button(ui, "braces.add", context.say(Msg::kBracesAdd), Weight::kPrimary)) return;
    const std::string name = free_temporary_name(plan);
    edit_raising(context, [&](RaisingPlan& p) {
      Temporary t;
      t.name = name;
      p.temporaries.push_back(t);
    });
    context.pages.push(raising_temporary_page(name));
  });
}

// ── Wishes ────────────────────────────────────────────────────────────────────────────────────────────────────────

/// "P-A1, T-1" as marks.
std::vector<std::string> read_marks(std::string_view text) {
  std::vector<std::string> out;
  std::string mark;
  for (const char c : text) {
    if (c == ' ' || c == ',' || c == ';') {
      if (!mark.empty()) out.push_back(std::exchange(mark, {}));
    } else {
      mark += c;
    }
  }
  if (!mark.empty()) out.push_back(mark);
  return out;
}

void wish_part(Context& context, const Wish& wish, std::size_t i) {
  Ui& ui = context.ui;
  const std::string key = "wish." + std::to_string(i), path = "wishes." + std::to_string(i);
  given_choice(context, "raising." + path + ".kind", context.say(Msg::kWishKind),
               {context.say(Msg::kWishBefore), context.say(Msg::kWishTogether), context.say(Msg::kStepDay),
                context.say(Msg::kWishStartFrom)});
  if (wish.kind != WishKind::kStartFrom)
    if (const auto told = text_field(ui, key + ".marks", context.say(Msg::kWishMarks), marks_text(wish.marks)))
      edit_raising(context, [&](RaisingPlan& p) { p.wishes[i].marks = read_marks(*told); });
  if (wish.kind == WishKind::kBefore)
    if (const auto told = text_field(ui, key + ".others", context.say(Msg::kWishOthers), marks_text(wish.others)))
      edit_raising(context, [&](RaisingPlan& p) { p.wishes[i].others = read_marks(*told); });
  if (wish.kind == WishKind::kDay) raising_field(context, path + ".number", Msg::kStepDay);
  if (wish.kind == WishKind::kStartFrom) raising_field(context, path + ".number", Msg::kWishBent);
  if (button(ui, key + ".drop", context.say(Msg::kWishDrop), Weight::kDestructive))
    edit_raising(context, [&](RaisingPlan& p) { p.wishes.erase(p.wishes.begin() + static_cast<std::ptrdiff_t>(i)); });
  space(ui, 16);
}

void wishes_screen(Context& context) {
  raising_page(context, "wishes.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    body(ui, "wishes.note", context.say(Msg::kRaisingWishesNote));
    for (std::size_t i = 0; i < plan.wishes.size(); ++i) wish_part(context, plan.wishes[i], i);
    if (button(ui, "wishes.add", context.say(Msg::kWishAdd), Weight::kPrimary))
      edit_raising(context, [](RaisingPlan& p) { p.wishes.push_back({}); });
  });
}

}  // namespace

Page raising_temporaries_page() { return {"raising.braces", Msg::kRaisingTemporaries, temporaries_screen}; }
Page raising_temporary_page(std::string name) {
  return {"raising.brace", Msg::kRaisingTemporaries, temporary_screen, std::move(name)};
}
Page raising_wishes_page() { return {"raising.wishes", Msg::kRaisingWishes, wishes_screen}; }

}  // namespace bentbook::screens
