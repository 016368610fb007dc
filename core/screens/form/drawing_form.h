#pragma once
/// The drawing is the form: a drawing over the column's width on which every given figure can be tapped, and the keypad
/// that changes it.

#include <optional>
#include <string>
#include <string_view>

#include "draw/drawing.h"
#include "numeric/function_ref.h"
#include "screens/app/context.h"
#include "words/figures.h"
#include "words/words.h"

namespace bentbook::screens {

/// The voice that the settings ask for.
[[nodiscard]] Voice voice_of(const Context&);

/// Which figures of a drawing can be tapped.
enum class Tappable { kGiven, kAll };

/// Draws `drawing`, at most `height` px high, named `name`. Figures get the keys "<prefix>.<figure key>". Returns the
/// figure key that was tapped. Two fingers zoom it, one then moves it; a long press fits it again.
[[nodiscard]] std::optional<std::string> drawing_form(Context&, ItemKey prefix, std::string_view name, float height,
                                                      const draw::Drawing& drawing,
                                                      FunctionRef<bentbook::FigureText(std::string_view)> words,
                                                      Tappable tappable = Tappable::kGiven);

/// A drawing that explains what is said beside it: nothing on it is tapped, and the mirror has its name alone. `text`:
/// what stands for a figure's key.
void drawing_beside(Context&, ItemKey key, std::string_view name, float height, const draw::Drawing& drawing,
                    FunctionRef<std::string(std::string_view)> text);

/// Type is no larger than leaves a phone's drawing room for words and marks beside its numbers.
[[nodiscard]] bool has_usual_type(const Context&);

/// A large screen held upright: a drawing has the page's whole width, what it answers stands below it, and rows stand
/// two abreast. The keypad changes nothing of it.
[[nodiscard]] bool is_large_page(const Context&);

/// What side_by_side() needs for a drawing and its answers, so that they stand below one another on a phone held
/// upright and on a large page.
[[nodiscard]] float beside_drawing(const Context&);
/// How wide a row of a list must be for another one to stand beside it.
inline constexpr float kRowAbreast = 300;

/// Height for a drawing on this page: `wanted` px on a phone, more with larger text and on a taller page, never more
/// than fits.
[[nodiscard]] float drawing_height(const Context&, float wanted);

}  // namespace bentbook::screens
