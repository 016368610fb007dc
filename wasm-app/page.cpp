#include "page.h"

#include <emscripten.h>

#include <utility>

#include "tasks/border.h"
#include "tasks/paper_fields.h"
#include "ui/fonts.h"

// EM_JS bodies are JavaScript: the formatter and the pedantic compiler have no say in them.
// clang-format off
EM_JS(void, js_save, (const char* key, int key_size, double revision, const char* bytes, int size), {
  Module.shell.save(Module.text(key, key_size), revision, HEAPU8.slice(bytes, bytes + size));
});
EM_JS(void, js_load, (const char* key, int key_size), { Module.shell.load(Module.text(key, key_size)); });
EM_JS(void, js_erase, (const char* key, int key_size), { Module.shell.erase(Module.text(key, key_size)); });
EM_JS(void, js_erase_log, (const char* log, int log_size), { Module.shell.eraseLog(Module.text(log, log_size)); });
EM_JS(void, js_append, (const char* log, int log_size, double ticket, const char* bytes, int size), {
  Module.shell.append(Module.text(log, log_size), ticket, HEAPU8.slice(bytes, bytes + size));
});
EM_JS(void, js_read_log, (const char* log, int log_size, const char* bytes, int size), {
  Module.shell.readLog(Module.text(log, log_size), HEAPU8.slice(bytes, bytes + size));
});
EM_JS(int, js_random, (), { return crypto.getRandomValues(new Int32Array(1))[0]; });
EM_JS(double, js_wall_clock, (), { return Date.now(); });
EM_JS(int, js_clock_ahead, (double ms), { return -new Date(ms).getTimezoneOffset(); });
EM_JS(void, js_share, (const char* name, int name_size, const char* mime, int mime_size, const char* bytes, int size), {
  Module.shell.share(Module.text(name, name_size), Module.text(mime, mime_size), HEAPU8.slice(bytes, bytes + size));
});
EM_JS(void, js_copy, (const char* text, int size), { Module.shell.copy(Module.text(text, size)); });
EM_JS(void, js_share_picture, (const char* name, int name_size, int width, int height, const char* rgba), {
  Module.shell.sharePicture(Module.text(name, name_size), width, height,
                            HEAPU8.slice(rgba, rgba + 4 * width * height));
});
EM_JS(void, js_share_text, (const char* text, int size), { Module.shell.shareText(Module.text(text, size)); });
EM_JS(void, js_open, (), { Module.shell.open(); });
EM_JS(void, js_begin_text, (const char* key, int key_size, const char* label, int label_size, const char* value,
                            int value_size, double x, double y, double w, double h, int max_bytes), {
  Module.shell.beginText({key: Module.text(key, key_size), label: Module.text(label, label_size),
                          value: Module.text(value, value_size), x: x, y: y, w: w, h: h, maxBytes: max_bytes});
});
EM_JS(void, js_end_text, (), { Module.shell.endText(); });
EM_JS(void, js_scan, (int on), { Module.shell.scan(!!on); });
EM_JS(void, js_keep_awake, (int on), { Module.shell.keepAwake(!!on); });
EM_JS(void, js_ready_to_speak, (int on), { Module.shell.readyToSpeak(!!on); });
EM_JS(void, js_speak, (const char* tag, int tag_size, const char* text, int text_size, double ticket), {
  Module.shell.speak(Module.text(tag, tag_size), Module.text(text, text_size), ticket);
});
EM_JS(void, js_hush, (), { Module.shell.hush(); });
EM_JS(void, js_start_task, (int crew, const char* name, int name_size, const char* request, int request_size,
                            const char* behind, int behind_size), {
  Module.shell.startTask(['app', 'raising', 'paper'][crew], Module.text(name, name_size),
                         HEAPU8.slice(request, request + request_size), HEAPU8.slice(behind, behind + behind_size));
});
EM_JS(void, js_cancel_task, (const char* id, int id_size), { Module.shell.cancelTask(Module.text(id, id_size)); });
EM_JS(void, js_write_here, (), { Module.shell.writeHere(); });
EM_JS(void, js_use_new_version, (), { Module.shell.useNewVersion(); });
EM_JS(void, js_resize, (), { window.dispatchEvent(new Event('resize')); });
EM_JS(void, js_registry_changed, (), { Module.shell.registryChanged(); });
EM_JS(void, js_frame_drawn, (double ms), { Module.shell.frameDrawn(ms); });
EM_JS(void, js_bring_words, (const char* tag, int size), { Module.shell.bringWords(Module.text(tag, size)); });
EM_JS(void, js_looks, (const char* tag, int size, int dark), { Module.shell.looks(Module.text(tag, size), !!dark); });
// clang-format on

