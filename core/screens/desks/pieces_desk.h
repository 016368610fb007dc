#pragma once
/// What a camera has read of another phone's log, kept in the storage too: where the phone ends the app in the middle,
/// it goes on where it was stopped.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"
#include "shop/log/chunk.h"
#include "ui/platform.h"

namespace bentbook::screens {

class PiecesDesk {
 public:
  explicit PiecesDesk(Platform& platform) : platform_(platform) {}

  /// What there is, the set that was begun last at the end; what an earlier visit read comes a little after it was
  /// first asked for.
  [[nodiscard]] const std::vector<Chunks>& sets();
  /// A code's text. True: it is one that was wanted.
  bool add(std::string_view text);
  /// The bytes that all pieces of a set make, once; an error where they do not fit together.
  [[nodiscard]] std::optional<Result<std::string>> take_whole();
  /// Those bytes were taken up, or are of no use: nobody wants their pieces any more.
  void forget(std::string_view bytes);
  /// What is new goes to the storage, now and then while the camera runs; `now`: in any case.
  void keep(double now_ms, bool now);
  /// The storage's answers that are this desk's own; false: it is none.
  bool take(const PlatformEvent& event);

 private:
  void ask();
  void save();
  Platform& platform_;
  std::vector<Chunks> sets_;
  std::optional<Result<std::string>> whole_;
  bool asked_ = false, fresh_ = false;
  double saved_ms_ = 0;
  std::int64_t revision_ = 0;
};

}  // namespace bentbook::screens
