#pragma once
/// The kit: what belongs to the user and not to one building. Saws and settings; stored app-wide under "kit".
/// File form in README.md beside this file.

#include <string>
#include <string_view>
#include <vector>

#include "cut/saw.h"
#include "measure/print.h"
#include "numeric/result.h"

namespace bentbook {

enum class Theme : std::uint8_t { kFollow, kSun, kNight };

struct Settings {
  LengthStyle lengths;  ///< form and smallest division
  Theme theme = Theme::kFollow;
  std::string language;  ///< BCP 47 tag; "" follows the phone
  bool glove = false;
  int text_percent = 100;  ///< 100 to 200
  bool keep_awake = false;
  bool read_aloud = false;    ///< a key on cards and answers, where the device has a voice
  bool caution_seen = false;  ///< the first-launch caution was read
  bool storage_seen = false;  ///< that the browser may clear what it keeps was read
  std::string who;            ///< who ticks on this phone; "" not said

  friend bool operator==(const Settings& a, const Settings& b) {
    return a.lengths.form == b.lengths.form && a.lengths.denominator == b.lengths.denominator &&
           a.lengths.decimals == b.lengths.decimals && a.theme == b.theme && a.language == b.language &&
           a.glove == b.glove && a.text_percent == b.text_percent && a.keep_awake == b.keep_awake &&
           a.read_aloud == b.read_aloud && a.caution_seen == b.caution_seen && a.storage_seen == b.storage_seen &&
           a.who == b.who;
  }
};

struct Kit {
  std::vector<Saw> saws;
  Settings settings;
  /// The file as it was read: members this version does not know are written back with it.
  std::string kept;
  friend bool operator==(const Kit&, const Kit&) = default;
};

/// The kit of a first launch: three saws of no maker.
[[nodiscard]] Kit first_kit();

/// The saw of that name, else the first, else a hand saw.
[[nodiscard]] const Saw& find_saw(const Kit& kit, std::string_view name);
/// A name that no saw of the kit has yet: `wanted`, or "wanted 2", "wanted 3", …
[[nodiscard]] std::string free_saw_name(const Kit& kit, std::string_view wanted);

[[nodiscard]] std::string write_kit(const Kit& kit);
/// Errors: kSyntax (`at`: byte offset; where = "kit" or the member of a wrong type), kTooDeep, kNewerVersion, and a
/// member's own range error under its name.
[[nodiscard]] Result<Kit> read_kit(std::string_view bytes);

}  // namespace bentbook