namespace bentbook::page {
namespace {
int size_of(std::string_view s) { return static_cast<int>(s.size()); }

/// Three lines a record: device, sequence, bytes (web/events.mjs reads them).
std::string lines_of(const std::vector<screens::LogRecord>& records) {
  std::string out;
  for (const screens::LogRecord& r : records)
    out += r.device + '\n' + std::to_string(r.sequence) + '\n' + r.bytes + '\n';
  return out;
}
}  // namespace

void PagePlatform::save(std::string_view key, std::int64_t revision, std::string bytes) {
  js_save(key.data(), size_of(key), static_cast<double>(revision), bytes.data(), size_of(bytes));
}

void PagePlatform::load(std::string_view key) { js_load(key.data(), size_of(key)); }

void PagePlatform::erase(std::string_view key) { js_erase(key.data(), size_of(key)); }

void PagePlatform::erase_log(std::string_view log) { js_erase_log(log.data(), size_of(log)); }

void PagePlatform::append(std::string_view log, std::int64_t ticket, std::vector<screens::LogRecord> records) {
  const std::string bytes = lines_of(records);
  js_append(log.data(), size_of(log), static_cast<double>(ticket), bytes.data(), size_of(bytes));
}

void PagePlatform::read_log(std::string_view log, const std::vector<screens::LogRecord>& known) {
  const std::string bytes = lines_of(known);
  js_read_log(log.data(), size_of(log), bytes.data(), size_of(bytes));
}

std::int64_t PagePlatform::wall_clock_ms() { return static_cast<std::int64_t>(js_wall_clock()); }

int PagePlatform::clock_ahead_minutes(std::int64_t wall_ms) { return js_clock_ahead(static_cast<double>(wall_ms)); }

std::uint64_t PagePlatform::random_bits() {
  const auto half = [] { return static_cast<std::uint64_t>(static_cast<std::uint32_t>(js_random())); };
  const std::uint64_t high = half();
  return high << 32 | half();
}

void PagePlatform::share_file(std::string name, std::string mime, std::string bytes) {
  js_share(name.data(), size_of(name), mime.data(), size_of(mime), bytes.data(), size_of(bytes));
}

void PagePlatform::share_picture(std::string name, int width, int height, std::string rgba) {
  js_share_picture(name.data(), size_of(name), width, height, rgba.data());
}

void PagePlatform::copy_text(std::string text) { js_copy(text.data(), size_of(text)); }

void PagePlatform::share_text(std::string text) { js_share_text(text.data(), size_of(text)); }

void PagePlatform::open_file() { js_open(); }

void PagePlatform::begin_text(const screens::TextRequest& r) {
  js_begin_text(r.key.data(), size_of(r.key), r.label.data(), size_of(r.label), r.value.data(), size_of(r.value),
                static_cast<double>(r.rect.x), static_cast<double>(r.rect.y), static_cast<double>(r.rect.w),
                static_cast<double>(r.rect.h), r.max_bytes);
}

void PagePlatform::end_text() { js_end_text(); }

void PagePlatform::begin_scan() { js_scan(1); }

void PagePlatform::end_scan() { js_scan(0); }

void PagePlatform::keep_awake(bool on) { js_keep_awake(on ? 1 : 0); }

void PagePlatform::ready_to_speak(bool on) { js_ready_to_speak(on ? 1 : 0); }

void PagePlatform::speak(std::string_view language, std::string_view text, std::int64_t ticket) {
  js_speak(language.data(), size_of(language), text.data(), size_of(text), static_cast<double>(ticket));
}

void PagePlatform::hush() { js_hush(); }

void PagePlatform::start_task(Task task) {
  const std::string name = task_name(task.id), request = write_request(task.request);
  const auto start = [&](int crew, const std::string& behind) {
    js_start_task(crew, name.data(), size_of(name), request.data(), size_of(request), behind.data(), size_of(behind));
  };
  if (task.id.kind == TaskKind::kPaper)
    return start(2, write_fonts(screens::regular_font_file(), screens::bold_font_file()));
  std::shared_ptr<const Frame> frame = frame_of(task.request);
  if (frame == nullptr) return start(0, {});
  if (frame != frame_) {
    frame_bytes_ = write_frame(*frame);
    frame_ = std::move(frame);
  }
  start(1, frame_bytes_);
}

void PagePlatform::cancel_task(const TaskId& id) {
  const std::string name = task_name(id);
  js_cancel_task(name.data(), size_of(name));
}

void PagePlatform::write_here() { js_write_here(); }

void PagePlatform::use_new_version() { js_use_new_version(); }

void resize_canvas() { js_resize(); }
void registry_changed() { js_registry_changed(); }
void frame_drawn(double ms) { js_frame_drawn(ms); }
void bring_words(std::string_view language) { js_bring_words(language.data(), size_of(language)); }
void page_looks(std::string_view language, bool dark) { js_looks(language.data(), size_of(language), dark ? 1 : 0); }

}  // namespace bentbook::page
