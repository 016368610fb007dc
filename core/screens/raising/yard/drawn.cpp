#include "screens/raising/yard/drawn.h"

#include <string>

namespace bentbook::screens {

RaisingShown::RaisingShown(const Context& context)
    : open_(context.desk.book()),
      typed_(context.keypad.key().starts_with("raising.") ? typed_book(context) : std::nullopt) {}

void raising_drawn(Context& context, ItemKey prefix, Msg name, float height, const draw::Drawing& drawing,
                   std::string_view root, FunctionRef<bentbook::FigureText(std::string_view)> words) {
  const auto tapped = drawing_form(context, prefix, context.say(name), height, drawing, words);
  if (tapped) open_field(context, std::string(root) + *tapped, words(*tapped).name);
}

}  // namespace bentbook::screens
