#pragma once
/// The screens without a window: an App on a platform that only remembers, fingers and keys put in, the registry read
/// out. Time is counted by the bed; nothing waits.
///
///   Bed bed;                          // a first visit whose caution was read, at 390 × 844
///   bed.tap("rafter.span");           // by key, where it can be seen
///   bed.type_on_keypad({"digit.2", "digit.4", "done"});
///   REQUIRE(bed.value("rafter.span") == "24′ 0″");

#include <imgui.h>

#include <algorithm>
#include <deque>
#include <initializer_list>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "screens/app/app.h"
#include "tasks/task.h"
#include "ui/measure_text.h"

namespace bentbook::screens {

/// Keeps what it is asked to store; answers saves when told to.
class FakePlatform : public Platform {
 public:
  struct Save {
    std::string key;
    std::int64_t revision = 0;
    std::string bytes;
  };
  struct Append {
    std::string log;
    std::int64_t ticket = 0;
    std::vector<LogRecord> records;
  };
  std::vector<Save> saves;
  std::vector<Append> appends;  ///< not answered yet
  std::vector<Append> on_disk;
  bool begins_with_known = true;  ///< the logs hold what was folded into their snapshots
  bool refused_known = false;
  bool slow_disk = false;  ///< appends wait until the test answers them
  [[nodiscard]] std::string log_of(std::string_view log) const {
    std::string lines;
    for (const Append& a : on_disk)
      for (const LogRecord& r : a.records)
        if (a.log == log) lines += r.bytes + '\n';
    return lines;
  }
  std::vector<TextRequest> text_requests;
  std::vector<std::string> shared, loads, log_reads, erased, erased_logs;
  std::vector<Task> tasks;  ///< started, not answered yet
  std::vector<TaskId> cancelled;
  std::vector<std::string> spoken;  ///< "" where it was told to be silent
  std::int64_t speech = 0;          ///< ticket of the last
  bool ready_for_speech = false;
  std::vector<std::string> copied;
  std::string shared_bytes;
  std::uint64_t randoms = 0xb0;
  std::int64_t wall_clock = 1'700'000'000'000;
  int clock_ahead = 0;
  bool scanning = false, awake = false, updated = false, wants_to_write = false;

  void save(std::string_view key, std::int64_t revision, std::string bytes) override {
    saves.push_back({std::string(key), revision, std::move(bytes)});
  }
  void load(std::string_view key) override { loads.emplace_back(key); }
  void erase(std::string_view key) override {
    erased.emplace_back(key);
    for (Save& s : saves)
      if (s.key == key) s.bytes.clear();
  }
  void erase_log(std::string_view log) override { erased_logs.emplace_back(log); }
  void append(std::string_view log, std::int64_t ticket, std::vector<LogRecord> records) override {
    appends.push_back({std::string(log), ticket, std::move(records)});
  }
  void read_log(std::string_view log, const std::vector<LogRecord>& known) override {
    log_reads.emplace_back(log);
    refused_known = !known.empty() && !begins_with_known;
  }
  std::int64_t wall_clock_ms() override { return wall_clock; }
  int clock_ahead_minutes(std::int64_t) override { return clock_ahead; }
  std::uint64_t random_bits() override { return ++randoms; }
  void share_file(std::string name, std::string, std::string bytes) override {
    shared.push_back(std::move(name));
    shared_bytes = std::move(bytes);
  }
  void share_picture(std::string name, int, int, std::string) override { shared.push_back(std::move(name)); }
  void copy_text(std::string text) override { copied.push_back(std::move(text)); }
  void share_text(std::string text) override { shared.push_back(std::move(text)); }
  void open_file() override {}
  void begin_text(const TextRequest& request) override { text_requests.push_back(request); }
  void end_text() override {}
  void begin_scan() override { scanning = true; }
  void end_scan() override { scanning = false; }
  void keep_awake(bool on) override { awake = on; }
  void ready_to_speak(bool on) override { ready_for_speech = on; }
  void speak(std::string_view language, std::string_view text, std::int64_t ticket) override {
    spoken.push_back(std::string(language) + ": " + std::string(text));
    speech = ticket;
  }
  void hush() override { spoken.emplace_back(); }
  void start_task(Task task) override { tasks.push_back(std::move(task)); }
  void cancel_task(const TaskId& id) override { cancelled.push_back(id); }
  void write_here() override { wants_to_write = true; }
  void use_new_version() override { updated = true; }
  /// The bytes stored last under a key; "" if none.
  [[nodiscard]] std::string stored(std::string_view key) const {
    for (auto s = saves.rbegin(); s != saves.rend(); ++s)
      if (s->key == key) return s->bytes;
    return {};
  }
};

class Bed {
 public:
  FakePlatform platform;
  App app{platform};
  double now = 1000;

  explicit Bed(float width = 390, float height = 844, bool past_welcome = true) {
    Viewport v;
    v.width = width;
    v.height = height;
    v.reduced_motion = true;
    app.load("", "");
    view(v);
    if (past_welcome) tap("welcome.understood");
  }

  void view(const Viewport& v) {
    app.set_viewport(v);
    rest();
  }
  /// The phone is set to that language.
  void speak(std::string_view language, float width, float height) {
    Viewport v;
    v.width = width;
    v.height = height;
    v.language = language;
    v.reduced_motion = true;
    view(v);
  }

