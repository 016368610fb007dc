#include <string>
#include <utility>

#include "screens/app/app_inside.h"
#include "screens/form/field_form.h"

namespace bentbook::screens {
namespace {

constexpr double kStepToastMs = 5000;

/// The change from one to the other by the first touched field that differs; "" where none does.
template <class Values, class Find>
std::string step_between(const std::vector<NamedField>& touched, const Values* from, const Values* to,
                         const Voice& voice, const Find& find) {
  if (from == nullptr || to == nullptr) return {};
  for (const NamedField& field : touched) {
    const auto was = find(*from, field.path), is = find(*to, field.path);
    if (!was || !is || was->value == is->value) continue;
    const std::string first = field_text(voice, *was), second = field_text(voice, *is);
    if (first.empty() || second.empty()) return field.name;
    return say(Msg::kStepOf, voice.language, {{"field", field.name}, {"from", first}, {"to", second}});
  }
  return {};
}

}  // namespace

/// Found once for each state, not in every frame.
void App::Impl::word_steps() {
  const bool book = edits_book();
  const Stored& store = book ? desk.book_store() : places_store;
  std::string of = store.key + ':' + std::to_string(store.revision) + (can_undo() ? "u" : "-") +
                   (can_redo() ? "r" : "-") + std::to_string(static_cast<int>(language()));
  if (of == step_words.of) return;
  step_words = {};
  if (store.unusable) return;  // its revisions stand still
  step_words.of = std::move(of);
  const Voice voice{language(), kit.now().settings.lengths, Marks::kScreen};
  if (book) {
    if (desk.state() != BooksDesk::State::kOpen) return;
    const Frame* frame = *desk.model().frame ? &**desk.model().frame : nullptr;
    const auto find = [frame](const Book& values, const std::string& path) { return field_at(values, path, frame); };
    step_words.undo = step_between(touched, &desk.book(), desk.before(), voice, find);
    step_words.redo = step_between(touched, &desk.book(), desk.after(), voice, find);
    return;
  }
  const auto find = [](const Places& values, const std::string& path) { return field_at(values, path); };
  step_words.undo = step_between(touched, &places.now(), places.before(), voice, find);
  step_words.redo = step_between(touched, &places.now(), places.after(), voice, find);
}

void App::Impl::say_step(std::string words) {
  if (!words.empty()) toast = {std::move(words), Toast::Undoes::kNothing, now_ms + kStepToastMs};
}

}  // namespace bentbook::screens
