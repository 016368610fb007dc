/// Long work for the page's Workers: one request of bytes in, one answer of bytes out. Two modules have it: the app's
/// own (work_app.cpp), so that a phone downloads the core once, whose copy in the Worker never runs main(), opens no
/// window and knows no page; and one for the raising alone (work_raising.cpp), with its solvers, loaded when it is
/// asked for. A worker is stopped by ending it (web/tasks.js), so a running task never looks for a cancel message.

#include <emscripten.h>

#include <string>
#include <string_view>

#include "worker/work.h"

// clang-format off
EM_JS(void, js_task_progress, (int per_mille), { Module.progress(per_mille); });
// clang-format on

namespace {
std::string inbox, outbox;
}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE char* bb_task_buffer(int size) {
  inbox.resize(static_cast<std::size_t>(size));
  return inbox.data();
}

/// Runs the request in the buffer; behind it lies the frame that it is about, if it is about one.
EMSCRIPTEN_KEEPALIVE void bb_task_run(int request_size) {
  const std::string_view all = inbox;
  const auto size = static_cast<std::size_t>(request_size);
  outbox = bentbook::page::run_work(all.substr(0, size), all.substr(size), [](int per_mille) {
    js_task_progress(per_mille);
    return true;
  });
}

EMSCRIPTEN_KEEPALIVE const char* bb_task_answer() { return outbox.data(); }
EMSCRIPTEN_KEEPALIVE int bb_task_answer_size() { return static_cast<int>(outbox.size()); }

}  // extern "C"