  /// Draws frames until nothing changes any more, as a shell would. Returns how many.
  int rest() {
    for (int frames = 1; frames < 200; ++frames) {
      answer_loads();
      now += 16;
      if (app.frame(now) != 0 && platform.loads.empty() && platform.log_reads.empty()) return frames;
    }
    throw std::runtime_error("the screens do not come to rest");
  }
  /// What was asked of the storage is answered.
  void answer_loads() {
    for (const std::string& log : std::exchange(platform.log_reads, {}))
      app.on(platform.refused_known ? PlatformEvent{EventKind::kLogRead, log, {}, 2}
                                    : PlatformEvent{EventKind::kLogRead, log, platform.log_of(log), 0});
    if (!platform.slow_disk) answer_appends();
    for (const std::string& key : std::exchange(platform.loads, {}))
      app.on({EventKind::kLoaded, key, platform.stored(key), 0});
  }
  /// The disk has what was appended; or, with a reason, it has not.
  void answer_appends(std::string_view why = {}) {
    for (FakePlatform::Append& a : std::exchange(platform.appends, {})) {
      if (why.empty()) platform.on_disk.push_back(a);
      app.on({why.empty() ? EventKind::kAppended : EventKind::kAppendFailed, a.log, std::string(why), a.ticket});
    }
  }
  /// One frame after `ms`.
  double frame(double ms = 16) {
    now += ms;
    return app.frame(now);
  }

  [[nodiscard]] const Item& item(std::string_view key) const {
    const Item* found = app.registry().find(key);
    if (!found) throw std::runtime_error("no such item: " + std::string(key));
    return *found;
  }
  [[nodiscard]] bool shows(std::string_view key) const { return app.registry().find(key) != nullptr; }
  [[nodiscard]] const std::string& value(std::string_view key) const { return item(key).value; }

  /// Scrolls it into view first, as a person would.
  void see(std::string_view key) {
    app.act({Action::Kind::kFocus, std::string(key), {}, 0});
    rest();
  }
  void tap(std::string_view key) {
    see(key);
    const Rect r = item(key).rect;
    if (r.w <= 0 || r.h <= 0) throw std::runtime_error("cannot be seen: " + std::string(key));
    tap_at(r.x + r.w / 2, r.y + r.h / 2);
  }
  void tap_at(float x, float y) {
    finger(TouchPhase::kDown, x, y);
    rest_or_wait();
    now += 60;
    finger(TouchPhase::kUp, x, y);
    rest();
  }
  void finger(TouchPhase phase, float x, float y, std::int64_t id = 1) { app.touch(phase, id, x, y, now); }
  /// A finger that goes down, moves in steps of 16 ms, and lifts.
  void drag(float x, float y, float to_x, float to_y, int steps = 10) {
    finger(TouchPhase::kDown, x, y);
    frame();
    for (int i = 1; i <= steps; ++i) {
      const float part = static_cast<float>(i) / static_cast<float>(steps);
      now += 16;
      finger(TouchPhase::kMove, x + (to_x - x) * part, y + (to_y - y) * part);
      app.frame(now);
    }
    finger(TouchPhase::kUp, to_x, to_y);
    rest();
  }
  /// A task's answer, or why there is none.
  void end_task(const TaskId& id, Result<TaskAnswer> ended) {
    tell_task({id, 1000, std::move(ended)});
    rest();
  }
  void tell_task(TaskEvent event) {
    app.on({EventKind::kTask, {}, {}, 0, std::make_shared<const TaskEvent>(std::move(event))});
  }
  /// What came out of the real text field.
  void commit_text(std::string_view key, std::string_view text) {
    app.on({EventKind::kTextCommitted, std::string(key), std::string(text), 0});
    rest();
  }
  /// A finger that stays, through the mirror, whatever lies over it.
  void hold_by_name(std::string_view key) {
    app.act({Action::Kind::kHold, std::string(key), {}, 0});
    rest();
  }
  /// What stands twice in the registry, has no name, is too small for a finger or without a glyph; "" where all is
  /// well.
  [[nodiscard]] std::string unsound(float target = 48) const {
    std::set<std::string> keys;
    std::string wrong;
    for (const Item& item : app.registry().items()) {
      // What is scrolled to the edge shows only a part.
      const bool whole = item.touch != Touch::kNone && item.rect.h > 0 && item.scroll == 0;
      const bool small = whole && (item.rect.w < target - 4 || item.rect.h < target - 4);
      if (!keys.insert(item.key).second || item.name.empty() || small) wrong += item.key + " ";
    }
    return wrong + without_glyph();
  }
  /// What is shown in letters that no font has; "" where all is well.
  [[nodiscard]] std::string without_glyph() const {
    const auto& fonts = ImGui::GetIO().Fonts->Fonts;
    std::string wrong;
    for (const Item& item : app.registry().items())
      for (const std::string* text : {&item.name, &item.value})
        if (std::none_of(fonts.begin(), fonts.end(), [&](ImFont* font) { return has_glyphs(*font, *text); }))
          wrong += item.key + ": " + *text + "\n";
    return wrong;
  }
  /// Through the mirror.
  void press(std::string_view key) {
    app.act({Action::Kind::kPress, std::string(key), {}, 0});
    rest();
  }
  void set_text(std::string_view key, std::string_view text) {
    app.act({Action::Kind::kSetText, std::string(key), std::string(text), 0});
    rest();
  }
  void set_number(std::string_view key, double number) {
    app.act({Action::Kind::kSetNumber, std::string(key), {}, number});
    rest();
  }
  void tap_keypad(std::initializer_list<std::string_view> keys) {
    for (const std::string_view key : keys) tap("keypad." + std::string(key));
  }
  void type(std::string_view ascii) {
    for (const char c : ascii) app.character(static_cast<std::uint32_t>(c));
    rest();
  }
  void key(Key k) {
    app.key(k, true, false, false);
    app.key(k, false, false, false);
    rest();
  }

 private:
  /// A finger that is down leaves timers (long press, holds) waiting: only the frames wanted at once are drawn.
  void rest_or_wait() {
    for (int i = 0; i < 20 && frame() == 0; ++i) {
    }
  }
};

}  // namespace bentbook::screens
