#include "shop/log/event.h"

#include <algorithm>
#include <tuple>

#include "frame/keys.h"
#include "shop/log/record.h"
#include "shop/log/rules.h"
#include "text/hex.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

auto key_of(const Event& e) { return std::tie(e.logical, e.device, e.sequence); }
auto rest_of(const Event& e) { return std::tie(e.wall, e.action, e.who, e.timber, e.step, e.value, e.note); }

Result<void> check_texts(const Event& e) {
  const struct {
    const std::string& text;
    std::size_t most;
    const char* name;
  } texts[] = {{e.who, kLongestWho, "who"},
               {e.timber, kLongestMark, "timber"},
               {e.step, kLongestStep, "step"},
               {e.value, kLongestValue, "value"},
               {e.note, kLongestEventNote, "note"}};
  for (const auto& t : texts) {
    if (t.text.size() > t.most) return fail(ErrorCode::kTooLarge, t.name, -1, static_cast<std::int64_t>(t.most));
    if (!is_text(t.text)) return fail(ErrorCode::kSyntax, t.name);
  }
  return {};
}

Result<void> check_value(const Event& e) {
  switch (e.action) {
    case EventAction::kMeasured:
      if (!read_reading(e.value)) return fail(ErrorCode::kSyntax, "value");
      break;
    case EventAction::kReleased:
      if (e.who.empty()) return fail(ErrorCode::kMissing, "who");
      if (e.note.empty()) return fail(ErrorCode::kMissing, "note");
      if (!read_id(e.value)) return fail(ErrorCode::kSyntax, "value");
      break;
    case EventAction::kTakenBack:
      if (!read_id(e.value)) return fail(ErrorCode::kSyntax, "value");
      break;
    case EventAction::kPlate:
    case EventAction::kWitness:
    case EventAction::kStock:
    case EventAction::kPaired:
      if (e.value.empty()) return fail(ErrorCode::kMissing, "value");
      break;
    case EventAction::kNoted:
      if (e.note.empty()) return fail(ErrorCode::kMissing, "note");
      break;
    default:
      break;
  }
  return {};
}

bool wants_step(EventAction action) {
  return action == EventAction::kDone || action == EventAction::kPassed || action == EventAction::kMeasured;
}

std::string number_text(std::int64_t value) {
  std::string text = value < 0 ? "-" : "";
  put_decimal(text, static_cast<std::uint64_t>(value < 0 ? -value : value));
  return text;
}

}  // namespace

std::string id_text(EventId id) {
  std::string text;
  put_hex(text, id.device, 16);
  text += '.';
  put_decimal(text, id.sequence);
  return text;
}

Result<EventId> read_id(std::string_view text) {
  if (text.size() < 18 || text[16] != '.') return fail(ErrorCode::kSyntax, "event");
  const auto device = read_hex(text.substr(0, 16), 16);
  const auto sequence = read_decimal(text.substr(17));
  if (!device || !sequence || *sequence < 1 || *sequence > kLastTime) return fail(ErrorCode::kSyntax, "event");
  return EventId{*device, *sequence};
}

bool Reading::within() const {
  const std::int64_t off = measured.count - wanted.count;
  return (off < 0 ? -off : off) <= tolerance.count;
}

std::string reading_text(const Reading& reading) {
  return number_text(reading.measured.count) + ' ' + number_text(reading.wanted.count) + ' ' +
         number_text(reading.tolerance.count);
}

Result<Reading> read_reading(std::string_view text) {
  const auto words = words_of(text);
  if (words.size() != 3) return fail(ErrorCode::kSyntax, "value");
  std::int64_t counts[3];
  for (std::size_t i = 0; i < 3; ++i) {
    const auto count = read_signed(words[i]);
    if (!count) return fail(ErrorCode::kSyntax, "value");
    counts[i] = *count;
  }
  if (counts[2] < 0) return fail(ErrorCode::kNegative, "value");
  return Reading{{counts[0]}, {counts[1]}, {counts[2]}};
}

