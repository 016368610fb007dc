#include "screens/app/aloud.h"

#include <algorithm>

#include "screens/app/context.h"
#include "words/aloud/aloud.h"

namespace bentbook::screens {
namespace {

std::string sentence(const Item& item, Language language) {
  if (item.role == Role::kAnswer) return aloud_sentence(item.name, item.value, language);
  if (item.role == Role::kText || item.role == Role::kHeading) return aloud_sentence(item.name, {}, language);
  return {};
}

}  // namespace

void Aloud::take(const PlatformEvent& event) {
  if (event.kind == EventKind::kVoices) voices_ = " " + event.text + " ";
  if (event.kind == EventKind::kSpoken && event.number == ticket_) by_.clear();
}

bool Aloud::can_speak(Language language) const {
  const std::string_view tag = language_tag(language);
  return voices_.find(" " + std::string(tag.substr(0, tag.find('-'))) + " ") != std::string::npos;
}

void Aloud::ask(std::string_view by, std::initializer_list<std::string_view> of) {
  by_ = by;
  asked_.assign(of.begin(), of.end());
}

void Aloud::hush() {
  if (by_.empty()) return;
  by_.clear();
  asked_.clear();
  platform_.hush();
}

void Aloud::answer(const Registry& registry, Language language) {
  if (asked_.empty()) return;
  std::string said;
  for (const Item& item : registry.items()) {
    if (std::none_of(asked_.begin(), asked_.end(), [&](const std::string& of) { return item.key.starts_with(of); }))
      continue;
    const std::string next = sentence(item, language);
    if (!said.empty() && !next.empty()) said += ' ';
    said += next;
  }
  asked_.clear();
  platform_.speak(language_tag(language), said, ++ticket_);
}

void aloud_row(Context& context, std::string_view key, std::initializer_list<std::string_view> of) {
  Ui& ui = context.ui;
  Aloud& aloud = context.aloud;
  if (!context.kit.settings.read_aloud || !aloud.can_speak(ui.language)) return;
  const bool on = aloud.speaks(key);
  if (!button(ui, key, context.say(on ? Msg::kAloudStop : Msg::kAloudRead))) return;
  if (on)
    aloud.hush();
  else
    aloud.ask(key, of);
}

}  // namespace bentbook::screens
