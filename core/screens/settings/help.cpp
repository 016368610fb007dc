#include "screens/settings/help.h"

#include "screens/books/screen.h"
#include "screens/printing/printing.h"
#include "screens/settings/saws.h"
#include "screens/settings/settings.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kVersion = "0.1";

void draw_help(Context& context) {
  Ui& ui = context.ui;
  begin_scroll(ui, "help.page", context.page);
  const auto part = [&](ItemKey key, Msg title, Msg words) {
    heading(ui, std::string(key) + ".title", ui.say(title));
    body(ui, key, ui.say(words));
  };
  part("help.entry", Msg::kHelpEntryTitle, Msg::kHelpEntry);
  part("help.angles", Msg::kPlaceAngles, Msg::kHelpAngles);
  part("help.rafter", Msg::kPlaceRafter, Msg::kHelpRafter);
  part("help.frame", Msg::kPlaceFrame, Msg::kHelpFrame);
  part("help.shop", Msg::kPlaceShop, Msg::kHelpShop);
  part("help.raising", Msg::kPlaceRaising, Msg::kHelpRaising);
  body(ui, "help.exact", ui.say(Msg::kHelpExact));
  body(ui, "help.storage", ui.say(Msg::kHelpStorage));
  heading(ui, "help.cautions", ui.say(Msg::kHelpCautions));
  caution(ui, "help.caution.codes", ui.say(Msg::kHelpCautionCodes));
  caution(ui, "help.caution.first", ui.say(Msg::kHelpCautionFirst));
  caution(ui, "help.caution.hurt", ui.say(Msg::kHelpCautionHurt));
  heading(ui, "help.about", ui.say(Msg::kHelpAbout));
  body(ui, "help.about.text", say(Msg::kHelpAboutText, ui.language, kVersion));
  note(ui, "help.licences", ui.say(Msg::kHelpLicences));
  end_scroll(ui);
}

void menu_rows(Context& context) {
  Ui& ui = context.ui;
  const bool open = context.desk.state() == BooksDesk::State::kOpen;
  if (list_row(ui, "menu.books", ui.say(Msg::kBooks), open ? shown_name(context.desk.title(), ui.language) : ""))
    context.pages.push(books_page());
  if (list_row(ui, "menu.saws", ui.say(Msg::kSaws), ui.say(Msg::kSawsNote))) context.pages.push(saws_page());
  if (list_row(ui, "menu.settings", ui.say(Msg::kSettings), ui.say(Msg::kSettingsNote)))
    context.pages.push(settings_page());
  if (open && list_row(ui, "menu.paper", ui.say(Msg::kPrintTitle), ui.say(Msg::kPrintMenuNote)))
    context.pages.push(printing_page());
  if (list_row(ui, "menu.picture", ui.say(Msg::kPicture), ui.say(Msg::kPictureNote))) return context.share_page();
  if (list_row(ui, "menu.help", ui.say(Msg::kHelp), ui.say(Msg::kHelpNote))) context.pages.push(help_page());
}

void draw_menu(Context& context) {
  begin_scroll(context.ui, "menu.page", context.page);
  menu_rows(context);
  end_scroll(context.ui);
}

}  // namespace

Page menu_page() { return {"menu", Msg::kAppName, draw_menu}; }
Page help_page() { return {"help", Msg::kHelp, draw_help}; }

bool welcome(Context& context, Rect box) {
  Ui& ui = context.ui;
  begin_scroll(ui, "welcome.page", box);
  space(ui, 24);
  heading(ui, "welcome.title", ui.say(Msg::kWelcome), 1);
  caution(ui, "welcome.caution", ui.say(Msg::kWelcomeText));
  caution(ui, "welcome.hurt", ui.say(Msg::kHelpCautionHurt));
  body(ui, "welcome.demo", ui.say(Msg::kWelcomeDemo));
  space(ui, 16);
  const bool read = button(ui, "welcome.understood", ui.say(Msg::kWelcomeUnderstood), Weight::kPrimary);
  end_scroll(ui);
  return read;
}

}  // namespace bentbook::screens
