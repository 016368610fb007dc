#pragma once
/// Reading aloud what a page shows, by the device's own voice: off unless wanted, and only where the device speaks the
/// app's language without a network.

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "ui/platform.h"
#include "ui/registry.h"
#include "words/strings.h"

namespace bentbook::screens {

struct Context;

class Aloud {
 public:
  explicit Aloud(Platform& platform) : platform_(platform) {}
  /// kVoices, kSpoken.
  void take(const PlatformEvent&);
  [[nodiscard]] bool can_speak(Language) const;
  /// What the key `by` asked for is being said.
  [[nodiscard]] bool speaks(std::string_view by) const { return !by_.empty() && by_ == by; }
  /// Have every text and answer of this frame whose key begins with one of `of` said, in the order in which they stand.
  void ask(std::string_view by, std::initializer_list<std::string_view> of);
  void hush();
  /// After a frame's items are known.
  void answer(const Registry&, Language);

 private:
  Platform& platform_;
  std::string voices_, by_;
  std::vector<std::string> asked_;
  std::int64_t ticket_ = 0;
};

/// The key that reads aloud, and stops; nothing where it is not wanted or there is no voice.
void aloud_row(Context&, std::string_view key, std::initializer_list<std::string_view> of);

}  // namespace bentbook::screens
