// Temporary braces, and what the lead wishes of the order.

#include <algorithm>
#include <string>

#include "screens/raising/form.h"
#include "screens/raising/pages.h"

namespace bentbook::screens {
namespace {

Temporary* find_temporary(RaisingPlan& plan, std::string_view name) {
  for (Temporary& t : plan.temporaries)
    if (t.name == name) return &t;
  return nullptr;
}

/// A mark as it was typed, if the frame has it.
void mark_row(Context& context, const Frame& frame, const std::string& key, std::string_view name,
              const std::string& now, const std::function<void(RaisingPlan&, std::string)>& set) {
  const auto told = text_field(context.ui, key, name, now);
  if (!told) return;
  if (!told->empty() && timber_by_mark(frame, *told) < 0)
    return context.toast(say(Msg::kFaultUnknownMark, context.ui.language, {{"mark", *told}}), false);
  edit_raising(context, [&](RaisingPlan& plan) { set(plan, *told); });
}

void end_part(Context& context, const Frame& frame, const Temporary& temporary, bool to) {
  Ui& ui = context.ui;
  const std::string key = to ? "brace.to" : "brace.from", name = temporary.name;
  const TimberPoint& point = to ? temporary.to : temporary.from;
  const auto at = [name, to](RaisingPlan& plan) -> TimberPoint* {
    Temporary* t = find_temporary(plan, name);
    return t == nullptr ? nullptr : to ? &t->to : &t->from;
  };
  heading(ui, key + ".heading", context.say(to ? Msg::kBraceTo : Msg::kBraceFrom), 3);
  mark_row(context, frame, key + ".mark", context.say(to ? Msg::kBraceMarkOrGround : Msg::kBraceMark), point.mark,
           [at](RaisingPlan& plan, std::string mark) {
             if (TimberPoint* p = at(plan)) p->mark = std::move(mark);
           });
  if (!point.mark.empty())
    return raising_length(context, key + ".station", context.say(Msg::kBraceStation), point.station,
                          [at](RaisingPlan& plan, Length l) {
                            if (TimberPoint* p = at(plan)) p->station = l;
                          });
  if (!to) return;
  const auto ground = [&](const char* axis, Msg label, Length Temporary::*member) {
    raising_length(context, std::string("brace.ground.") + axis, context.say(label), temporary.*member,
                   [name, member](RaisingPlan& plan, Length l) {
                     if (Temporary* t = find_temporary(plan, name)) t->*member = l;
                   });
  };
  ground("x", Msg::kBraceGroundX, &Temporary::ground_x);
  ground("y", Msg::kBraceGroundY, &Temporary::ground_y);
  ground("z", Msg::kBraceGroundZ, &Temporary::ground_z);
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
    const auto kind = choice(
        ui, "brace.kind", context.say(Msg::kBraceKind),
        {context.say(Msg::kTemporaryGuy), context.say(Msg::kTemporaryDiagonal), context.say(Msg::kTemporaryProp)},
        static_cast<int>(it->kind));
    if (kind)
      edit_raising(context, [&](RaisingPlan& p) {
        if (Temporary* t = find_temporary(p, name)) t->kind = static_cast<TemporaryKind>(*kind);
      });
    end_part(context, *shown.frame(), *it, false);
    end_part(context, *shown.frame(), *it, true);
    if (it->kind == TemporaryKind::kDiagonal)
      raising_length(context, "brace.thickness", context.say(Msg::kBraceThickness), it->thickness,
                     [name](RaisingPlan& p, Length l) {
                       if (Temporary* t = find_temporary(p, name)) t->thickness = l;
                     });
    raising_weight(context, "brace.rated", context.say(Msg::kBraceRated), it->rated,
                   [name](RaisingPlan& p, bentbook::Weight w) {
                     if (Temporary* t = find_temporary(p, name)) t->rated = w;
                   });
    note(ui, "brace.rated_note", context.say(Msg::kBraceRatedNote));
    if (!button(ui, "brace.delete", context.say(Msg::kBraceDelete), Weight::kDestructive)) return;
    edit_raising(context, [&](RaisingPlan& p) {
      std::erase_if(p.temporaries, [&](const Temporary& t) { return t.name == name; });
      for (RaisingStep& step : p.steps) {
        std::erase(step.put_up, name);
        std::erase(step.take_out, name);
      }
    });
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

void marks_row(Context& context, const std::string& key, std::string_view name, const std::vector<std::string>& now,
               const std::function<void(RaisingPlan&, std::vector<std::string>)>& set) {
  if (const auto told = text_field(context.ui, key, name, marks_text(now)))
    edit_raising(context, [&](RaisingPlan& plan) { set(plan, read_marks(*told)); });
}

void wish_part(Context& context, const Wish& wish, std::size_t i) {
  Ui& ui = context.ui;
  const std::string key = "wish." + std::to_string(i);
  const auto kind = choice(ui, key + ".kind", context.say(Msg::kWishKind),
                           {context.say(Msg::kWishBefore), context.say(Msg::kWishTogether), context.say(Msg::kStepDay),
                            context.say(Msg::kWishStartFrom)},
                           static_cast<int>(wish.kind));
  if (kind) edit_raising(context, [&](RaisingPlan& p) { p.wishes[i].kind = static_cast<WishKind>(*kind); });
  if (wish.kind != WishKind::kStartFrom)
    marks_row(context, key + ".marks", context.say(Msg::kWishMarks), wish.marks,
              [i](RaisingPlan& p, std::vector<std::string> m) { p.wishes[i].marks = std::move(m); });
  if (wish.kind == WishKind::kBefore)
    marks_row(context, key + ".others", context.say(Msg::kWishOthers), wish.others,
              [i](RaisingPlan& p, std::vector<std::string> m) { p.wishes[i].others = std::move(m); });
  if (wish.kind == WishKind::kDay || wish.kind == WishKind::kStartFrom)
    raising_count(context, key + ".number", context.say(wish.kind == WishKind::kDay ? Msg::kStepDay : Msg::kWishBent),
                  {}, wish.number, 1, 1'000'000, [i](RaisingPlan& p, int n) { p.wishes[i].number = n; });
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
