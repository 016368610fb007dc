#pragma once
/// A drawing of the raising whose figures are tapped.

#include "numeric/function_ref.h"
#include "screens/raising/form.h"
#include "words/figures.h"

namespace bentbook::screens {

/// The book with what stands in the keypad, where that is on what the lead says.
class RaisingShown {
 public:
  explicit RaisingShown(const Context& context);
  [[nodiscard]] const Book& book() const { return typed_ ? *typed_ : open_; }

 private:
  const Book& open_;
  std::optional<Book> typed_;
};

/// A figure that is tapped opens the field at `root` and its key.
void raising_drawn(Context&, ItemKey prefix, Msg name, float height, const draw::Drawing& drawing,
                   std::string_view root, FunctionRef<bentbook::FigureText(std::string_view)> words);

}  // namespace bentbook::screens
