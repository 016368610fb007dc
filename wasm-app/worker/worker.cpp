/// The headless core for the page's Worker: one request of bytes in, one answer of bytes out. The worker is stopped by
/// ending it (web/tasks.js), so a running task never has to look for a cancel message.

#include <emscripten.h>

#include <string>

#include "answers/task.h"

// clang-format off
EM_JS(void, js_progress, (int per_mille), { Module.progress(per_mille); });
// clang-format on

namespace {
std::string inbox, outbox;
}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE char* bb_buffer(int size) {
  inbox.resize(static_cast<std::size_t>(size));
  return inbox.data();
}

/// Runs the request in the buffer. True: bb_answer() is the answer's bytes; false: the error's text.
EMSCRIPTEN_KEEPALIVE bool bb_run() {
  const auto answer = bentbook::run_task(inbox, [](int per_mille) {
    js_progress(per_mille);
    return true;
  });
  outbox = answer ? *answer : answer.error().where;
  return answer.has_value();
}

EMSCRIPTEN_KEEPALIVE const char* bb_answer() { return outbox.data(); }
EMSCRIPTEN_KEEPALIVE int bb_answer_size() { return static_cast<int>(outbox.size()); }

}  // extern "C"

int main() { return 0; }
