#include "shop/log/seen.h"

#include <map>

#include "numeric/sorting.h"
#include "shop/log/log_file.h"
#include "shop/log/record.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr FileHead kSeenHead{"bentbook seen ", kLogVersion, "seen"};

}  // namespace

std::vector<Seen> seen_of(const Log& log) {
  std::map<std::uint64_t, std::vector<const Event*>> by_device;
  for (const Event& event : log.events) by_device[event.device].push_back(&event);
  std::vector<Seen> all;
  for (auto& [device, events] : by_device) {
    sort_by(events, [](const Event* a, const Event* b) { return a->sequence < b->sequence; });
    Seen seen{device, 0, 0};
    for (const Event* event : events) {
      if (event->sequence > seen.upto + 1) break;
      seen.upto = event->sequence;
      seen.digest = mixed(seen.digest, digest_of(*event));
    }
    all.push_back(seen);
  }
  return all;
}

Log events_beyond(const Log& log, std::span<const Seen> other) {
  std::map<std::uint64_t, Seen> theirs;
  for (const Seen& seen : other) theirs[seen.device] = seen;
  // Our digest up to where they are, device by device.
  Log known{log.book, {}};
  for (const Event& event : log.events) {
    const auto it = theirs.find(event.device);
    if (it != theirs.end() && event.sequence <= it->second.upto) known.events.push_back(event);
  }
  std::map<std::uint64_t, std::uint64_t> from;
  for (const Seen& ours : seen_of(known)) {
    const Seen& their = theirs[ours.device];
    // Where we lack some ourselves there is nothing to compare.
    const bool same = ours.upto < their.upto || ours.digest == their.digest;
    from[ours.device] = same ? their.upto : 0;
  }
  Log out{log.book, {}};
  for (const Event& event : log.events) {
    const auto it = from.find(event.device);
    const auto known_upto = it != from.end()                  ? it->second
                            : theirs.count(event.device) != 0 ? theirs[event.device].upto
                                                              : 0;
    if (event.sequence > known_upto) out.events.push_back(event);
  }
  return out;
}

std::string write_seen(std::string_view book, std::span<const Seen> seen) {
  std::string out;
  put_head(out, kSeenHead, book);
  for (const Seen& s : seen) {
    out += "d\t";
    put_hex(out, s.device, 16);
    out += '\t';
    put_decimal(out, s.upto);
    out += '\t';
    put_hex(out, s.digest, 16);
    out += '\n';
  }
  put_end(out, seen.size());
  return out;
}

Result<SeenFile> read_seen(std::string_view bytes) {
  const auto book = read_head(bytes.substr(0, bytes.find('\n')), kSeenHead);
  if (!book) return tl::unexpected(book.error());
  BodyTrouble trouble;
  const auto body = body_of(bytes, trouble);
  if (!body) return fail(ErrorCode::kSyntax, "seen", trouble.at);
  SeenFile file{*book, {}};
  std::string_view rest = body->lines;
  while (const auto line = take_line(rest)) {
    const auto fields = fields_of(*line);
    const std::int64_t at = line->data() - bytes.data();
    if (fields.size() != 4 || fields[0] != "d") return fail(ErrorCode::kSyntax, "seen", at);
    const auto device = read_hex(fields[1], 16), digest = read_hex(fields[3], 16);
    const auto upto = read_decimal(fields[2]);
    if (!device || !digest || !upto || (!file.seen.empty() && file.seen.back().device >= *device))
      return fail(ErrorCode::kSyntax, "seen", at);
    file.seen.push_back({*device, *upto, *digest});
  }
  if (file.seen.size() != body->count) return fail(ErrorCode::kSyntax, "seen", 0);
  return file;
}

}  // namespace bentbook
