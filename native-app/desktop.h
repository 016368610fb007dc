#pragma once
/// What a desktop does for the screens: files in the data folder, tasks in a thread, a text field of its own.

#include <SDL.h>

#include <atomic>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "storage.h"
#include "tasks/raising_task.h"
#include "ui/platform.h"

namespace bentbook::desktop {

/// The window may be asleep in SDL_WaitEvent; from any thread.
void wake();

/// The text being typed over a field of the screens.
struct TextEdit {
  screens::TextRequest request;
  std::string text;
};

class Desktop : public screens::Platform {
 public:
  ~Desktop() override;
  Desktop() = default;
  Desktop(const Desktop&) = delete;
  Desktop& operator=(const Desktop&) = delete;

  void save(std::string_view key, std::int64_t revision, std::string bytes) override;
  void load(std::string_view key) override;
  void erase(std::string_view key) override;
  void erase_log(std::string_view log) override;
  void append(std::string_view log, std::int64_t ticket, std::vector<screens::LogRecord> records) override;
  void read_log(std::string_view log, const std::vector<screens::LogRecord>& known) override;
  [[nodiscard]] std::int64_t wall_clock_ms() override;
  [[nodiscard]] int clock_ahead_minutes(std::int64_t wall_ms) override;
  [[nodiscard]] std::uint64_t random_bits() override;
  void share_file(std::string name, std::string mime, std::string bytes) override;
  void share_picture(std::string name, int width, int height, std::string rgba) override;
  void copy_text(std::string text) override;
  void share_text(std::string text) override;
  void open_file() override;
  void begin_text(const screens::TextRequest& request) override;
  void end_text() override;
  void begin_scan() override { answer({screens::EventKind::kScanEnded, "scan", "none", 0}); }
  void end_scan() override {}
  void keep_awake(bool on) override;
  void ready_to_speak(bool) override {}
  void speak(std::string_view, std::string_view, std::int64_t) override {}  // it names no voice
  void hush() override {}
  void start_task(Task task) override;
  void cancel_task(const TaskId& id) override;
  void write_here() override { wants_to_write_ = true; }
  void use_new_version() override {}

  /// Answers for App::on(), in order; from any thread in, from the window's thread out.
  void answer(screens::PlatformEvent event);
  [[nodiscard]] std::vector<screens::PlatformEvent> take_answers();

  /// Asked since the last time whether this window is to write.
  [[nodiscard]] bool take_wish_to_write() { return std::exchange(wants_to_write_, false); }
  [[nodiscard]] Storage& storage() { return storage_; }
  [[nodiscard]] std::optional<TextEdit>& text() { return text_; }
  [[nodiscard]] const std::optional<TextEdit>& text() const { return text_; }
  void commit_text();
  void cancel_text();
  void drop_file(const char* path);
  /// Long work is under way (a script waits for it).
  [[nodiscard]] bool busy() const;

 private:
  struct Running {
    TaskId id;
    std::thread thread;
    std::atomic<bool> cancelled{false}, done{false};
  };
  void forget_done_tasks();
  Result<TaskAnswer> run(const TaskRequest& request, const Progress& progress);
  /// Of a task that is still wanted.
  void tell(const Running& running, TaskEvent event);

  Storage storage_;
  bool wants_to_write_ = false;
  std::optional<TextEdit> text_;
  std::vector<std::unique_ptr<Running>> tasks_;
  RaisingTasks raising_;
  std::mutex raising_mutex_;  // guards raising_: one of its tasks at a time
  std::mutex mutex_;          // guards answers_
  std::vector<screens::PlatformEvent> answers_;
};

}  // namespace bentbook::desktop
