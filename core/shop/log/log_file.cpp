#include "shop/log/log_file.h"

#include <algorithm>

#include "frame/keys.h"
#include "numeric/sorting.h"
#include "shop/log/record.h"
#include "text/crc32.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr FileHead kLogHead{"bentbook log ", kLogVersion, "log"};
constexpr std::size_t kEventFields = 12;

void put_event(std::string& out, const Event& e) {
  const std::size_t from = out.size();
  out += "e\t";
  put_hex(out, e.device, 16);
  for (const std::uint64_t n : {e.sequence, e.logical, static_cast<std::uint64_t>(e.wall)}) {
    out += '\t';
    put_decimal(out, n);
  }
  out += '\t';
  out += keys::word(kActionWords, e.action);
  for (const std::string* text : {&e.who, &e.timber, &e.step, &e.value, &e.note}) {
    out += '\t';
    out += *text;
  }
  const std::uint32_t sum = crc32(std::string_view(out).substr(from));
  out += '\t';
  put_hex(out, sum, 8);
  out += '\n';
}

tl::unexpected<Error> at_line(Error error, std::int64_t at, std::int64_t line) {
  error.where = error.where == "event" ? "event" : "event." + error.where;
  error.at = at;
  error.limit = line;
  return tl::unexpected(std::move(error));
}

struct EventLine {
  Event event;
  std::int64_t at = 0, number = 0;
};

/// Puts the events into the log's order, none twice, without those that the others do not explain.
void take_explained(std::vector<EventLine> events, LogScan& scan) {
  const auto line_before = [](const EventLine& a, const EventLine& b) { return before(a.event, b.event); };
  sort_by(events, line_before);
  Explained explained;
  scan.log.events.reserve(events.size());
  for (EventLine& line : events) {
    if (!scan.log.events.empty() && scan.log.events.back() == line.event) continue;
    if (explained.take(line.event))
      scan.log.events.push_back(std::move(line.event));
    else
      scan.troubles.push_back(
          {static_cast<int>(line.number), {ErrorCode::kTooLarge, "event.explained", line.at, line.number}});
  }
}

}  // namespace

std::string write_event(const Event& event) {
  std::string out;
  put_event(out, event);
  return out;
}

Result<Event> read_event(std::string_view line) {
  if (line.ends_with('\n')) line.remove_suffix(1);
  const std::size_t last = line.rfind('\t');
  if (last == std::string_view::npos) return fail(ErrorCode::kSyntax, "event");
  const auto sum = read_hex(line.substr(last + 1), 8);
  if (!sum || *sum != crc32(line.substr(0, last))) return fail(ErrorCode::kSyntax, "event");
  std::string_view fields[kEventFields];
  std::size_t count = 0;
  for (std::size_t from = 0; count < kEventFields; ++count) {
    const std::size_t to = line.find('\t', from);
    fields[count] = line.substr(from, to == std::string_view::npos ? to : to - from);
    if (to == std::string_view::npos) break;
    from = to + 1;
  }
  if (count != kEventFields - 1 || fields[0] != "e") return fail(ErrorCode::kSyntax, "event");
  const auto device = read_hex(fields[1], 16);
  const auto sequence = read_decimal(fields[2]), logical = read_decimal(fields[3]), wall = read_decimal(fields[4]);
  const int action = keys::index_of(kActionWords, fields[5]);
  if (!device || !sequence || !logical || !wall || action < 0) return fail(ErrorCode::kSyntax, "event");
  Event event{*device,
              *sequence,
              *logical,
              static_cast<std::int64_t>(*wall),
              static_cast<EventAction>(action),
              std::string(fields[6]),
              std::string(fields[7]),
              std::string(fields[8]),
              std::string(fields[9]),
              std::string(fields[10])};
  if (auto good = check_event(event); !good) return tl::unexpected(good.error());
  return event;
}

std::string write_log(const Log& log) {
  std::string out;
  put_head(out, kLogHead, log.book);
  for (const Event& event : log.events) put_event(out, event);
  put_end(out, log.events.size());
  return out;
}

Result<Log> read_log(std::string_view bytes) {
  const std::size_t first = bytes.find('\n');
  const auto book = read_head(bytes.substr(0, first), kLogHead);
  if (!book) return tl::unexpected(book.error());
  // A damaged line says more than the whole file's checksum: lines are read first.
  LogScan scan = scan_log(bytes);
  if (!scan.troubles.empty()) return tl::unexpected(std::move(scan.troubles.front().error));
  return std::move(scan.log);
}

LogScan scan_log(std::string_view bytes) {
  LogScan scan;
  std::int64_t line_number = 1;
  std::string_view rest = bytes;
  std::vector<EventLine> events;
  const auto add = [&](Error error) { scan.troubles.push_back({static_cast<int>(line_number), std::move(error)}); };
  const auto head = take_line(rest);
  if (const auto book = read_head(head.value_or(bytes), kLogHead))
    scan.log.book = *book;
  else
    add(book.error());
  BodyTrouble trouble;
  const auto body = body_of(bytes, trouble);
  bool ended = false;
  while (!rest.empty() && !ended) {
    ++line_number;
    const std::int64_t at = static_cast<std::int64_t>(bytes.size() - rest.size());
    const auto line = take_line(rest);
    if (line && line->starts_with("end\t") && rest.empty()) {
      ended = true;
      break;
    }
    auto event = line ? read_event(*line) : Result<Event>(fail(ErrorCode::kSyntax, "event"));
    if (!event) {
      add(at_line(event.error(), at, line_number).value());
      if (!line) break;
      continue;
    }
    if (!events.empty() && !before(events.back().event, *event)) add({ErrorCode::kConflict, "event", at, line_number});
    if (events.size() >= kMostEvents) {
      add({ErrorCode::kTooLarge, "events", at, static_cast<std::int64_t>(kMostEvents)});
      break;
    }
    events.push_back({*std::move(event), at, line_number});
  }
  if (!body || body->count != static_cast<std::uint64_t>(line_number - 2)) {
    if (!ended) ++line_number;
    add({ErrorCode::kSyntax, "log", body ? 0 : trouble.at, 0});
  }
  take_explained(std::move(events), scan);
  return scan;
}

}  // namespace bentbook
