#pragma once
/// Timbers chosen by tapping them on the building: the ends of a temporary brace, what a wish is about.

#include <cstdint>
#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

enum class Choosing : std::uint8_t {
  kFrom,    ///< a temporary's upper end: one timber
  kTo,      ///< its other end: one timber, or the ground
  kWished,  ///< what a wish is about
  kOthers,  ///< what that is to come before
};
/// `of`: the temporary's name, or the wish's place in the list.
[[nodiscard]] Page raising_choose_page(std::string of, Choosing choosing);

}  // namespace bentbook::screens
