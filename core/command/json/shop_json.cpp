#include "command/json/shop_json.h"

#include "command/json/json_out.h"
#include "frame/keys.h"
#include "shop/log/conflicts.h"
#include "words/shop_words.h"

namespace bentbook {
namespace {

std::string device_text(std::uint64_t device) {
  const std::string text = id_text({device, 1});
  return text.substr(0, text.find('.'));
}

void event(JsonOut& out, const Event& e) {
  out.open_item();
  out.text("device", device_text(e.device));
  out.count("sequence", static_cast<std::int64_t>(e.sequence));
  out.count("logical", static_cast<std::int64_t>(e.logical));
  out.count("wall_ms", e.wall);
  out.text("action", keys::word(kActionWords, e.action));
  out.text("who", e.who);
  out.text("timber", e.timber);
  out.text("step", e.step);
  out.text("value", e.value);
  out.text("note", e.note);
  out.close();
}

void claim(JsonOut& out, const Claim& c) {
  out.open_item();
  out.text("action", keys::word(kActionWords, c.action));
  out.text("event", id_text(c.id));
  out.count("wall_ms", c.wall);
  out.text("who", c.who);
  out.text("value", c.value);
  out.text("note", c.note);
  out.close();
}

void timber_state(JsonOut& out, const TimberState& timber) {
  out.open_item();
  out.text("mark", timber.mark);
  out.flag("held", timber.held());
  out.open_list("steps");
  for (const StepState& step : timber.steps) {
    out.open_item();
    out.text("step", step.step);
    out.open_list("claims");
    for (const Claim& c : step.claims) claim(out, c);
    out.close_list();
    out.close();
  }
  out.close_list();
  out.close();
}

void conflicts(JsonOut& out, const ShopState& state, const Voice& voice) {
  out.open_list("conflicts");
  for (const Conflict& c : conflicts_of(state)) {
    out.open_item();
    out.text("kind", keys::word(kConflictWords, c.kind));
    out.text("timber", c.timber);
    out.text("step", c.step);
    out.text("first", id_text(c.first));
    out.text("second", id_text(c.second));
    out.count("sides", static_cast<std::int64_t>(c.sides));
    out.text("text", conflict_text(c, voice));
    out.close();
  }
  out.close_list();
}

void numbers(JsonOut& out, const WorkStep& step, const Voice& voice) {
  out.open_list("numbers");
  for (const StepNumber& n : step.numbers) {
    out.open_item();
    out.text("name", keys::word(kStepNumberWords, n.name));
    out.number("value", n.value, 4);
    if (n.from) out.count("face", static_cast<int>(*n.from));
    out.text("text", step_value_text(n, voice));
    out.close();
  }
  out.close_list();
}

void work_step(JsonOut& out, const WorkStep& step, bool done, const Voice& voice) {
  out.open_item();
  out.text("id", step.id);
  out.text("word", step.word);
  out.text("text", step_text(step, voice.language));
  if (step.part != StepPart::kWhole) {
    out.text("of", step.of);
    out.text("part", keys::word(kStepPartWords, step.part));
  }
  if (const auto up = step.face_up()) out.count("face_up", static_cast<int>(*up));
  out.text("workplace", keys::word(kWorkplaceWords, step.place));
  out.text("tick", keys::word(kTickWords, step.tick));
  if (step.end) out.text("end", keys::word(keys::kEnd, *step.end));
  if (!step.mate.empty()) out.text("mate", step.mate);
  numbers(out, step, voice);
  out.texts("cautions", caution_keys(step.cautions));
  if (step.tolerance) {
    out.length("wanted", step.wanted);
    out.length("tolerance", *step.tolerance);
  }
  out.flag("done", done);
  out.close();
}

void flags(JsonOut& out, const TimberProgress& progress, const Voice& voice) {
  out.open_list("flags");
  for (const StepFlag& flag : progress.flags) {
    out.open_item();
    out.text("step", flag.step);
    out.flag("gone", flag.gone);
    if (!flag.gone) out.text("number", keys::word(kStepNumberWords, flag.number));
    if (flag.was) out.number("was", *flag.was, 4);
    if (flag.now) out.number("now", *flag.now, 4);
    out.text("text", flag_text(flag, voice));
    out.close();
  }
  out.close_list();
}

}  // namespace

std::string log_json(const Log& log, const ShopState& state, const Voice& voice) {
  JsonOut out(voice);
  out.text("book", log.book);
  out.open_list("events");
  for (const Event& e : log.events) event(out, e);
  out.close_list();
  out.open_list("devices");
  for (const auto& [device, d] : state.devices) {
    out.open_item();
    out.text("device", device_text(device));
    out.count("last", static_cast<std::int64_t>(d.last));
    out.count("whole", static_cast<std::int64_t>(d.whole));
    out.close();
  }
  out.close_list();
  out.open_list("timbers");
  for (const TimberState& timber : state.timbers) timber_state(out, timber);
  out.close_list();
  conflicts(out, state, voice);
  return out.finish();
}

std::string writers_json(const std::vector<Writer>& writers, const Voice& voice) {
  JsonOut out(voice);
  out.open_list("writers");
  for (const Writer& writer : writers) {
    out.open_item();
    out.text("who", writer.who);
    out.count("events", static_cast<std::int64_t>(writer.events));
    out.count("from_ms", writer.from);
    out.count("to_ms", writer.to);
    std::vector<std::string> devices;
    devices.reserve(writer.devices.size());
    for (const std::uint64_t device : writer.devices) devices.push_back(device_text(device));
    out.texts("devices", devices);
    out.close();
  }
  out.close_list();
  return out.finish();
}

std::string log_check_json(const LogScan& scan, const Voice& voice) {
  JsonOut out(voice);
  out.flag("whole", scan.troubles.empty());
  out.count("good", static_cast<std::int64_t>(scan.log.events.size()));
  out.open_list("troubles");
  for (const LogTrouble& trouble : scan.troubles) {
    out.open_item();
    out.count("line", trouble.line);
    out.text("text", log_trouble_text(trouble, voice));
    out.close();
  }
  out.close_list();
  return out.finish();
}

std::string steps_json(const Timber& timber, const TimberWork& work, const ShopState& state, const Voice& voice) {
  const TimberProgress& progress = work.progress;
  JsonOut out(voice);
  out.text("mark", timber.mark);
  out.text("kind", keys::word(keys::kTimberKind, timber.kind));
  out.open_list("ticks");
  for (std::size_t t = 0; t < progress.ticks.size(); ++t) {
    out.open_item();
    out.text("tick", kTickWords[t]);
    out.count("steps", progress.ticks[t].steps);
    out.count("done", progress.ticks[t].done);
    out.close();
  }
  out.close_list();
  out.flag("held", progress.held);
  if (progress.next >= 0) out.text("next", work.steps[static_cast<std::size_t>(progress.next)].id);
  out.open_list("steps");
  for (std::size_t i = 0; i < work.steps.size(); ++i) work_step(out, work.steps[i], progress.done[i], voice);
  out.close_list();
  flags(out, progress, voice);
  out.open_list("log");
  if (const TimberState* known = state.find(timber.mark)) timber_state(out, *known);
  out.close_list();
  return out.finish();
}

}  // namespace bentbook
