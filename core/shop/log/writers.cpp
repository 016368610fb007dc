#include "shop/log/writers.h"

#include <algorithm>
#include <map>
#include <utility>

#include "numeric/sorting.h"
#include "shop/log/record.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr FileHead kLeftOutHead{"bentbook left out ", 1, "left_out"};

void widen(Writer& writer, std::size_t events, std::int64_t from, std::int64_t to) {
  writer.from = writer.events == 0 ? from : std::min(writer.from, from);
  writer.to = std::max(writer.to, to);
  writer.events += events;
}

}  // namespace

std::vector<Writer> writers_of(const Log& log) {
  std::map<std::uint64_t, Writer> devices;
  for (const Event& e : log.events) {
    Writer& writer = devices[e.device];
    widen(writer, 1, e.wall, e.wall);
    if (!e.who.empty()) writer.who = e.who;
  }
  std::map<std::string, Writer> by_name;
  for (const auto& [device, of] : devices) {
    Writer& writer = by_name[of.who];
    writer.devices.push_back(device);
    widen(writer, of.events, of.from, of.to);
  }
  std::vector<Writer> writers;
  writers.reserve(by_name.size());
  for (auto& [who, writer] : by_name) {
    writer.who = who;
    writers.push_back(std::move(writer));
  }
  sort_by(writers, [](const Writer& a, const Writer& b) { return a.to > b.to; });
  return writers;
}

Log without(const Log& log, const Devices& left_out) {
  Log rest{log.book, {}};
  std::copy_if(log.events.begin(), log.events.end(), std::back_inserter(rest.events),
               [&](const Event& e) { return left_out.count(e.device) == 0; });
  return rest;
}

std::string write_left_out(const Devices& devices) {
  std::string out;
  put_head(out, kLeftOutHead, {});
  for (const std::uint64_t device : devices) {
    out += "d\t";
    put_hex(out, device, 16);
    out += '\n';
  }
  put_end(out, devices.size());
  return out;
}

Result<Devices> read_left_out(std::string_view bytes) {
  const auto head = read_head(bytes.substr(0, bytes.find('\n')), kLeftOutHead);
  if (!head) return tl::unexpected(head.error());
  BodyTrouble trouble;
  const auto body = body_of(bytes, trouble);
  if (!body) return fail(ErrorCode::kSyntax, "left_out", trouble.at);
  Devices devices;
  std::string_view rest = body->lines;
  while (const auto line = take_line(rest)) {
    const auto device = line->starts_with("d\t") ? read_hex(line->substr(2), 16) : std::nullopt;
    if (!device || (!devices.empty() && *devices.rbegin() >= *device))
      return fail(ErrorCode::kSyntax, "left_out", line->data() - bytes.data());
    devices.insert(devices.end(), *device);
  }
  if (devices.size() != body->count) return fail(ErrorCode::kSyntax, "left_out", 0);
  return devices;
}

}  // namespace bentbook
