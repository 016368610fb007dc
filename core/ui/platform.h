#pragma once
/// The one seam between the screens and a shell (phone page, desktop window). Every call returns at once; its outcome
/// arrives later as a PlatformEvent through App::on(). No SDL, Emscripten or JSON here.

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "ui/input.h"

namespace bentbook {
struct Task;
struct TaskEvent;
struct TaskId;
}  // namespace bentbook

namespace bentbook::screens {

/// A real text field that the shell lays over the canvas (the phone's own keyboard, autocorrect, IME).
struct TextRequest {
  std::string key;    ///< registry key of the field being edited
  std::string label;  ///< its accessible name
  std::string value;
  Rect rect;
  int max_bytes = 200;
};

/// One record of an append-only log: the device that wrote it and its number there. The bytes hold no line break.
struct LogRecord {
  std::string device;
  std::int64_t sequence = 0;
  std::string bytes;
};

/// A name under which something is stored: lower case letters and digits, at most 64 of them; behind them perhaps
/// ".shop" or ".out". A shell stores nothing under any other and finds nothing there. Values and logs have a space
/// each.
[[nodiscard]] constexpr bool is_key(std::string_view key) {
  for (const std::string_view beside : {".shop", ".out"})
    if (key.ends_with(beside)) {
      key.remove_suffix(beside.size());
      break;
    }
  if (key.empty() || key.size() > 64) return false;
  for (const char c : key)
    if ((c < 'a' || c > 'z') && (c < '0' || c > '9')) return false;
  return true;
}

/// What a shell does for the screens.
class Platform {
 public:
  virtual ~Platform() = default;
  /// Store `bytes` under `key` ("kit", "places", "shelf", a book's id) in one strict transaction. Answer: kSaved or
  /// kSaveFailed with `key` and `number` = revision. Calls are ordered; a later revision of a key may replace one still
  /// waiting.
  virtual void save(std::string_view key, std::int64_t revision, std::string bytes) = 0;
  /// Read what is stored under `key`. Answer, once it can be read: kLoaded (key, text = bytes, "" where there is
  /// nothing).
  virtual void load(std::string_view key) = 0;
  /// Take away the value stored under `key` for good. No answer.
  virtual void erase(std::string_view key) = 0;
  /// Take away the log of that name for good, and no value. No answer.
  virtual void erase_log(std::string_view log) = 0;
  /// Put records into the log of that name, all in one strict transaction; one that is there stays as it is. Calls are
  /// ordered. Answer: kAppended or kAppendFailed (key = log, number = ticket, text = why as in kSaveFailed).
  virtual void append(std::string_view log, std::int64_t ticket, std::vector<LogRecord> records) = 0;
  /// Read the records of a log, but for those of a device up to the sequence that `known` names. Answer: kLogRead (key
  /// = log, text = their bytes by device and sequence, a line each; number = 1 if the log could not be read,
  /// 2 if it does not begin with what is known).
  virtual void read_log(std::string_view log, const std::vector<LogRecord>& known) = 0;
  /// The wall clock: milliseconds since 1970, UTC.
  [[nodiscard]] virtual std::int64_t wall_clock_ms() = 0;
  /// How far the clock on the user's wall was ahead of UTC at that moment.
  [[nodiscard]] virtual int clock_ahead_minutes(std::int64_t wall_ms) = 0;
  /// 64 bits that nobody can foretell: names of devices and books.
  [[nodiscard]] virtual std::uint64_t random_bits() = 0;
  /// Hand a file to the share sheet, else to a download. Answer: kShared (text = "" or an error key).
  virtual void share_file(std::string name, std::string mime, std::string bytes) = 0;
  /// The same for a picture, as PNG: four bytes a pixel, red, green, blue, opaque, rows from the top.
  virtual void share_picture(std::string name, int width, int height, std::string rgba) = 0;
  /// Put a text on the clipboard. Answer: kCopied.
  virtual void copy_text(std::string text) = 0;
  /// Hand a text to the share sheet; where there is none, as copy_text. Answer: kShared or kCopied.
  virtual void share_text(std::string text) = 0;
  /// Let the user pick a file. Answer: kFileOpened (key = file name, text = bytes) or nothing.
  virtual void open_file() = 0;
  /// Lay a text field over `request.rect`. Answer: kTextCommitted (key, text) or kTextCancelled.
  virtual void begin_text(const TextRequest& request) = 0;
  virtual void end_text() = 0;
  /// Read codes with the camera until end_scan() or the user ends it. Answers: kScanned (text) for each code seen anew,
  /// kScanEnded (text = "" or why there is no picture: "denied", "none", "other").
  virtual void begin_scan() = 0;
  virtual void end_scan() = 0;
  virtual void keep_awake(bool on) = 0;
  /// Whether it may be asked to speak from now on: some browsers want a touch before the first word.
  virtual void ready_to_speak(bool on) = 0;
  /// Read aloud by the device's own voice, in place of what it is saying; nothing leaves the device. Answer: kSpoken
  /// (number = ticket) once it is said, broken off or refused. Only where kVoices named the language.
  virtual void speak(std::string_view language, std::string_view text, std::int64_t ticket) = 0;
  /// Be silent.
  virtual void hush() = 0;
  /// Have a task (tasks/task.h) worked out off the frame, in a Worker or a thread. Answers: kTask with how far it is,
  /// and once with how it ended: also where nothing could work it out.
  virtual void start_task(Task task) = 0;
  /// It is wanted no more, and says nothing any more.
  virtual void cancel_task(const TaskId& id) = 0;
  /// Have this page write from now on, and no other one. Answer: kReadOnly 0, with what is stored read again before it.
  virtual void write_here() = 0;
  /// Take the waiting new version into use (the page reloads; everything is saved first).
  virtual void use_new_version() = 0;
};

/// What keeps this page from writing. Nothing is edited then: what is shown may not be what is stored.
enum class Hindrance : std::uint8_t {
  kNone,
  kOther,   ///< another page or window writes
  kUnread,  ///< what is stored cannot be read for now; it is tried again
  kNewer,   ///< a newer version of the app has taken the storage over
};

enum class EventKind : std::uint8_t {
  kSaved,
  kSaveFailed,     ///< text = "quota", "closed", "other"
  kReadOnly,       ///< number = Hindrance
  kNotPersistent,  ///< the browser did not grant persistent storage
  kShared,
  kFileOpened,
  kTextCommitted,
  kTextCancelled,
  kTask,        ///< `task`; the other members mean nothing
  kNewVersion,  ///< a new version is ready; the screens offer it
  kOffline,  ///< number = 1: everything is stored for use with no signal; 0: not yet, text = "signal", "build", "room"
  kAwake,    ///< number = 1 the screen is kept awake, 0 it is not
  kLoaded,
  kAppended,
  kAppendFailed,
  kLogRead,
  kScanned,
  kScanEnded,
  kVoices,  ///< text = the languages (primary subtags, a blank between) that the device speaks without a network
  kSpoken,
  kCopied,  ///< number = 1 it is on the clipboard, 0 it was refused
};

struct PlatformEvent {
  EventKind kind = EventKind::kSaved;
  std::string key;
  std::string text;
  std::int64_t number = 0;
  std::shared_ptr<const TaskEvent> task{};
};

}  // namespace bentbook::screens
