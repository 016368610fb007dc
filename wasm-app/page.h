#pragma once
/// What the page's scripts do for the C++ side, and the mailbox between them. Scripts stand in web/*.js; the object
/// that `Module.shell` names is made in web/page.js. All strings are UTF-8 with a length; nothing is kept by pointer.

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "tasks/task.h"
#include "ui/platform.h"

namespace bentbook::page {

/// The screens' platform as a browser page gives it. Answers come back through the exported bb_event().
class PagePlatform final : public screens::Platform {
 public:
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
  void begin_scan() override;
  void end_scan() override;
  void keep_awake(bool on) override;
  void ready_to_speak(bool on) override;
  void speak(std::string_view language, std::string_view text, std::int64_t ticket) override;
  void hush() override;
  void start_task(Task task) override;
  void cancel_task(const TaskId& id) override;
  void write_here() override;
  void use_new_version() override;

 private:
  /// The frame that tasks are about, as it was written last: many questions are about one.
  std::shared_ptr<const Frame> frame_;
  std::string frame_bytes_;
};

/// Dispatch a window `resize`, so that SDL measures the canvas again and sizes its pixels.
void resize_canvas();
/// Tell the mirror that the registry differs from what it showed; it asks for it when it wants (web/mirror.js).
void registry_changed();
/// A frame took `ms` of the main thread.
void frame_drawn(double ms);
/// Have the words of a language put into the module (words.cpp), and a frame drawn then.
void bring_words(std::string_view language);
/// Language tag and theme, for the page's own attributes.
void page_looks(std::string_view language, bool dark);

}  // namespace bentbook::page
