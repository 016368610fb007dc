#pragma once
/// From ids and values to sentences, in the user's language and units.

#include <string>

#include "cut/setting.h"
#include "measure/unit.h"
#include "measure/weight.h"
#include "roof/rafter.h"
#include "words/strings.h"

namespace bentbook {

/// How to say things.
struct Voice {
  Language language = Language::kEn;
  LengthStyle lengths;
  Marks marks = Marks::kScreen;
};

/// For what a framing square holds: it has no feet.
[[nodiscard]] Voice square_voice(Voice voice);

/// A length as it is said: the about sign before it where rounding moved it (ascii: "~").
[[nodiscard]] std::string say_length(Length value, const Voice& voice);
/// Rounded down, for "at most …": never more than the value.
[[nodiscard]] std::string say_length_at_most(Length value, const Voice& voice);
/// Rounded up, for "at least …".
[[nodiscard]] std::string say_length_at_least(Length value, const Voice& voice);
[[nodiscard]] std::string say_angle(Angle value, const Voice& voice, int decimals = 1);
/// Degrees: less than this off square is said as square, since angles are said to a tenth.
inline constexpr double kSquareWithin = 0.05;
/// A weight or a force: whole pounds, or whole kilograms where lengths are metric.
[[nodiscard]] std::string say_weight(double lb, const Voice& voice);

/// A load on an area or the speed of wind with its unit (a metric crew reads its wind in km/h as well), a plain number
/// without.
[[nodiscard]] std::string say_kept(double value, KeptIn kept, const Voice& voice);
/// Volume of wood as it is bought: whole board feet, or cubic metres to the litre.
[[nodiscard]] std::string say_wood(double board_feet, const Voice& voice);

/// A reading of a saw's scale, with no more decimals than its marks have.
[[nodiscard]] std::string say_reading(Angle reading, const Voice& voice);
/// What a graduation costs: far below a shop fraction, so in thousandths of an inch or tenths of a millimetre.
[[nodiscard]] std::string say_cost(Length cost, const Voice& voice);
/// How far the blade at this graduation is from the mark at the far arris, to a 64th or a tenth of a millimetre: "3⁄64″
/// past the mark at the far arris".
[[nodiscard]] std::string say_missed(const Graduation& at, const Voice& voice);
/// All that a graduation costs, in one phrase.
[[nodiscard]] std::string say_costs(const Graduation& at, const Voice& voice);

/// The name of a field or answer ("span", "seat_left", "line_length_right", …) in words; a _right key says so; the key
/// itself if unknown.
[[nodiscard]] std::string field_name(std::string_view key, Language language);
[[nodiscard]] std::string caution_text(const Caution& caution, const RafterPair& pair, const Voice& voice);
[[nodiscard]] std::string_view mark_text(MarkName name, const RafterInput& input, Language language);
[[nodiscard]] std::string_view cut_text(CutName name, Language language);
/// How the cut is made, as the rest of a sentence: "one pass goes through.", "from two faces: cut, flip, cut. …"
[[nodiscard]] std::string pass_text(const Pass& pass, const Saw& saw, const Voice& voice);

/// "Name: value" and a line's end.
[[nodiscard]] inline std::string told(std::string_view name, std::string_view value) {
  std::string out(name);
  out += ": ";
  out += value;
  return out + "\n";
}

}  // namespace bentbook
