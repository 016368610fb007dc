#include "screens/desks/pieces_desk.h"

#include <algorithm>
#include <utility>

#include "text/crc32.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kPiecesKey = "pieces";
constexpr double kEachMs = 3000;  // a set of half a megabyte is not written for each of its pieces

}  // namespace

void PiecesDesk::ask() {
  if (!std::exchange(asked_, true)) platform_.load(kPiecesKey);
}

const std::vector<Chunks>& PiecesDesk::sets() {
  ask();
  return sets_;
}

bool PiecesDesk::add(std::string_view text) {
  ask();
  const Result<Chunks*> set = take_chunk(sets_, text);
  if (!set) return false;  // a code of something else says nothing here
  fresh_ = true;
  if (!(*set)->complete()) return true;
  whole_ = joined(**set);
  if (!*whole_) sets_.erase(sets_.begin() + (*set - sets_.data()));
  return true;
}

std::optional<Result<std::string>> PiecesDesk::take_whole() { return std::exchange(whole_, std::nullopt); }

void PiecesDesk::forget(std::string_view bytes) {
  const std::uint32_t set = crc32(bytes);
  if (std::erase_if(sets_, [&](const Chunks& one) { return one.set == set && one.complete(); }) > 0) save();
}

void PiecesDesk::keep(double now_ms, bool now) {
  if (!fresh_ || (!now && now_ms < saved_ms_ + kEachMs)) return;
  saved_ms_ = now_ms;
  save();
}

void PiecesDesk::save() {
  fresh_ = false;
  if (sets_.empty()) return platform_.erase(kPiecesKey);
  std::string lines;
  for (const Chunks& set : sets_)
    for (const std::string& text : chunk_texts(set)) (lines += text) += '\n';
  platform_.save(kPiecesKey, ++revision_, std::move(lines));
}

bool PiecesDesk::take(const PlatformEvent& event) {
  if (event.key != kPiecesKey) return false;
  if (event.kind == EventKind::kLoaded) {
    const bool fresh = fresh_;
    std::string_view rest = event.text;
    for (std::size_t end; (end = rest.find('\n')) != std::string_view::npos; rest.remove_prefix(end + 1))
      add(rest.substr(0, end));
    fresh_ = fresh;
  }
  return true;
}

}  // namespace bentbook::screens
