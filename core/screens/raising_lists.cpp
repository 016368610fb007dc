// What leaves the app of a raising: the order as text.

#include <string>

#include "screens/raising_form.h"
#include "screens/raising_pages.h"

namespace bentbook::screens {
namespace {

void lists_screen(Context& context) {
  raising_page(context, "lists.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    note(ui, "lists.note", context.say(Msg::kRaisingListsNote));
  });
}

}  // namespace

Page raising_lists_page() { return {"raising.lists", Msg::kRaisingLists, lists_screen}; }

}  // namespace bentbook::screens