Result<void> check_event(const Event& e) {
  if (e.sequence < 1) return fail(ErrorCode::kTooSmall, "sequence", -1, 1);
  if (e.logical < e.sequence) return fail(ErrorCode::kTooSmall, "logical", -1, static_cast<std::int64_t>(e.sequence));
  if (e.logical > kLastTime) return fail(ErrorCode::kTooLarge, "logical", -1, static_cast<std::int64_t>(kLastTime));
  if (e.wall < 0) return fail(ErrorCode::kNegative, "wall");
  if (e.wall > static_cast<std::int64_t>(kLastTime))
    return fail(ErrorCode::kTooLarge, "wall", -1, static_cast<std::int64_t>(kLastTime));
  if (e.action > EventAction::kStepAsks) return fail(ErrorCode::kSyntax, "action");
  if (auto texts = check_texts(e); !texts) return texts;
  if (e.timber.empty()) return fail(ErrorCode::kMissing, "timber");
  if (wants_step(e.action) && e.step.empty()) return fail(ErrorCode::kMissing, "step");
  if (is_rule(e.action)) return check_rule(e);
  return check_value(e);
}

bool before(const Event& a, const Event& b) {
  if (key_of(a) != key_of(b)) return key_of(a) < key_of(b);
  return rest_of(a) < rest_of(b);
}

std::uint64_t mixed(std::uint64_t a, std::uint64_t b) {
  std::uint64_t h = (a ^ b) * 0x9E3779B97F4A7C15u;
  h ^= h >> 29;
  h *= 0xBF58476D1CE4E5B9u;
  return h ^ (h >> 32);
}

std::uint64_t text_digest(std::uint64_t h, std::string_view text) {
  h = mixed(h, text.size());
  const auto byte = [&](std::size_t i) { return static_cast<std::uint64_t>(static_cast<unsigned char>(text[i])); };
  std::size_t at = 0;
  for (; at + 8 <= text.size(); at += 8)
    h = mixed(h, byte(at) | byte(at + 1) << 8 | byte(at + 2) << 16 | byte(at + 3) << 24 | byte(at + 4) << 32 |
                     byte(at + 5) << 40 | byte(at + 6) << 48 | byte(at + 7) << 56);
  std::uint64_t rest = 0;
  for (std::size_t i = at; i < text.size(); ++i) rest |= byte(i) << (8 * (i - at));
  return at < text.size() ? mixed(h, rest) : h;
}

std::uint64_t digest_of(const Event& e) {
  std::uint64_t h = mixed(e.device, e.sequence);
  h = mixed(h, e.logical);
  h = mixed(h, static_cast<std::uint64_t>(e.wall));
  h = mixed(h, static_cast<std::uint64_t>(e.action));
  for (const std::string* text : {&e.who, &e.timber, &e.step, &e.value, &e.note}) h = text_digest(h, *text);
  return h;
}

Result<Event> next_event(const Log& log, std::uint64_t device, Event event) {
  event.device = device;
  event.sequence = 1;
  for (const Event& known : log.events)
    if (known.device == device && known.sequence >= event.sequence) event.sequence = known.sequence + 1;
  event.logical = log.events.empty() ? 1 : log.events.back().logical + 1;
  if (event.logical < event.sequence) event.logical = event.sequence;
  if (auto good = check_event(event); !good) return tl::unexpected(good.error());
  return event;
}

void add_event(Log& log, Event event) {
  const auto place = std::lower_bound(log.events.begin(), log.events.end(), event, before);
  if (place == log.events.end() || *place != event) log.events.insert(place, std::move(event));
}

Result<Log> merged(const Log& a, const Log& b) {
  if (!a.book.empty() && !b.book.empty() && a.book != b.book) return fail(ErrorCode::kConflict, "book");
  Log log;
  log.book = a.book.empty() ? b.book : a.book;
  log.events.reserve(a.events.size() + b.events.size());
  std::set_union(a.events.begin(), a.events.end(), b.events.begin(), b.events.end(), std::back_inserter(log.events),
                 before);
  return log;
}

}  // namespace bentbook
