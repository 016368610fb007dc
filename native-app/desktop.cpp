#include "desktop.h"

#include <png.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <tuple>
#include <utility>

#include "machine.h"
#include "paper/pdf.h"
#include "tasks/pattern_task.h"
#include "ui/fonts.h"

namespace bentbook::desktop {

using screens::EventKind;
using screens::PlatformEvent;

void wake() {
  SDL_Event event{};
  event.type = SDL_USEREVENT;
  SDL_PushEvent(&event);
}

Desktop::~Desktop() {
  for (const auto& task : tasks_) task->cancelled = true;
  for (const auto& task : tasks_) task->thread.join();
}

void Desktop::answer(PlatformEvent event) {
  {
    const std::lock_guard lock(mutex_);
    answers_.push_back(std::move(event));
  }
  wake();
}

std::vector<PlatformEvent> Desktop::take_answers() {
  const std::lock_guard lock(mutex_);
  return std::exchange(answers_, {});
}

void Desktop::save(std::string_view key, std::int64_t revision, std::string bytes) {
  const std::optional<std::string_view> failure = storage_.write(key, bytes);
  answer({failure ? EventKind::kSaveFailed : EventKind::kSaved, std::string(key), std::string(failure.value_or("")),
          revision});
}

void Desktop::load(std::string_view key) {
  if (auto bytes = storage_.read(key))
    answer({EventKind::kLoaded, std::string(key), std::move(*bytes), 0});
  else
    answer({EventKind::kReadOnly, {}, {}, static_cast<std::int64_t>(screens::Hindrance::kUnread)});
}

void Desktop::erase(std::string_view key) { storage_.erase(key); }

void Desktop::erase_log(std::string_view log) { storage_.erase_log(log); }

void Desktop::append(std::string_view log, std::int64_t ticket, std::vector<screens::LogRecord> records) {
  std::string lines;
  for (const screens::LogRecord& r : records) put_record(lines, r.device, r.sequence, r.bytes);
  const std::optional<std::string_view> failure = storage_.append(log, lines);
  answer({failure ? EventKind::kAppendFailed : EventKind::kAppended, std::string(log),
          std::string(failure.value_or("")), ticket});
}

void Desktop::read_log(std::string_view log, const std::vector<screens::LogRecord>& known) {
  auto records = storage_.read_records(log);
  if (!records) return answer({EventKind::kLogRead, std::string(log), {}, 1});
  for (const screens::LogRecord& k : known) {
    const auto from = records->lower_bound({k.device, 0, {}}),
               to = records->lower_bound({k.device, k.sequence + 1, {}});
    if (std::distance(from, to) != k.sequence) return answer({EventKind::kLogRead, std::string(log), {}, 2});
    records->erase(from, to);
  }
  std::string lines;
  for (const Record& record : *records) lines += std::get<2>(record);
  answer({EventKind::kLogRead, std::string(log), std::move(lines), 0});
}

std::int64_t Desktop::wall_clock_ms() { return desktop::wall_clock_ms(); }

int Desktop::clock_ahead_minutes(std::int64_t wall_ms) { return desktop::clock_ahead_minutes(wall_ms); }

std::uint64_t Desktop::random_bits() { return desktop::random_bits(); }

void Desktop::share_file(std::string name, std::string, std::string bytes) {
  const bool written = storage_.hand_out(name, bytes);
  answer({EventKind::kShared, std::move(name), written ? "" : "other", 0});
}

void Desktop::share_picture(std::string name, int width, int height, std::string rgba) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(width);
  image.height = static_cast<png_uint_32>(height);
  image.format = PNG_FORMAT_RGBA;
  std::string bytes(PNG_IMAGE_PNG_SIZE_MAX(image), 0);
  png_alloc_size_t size = bytes.size();
  if (png_image_write_to_memory(&image, bytes.data(), &size, 0, rgba.data(), 0, nullptr) == 0)
    return answer({EventKind::kShared, std::move(name), "other", 0});
  bytes.resize(size);
  share_file(std::move(name), "image/png", std::move(bytes));
}

void Desktop::copy_text(std::string text) {
  answer({EventKind::kCopied, {}, {}, SDL_SetClipboardText(text.c_str()) == 0 ? 1 : 0});
}

void Desktop::share_text(std::string text) { copy_text(std::move(text)); }

void Desktop::open_file() {
  // A file is opened by dropping it on the window.
}

void Desktop::drop_file(const char* path) {
  std::FILE* file = std::fopen(path, "rb");
  if (file == nullptr) return;
  std::string bytes;
  char part[65536];
  for (std::size_t n; (n = std::fread(part, 1, sizeof part, file)) > 0;) bytes.append(part, n);
  std::fclose(file);
  const std::string_view whole = path;
  answer({EventKind::kFileOpened, std::string(whole.substr(whole.rfind('/') + 1)), std::move(bytes), 0});
}

void Desktop::begin_text(const screens::TextRequest& request) { text_ = TextEdit{request, request.value}; }

void Desktop::end_text() { text_.reset(); }

void Desktop::commit_text() {
  if (!text_) return;
  answer({EventKind::kTextCommitted, text_->request.key, text_->text, 0});
  end_text();
}

void Desktop::cancel_text() {
  if (!text_) return;
  answer({EventKind::kTextCancelled, text_->request.key, "", 0});
  end_text();
}

void Desktop::keep_awake(bool on) {
  if (on)
    SDL_DisableScreenSaver();
  else
    SDL_EnableScreenSaver();
  answer({EventKind::kAwake, "", "", on ? 1 : 0});
}

void Desktop::forget_done_tasks() {
  for (const auto& task : tasks_)
    if (task->done) task->thread.join();
  std::erase_if(tasks_, [](const auto& task) { return !task->thread.joinable(); });
}

bool Desktop::busy() const {
  return std::any_of(tasks_.begin(), tasks_.end(), [](const auto& task) { return !task->done; });
}

Result<TaskAnswer> Desktop::run(const TaskRequest& request, const Progress& progress) {
  if (const auto* pattern = std::get_if<PatternRequest>(&request))
    return run_pattern(*pattern, progress).map([](PatternSheet&& sheet) { return TaskAnswer(std::move(sheet)); });
  if (const auto* paper = std::get_if<PaperRequest>(&request))
    return paper::write_pdf(*paper->document, {screens::regular_font_file(), screens::bold_font_file()})
        .map([](std::string&& pdf) { return TaskAnswer(PaperFile{std::move(pdf)}); });
  const std::lock_guard lock(raising_mutex_);
  return raising_.run(request, progress);
}

void Desktop::tell(const Running& running, TaskEvent event) {
  if (running.cancelled) return;
  event.id = running.id;
  answer({EventKind::kTask, {}, {}, 0, std::make_shared<const TaskEvent>(std::move(event))});
}

void Desktop::start_task(Task task) {
  forget_done_tasks();
  tasks_.push_back(std::make_unique<Running>());
  Running& running = *tasks_.back();
  running.id = task.id;
  running.thread = std::thread([this, &running, request = std::move(task.request)] {
    Result<TaskAnswer> result = run(request, [&](int per_mille) {
      tell(running, {{}, per_mille, std::nullopt});
      return !running.cancelled;
    });
    tell(running, {{}, 1000, std::move(result)});
    running.done = true;
  });
}

void Desktop::cancel_task(const TaskId& id) {
  for (const auto& task : tasks_)
    if (task->id == id) task->cancelled = true;
}

}  // namespace bentbook::desktop
