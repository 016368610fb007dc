#pragma once
/// One value that the platform keeps: which revision was handed to it, which is known to be on disk.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "numeric/result.h"
#include "ui/platform.h"

namespace bentbook::screens {

struct Stored {
  std::string key;
  std::int64_t revision = 0, saved = 0;
  std::string failure{};                ///< why the last save failed; "" if it did not
  std::optional<ErrorCode> unusable{};  ///< what is stored cannot be read: nothing is written over it
  std::string raw{};                    ///< the unusable bytes
  bool confirming = false;              ///< the user is asked whether to write over it
  [[nodiscard]] bool pending() const { return failure.empty() && saved < revision; }

  /// Hands the bytes to the platform, unless what is stored is unusable.
  void save(Platform& platform, std::string bytes) {
    if (unusable) return;
    failure.clear();
    platform.save(key, ++revision, std::move(bytes));
  }
  /// kSaved or kSaveFailed of this key.
  void answered(const PlatformEvent& event) {
    if (event.kind == EventKind::kSaved) {
      if (event.number > saved) saved = event.number;
      if (saved == revision) failure.clear();
    } else if (event.number == revision) {
      failure = event.text.empty() ? "other" : event.text;
    }
  }
  /// What is stored is read anew: these bytes were found.
  void read_anew() {
    unusable.reset();
    raw.clear();
    failure.clear();
    saved = revision;
  }
  void found_unusable(ErrorCode code, std::string_view bytes) {
    unusable = code;
    raw = bytes;
  }
};

}  // namespace bentbook::screens
