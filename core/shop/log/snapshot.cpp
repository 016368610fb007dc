#include "shop/log/snapshot.h"

#include <algorithm>

#include "frame/keys.h"
#include "shop/log/record.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr FileHead kSnapshotHead{"bentbook shop ", 1, "snapshot"};

void field(std::string& out, std::string_view text) {
  out += '\t';
  out += text;
}
void number(std::string& out, std::uint64_t n) {
  out += '\t';
  put_decimal(out, n);
}
void hex(std::string& out, std::uint64_t n) {
  out += '\t';
  put_hex(out, n, 16);
}

class Reader {
 public:
  explicit Reader(ShopState& state) : state_(state) {}

  bool line(const std::vector<std::string_view>& f) {
    if (f[0] == "all" && f.size() == 5) return all(f);
    if (f[0] == "d" && f.size() == 4) return device(f);
    if (f[0] == "2" && f.size() == 2) return id(f[1], state_.twice.emplace_back());
    if (f[0] == "r" && f.size() == 7) return rule(f);
    if (f[0] == "t" && f.size() == 2) {
      state_.timbers.push_back({std::string(f[1]), {}});
      return true;
    }
    if (f[0] == "s" && f.size() == 2 && !state_.timbers.empty()) {
      state_.timbers.back().steps.push_back({std::string(f[1]), {}});
      return true;
    }
    if (f[0] == "c" && f.size() == 7 && !state_.timbers.empty() && !state_.timbers.back().steps.empty())
      return claim(f);
    return false;
  }

 private:
  static bool id(std::string_view text, EventId& out) {
    const auto read = read_id(text);
    if (read) out = *read;
    return read.has_value();
  }

  static bool action(std::string_view word, EventAction& out) {
    const int index = keys::index_of(kActionWords, word);
    out = static_cast<EventAction>(std::max(index, 0));
    return index >= 0;
  }

  bool all(const std::vector<std::string_view>& f) {
    const auto events = read_decimal(f[1]), logical = read_decimal(f[3]);
    const auto digest = read_hex(f[2], 16);
    if (!events || !digest || !logical) return false;
    state_.events = *events;
    state_.digest = *digest;
    state_.last_logical = *logical;
    return f[4] == "-" || id(f[4], state_.last);
  }

  bool device(const std::vector<std::string_view>& f) {
    const auto device = read_hex(f[1], 16);
    const auto last = read_decimal(f[2]), whole = read_decimal(f[3]);
    if (!device || !last || !whole || (!state_.devices.empty() && state_.devices.rbegin()->first >= *device))
      return false;
    state_.devices[*device] = {*last, *whole};
    return true;
  }

  bool rule(const std::vector<std::string_view>& f) {
    Rule& rule = state_.rules.emplace_back();
    rule.kind = f[2];
    rule.step = f[3];
    rule.value = f[4];
    rule.note = f[5];
    return action(f[1], rule.action) && is_rule(rule.action) && id(f[6], rule.id);
  }

  bool claim(const std::vector<std::string_view>& f) {
    Claim& claim = state_.timbers.back().steps.back().claims.emplace_back();
    const auto wall = read_decimal(f[3]);
    if (!wall) return false;
    claim.wall = static_cast<std::int64_t>(*wall);
    claim.who = f[4];
    claim.value = f[5];
    claim.note = f[6];
    return action(f[1], claim.action) && id(f[2], claim.id);
  }

  ShopState& state_;
};

}  // namespace

std::string write_snapshot(const ShopState& state) {
  std::string out;
  std::uint64_t lines = 0;
  const auto end_line = [&] {
    out += '\n';
    ++lines;
  };
  put_head(out, kSnapshotHead, {});
  out += "all";
  number(out, state.events);
  hex(out, state.digest);
  number(out, state.last_logical);
  field(out, state.last.sequence == 0 ? "-" : id_text(state.last));
  end_line();
  for (const auto& [device, d] : state.devices)
    out += "d", hex(out, device), number(out, d.last), number(out, d.whole), end_line();
  for (const EventId& id : state.twice) out += "2", field(out, id_text(id)), end_line();
  for (const Rule& r : state.rules) {
    out += "r";
    for (const std::string_view text : {keys::word(kActionWords, r.action), std::string_view(r.kind),
                                        std::string_view(r.step), std::string_view(r.value), std::string_view(r.note)})
      field(out, text);
    field(out, id_text(r.id));
    end_line();
  }
  for (const TimberState& timber : state.timbers) {
    out += "t", field(out, timber.mark), end_line();
    for (const StepState& step : timber.steps) {
      out += "s", field(out, step.step), end_line();
      for (const Claim& c : step.claims) {
        out += "c", field(out, keys::word(kActionWords, c.action)), field(out, id_text(c.id));
        number(out, static_cast<std::uint64_t>(c.wall));
        field(out, c.who), field(out, c.value), field(out, c.note), end_line();
      }
    }
  }
  put_end(out, lines);
  return out;
}

Result<ShopState> read_snapshot(std::string_view bytes) {
  const auto book = read_head(bytes.substr(0, bytes.find('\n')), kSnapshotHead);
  if (!book) return tl::unexpected(book.error());
  BodyTrouble trouble;
  const auto body = body_of(bytes, trouble);
  if (!body) return fail(ErrorCode::kSyntax, "snapshot", trouble.at);
  ShopState state;
  Reader reader(state);
  std::string_view rest = body->lines;
  std::uint64_t lines = 0;
  for (; const auto line = take_line(rest); ++lines)
    if (!reader.line(fields_of(*line))) return fail(ErrorCode::kSyntax, "snapshot", line->data() - bytes.data());
  if (lines != body->count) return fail(ErrorCode::kSyntax, "snapshot", 0);
  index_state(state);
  return state;
}

bool go_on(ShopState& state, std::span<const Event> events) {
  if (!events.empty() && !follows(state, events.front())) return false;
  apply_all(state, events);
  return true;
}

}  // namespace bentbook
