#include <array>
#include <string>
#include <utility>

#include "screens/app/app_inside.h"
#include "screens/books/backup.h"

namespace bentbook::screens {
namespace {

struct NoticeKey {
  std::string_view key;
  Msg label;
  Weight weight = Weight::kQuiet;
};

/// Where one looks after what is kept. Nothing is lost yet: elsewhere, and while a book is made, it would only stand in
/// the work's way.
bool about_storage(const Page& page) {
  const std::string_view key = page.key;
  return key == "menu" || key == "settings" || key == "books" || key == "book";
}

enum class Edge : std::uint8_t { kTop, kFoot };

/// A band across the page's top or foot: words, and what can be done. Returns the key that was pressed ("" for none).
std::string_view band(Ui& ui, Rect& page, ItemKey key, std::string_view words, std::initializer_list<NoticeKey> keys,
                      Edge edge = Edge::kTop) {
  const Theme& t = ui.theme;
  const float pad = 12, sign = 24, width = page.w - 3 * pad - sign;
  const float text = wrapped_height(*ui.fonts.note, words, width);
  const float height = text + 2 * pad + (keys.size() > 0 ? t.target + kGap : 0);
  const bool top = edge == Edge::kTop;
  const Rect box{page.x, top ? page.y : page.y + page.h - height, page.w, height};
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.caution_ground);
  const float rule = top ? box.y + box.h - 2 : box.y;
  list.AddRectFilled({box.x, rule}, {box.x + box.w, rule + 2}, t.caution);
  draw_triangle_sign(list, {box.x + pad, box.y + pad, sign, sign}, t.caution);
  draw_wrapped(list, *ui.fonts.note, {box.x + 2 * pad + sign, box.y + pad}, t.caution, words, width);
  Item item{std::string(key), Role::kText, Touch::kNone, std::string(words), {}, box};
  item.live = true;
  add_read(ui, std::move(item));
  std::string_view pressed;
  const auto n = static_cast<float>(keys.size());
  const float key_width = keys.size() > 0 ? (page.w - 2 * pad - kGap * (n - 1)) / n : 0;
  float x = box.x + pad;
  for (const NoticeKey& k : keys) {
    if (button_in(ui, k.key, {x, box.y + text + 2 * pad, key_width, t.target - 4}, ui.say(k.label), k.weight))
      pressed = k.key;
    x += key_width + kGap;
  }
  if (top) page.y += height;
  page.h -= height;
  return pressed;
}

}  // namespace

/// What was read once is not said again, and is not undone.
void App::Impl::keep_seen(bool Settings::*words) {
  Kit next = kit.now();
  next.settings.*words = true;
  kit = History<Kit>(std::move(next));
  save(kit_store);
}

void App::Impl::draw_hindrance(Ui& ui, Rect& page) {
  if (hindrance == Hindrance::kUnread) {
    band(ui, page, "notice.unread", ui.say(Msg::kUnreadNote), {});
  } else if (hindrance == Hindrance::kNewer) {
    if (!band(ui, page, "notice.newer", ui.say(Msg::kNewerNote), {{"notice.use_new_version", Msg::kNewVersionUse}})
             .empty())
      platform.use_new_version();
  } else if (!band(ui, page, "notice.read_only", ui.say(Msg::kReadOnlyNote), {{"notice.write_here", Msg::kWriteHere}})
                  .empty()) {
    platform.write_here();
  }
}

Rect App::Impl::draw_notice(Ui& ui, Rect page) {
  for (Stored* store : {&kit_store, &places_store, &desk.shelf_store()}) {
    if (!store->unusable) continue;
    const bool is_kit = store == &kit_store, is_shelf = store == &desk.shelf_store(),
               newer = *store->unusable == ErrorCode::kNewerVersion;
    if (store->confirming) {
      const auto pressed = band(ui, page, "notice.sure", ui.say(Msg::kDamagedSure),
                                {{"notice.replace_now", Msg::kDamagedReplace, Weight::kDestructive},
                                 {"notice.keep", Msg::kDamagedKeep, Weight::kPrimary}});
      if (!pressed.empty()) store->confirming = false;
      if (pressed == "notice.replace_now") {
        if (is_shelf) {
          desk.replace_shelf();
          return page;
        }
        store->unusable.reset();
        save(*store);
      }
      return page;
    }
    const Msg words = is_shelf ? (newer ? Msg::kNewerShelf : Msg::kDamagedShelf)
                      : newer  ? (is_kit ? Msg::kNewerKit : Msg::kNewerPlaces)
                               : (is_kit ? Msg::kDamagedKit : Msg::kDamagedPlaces);
    const auto pressed = band(ui, page, "notice.damaged", ui.say(words),
                              {{"notice.share_stored", Msg::kDamagedShare}, {"notice.replace", Msg::kDamagedReplace}});
    if (pressed == "notice.share_stored")
      platform.share_file("bentbook-" + store->key + ".json", "application/json", store->raw);
    if (pressed == "notice.replace") store->confirming = true;
    return page;
  }
  for (Stored* store : stores()) {
    if (store->failure.empty()) continue;
    const Msg words = store->failure == "quota" ? Msg::kSaveFailedQuota : Msg::kSaveFailedOther;
    const auto pressed = band(ui, page, "notice.save_failed", ui.say(words),
                              {{"notice.save_again", Msg::kSaveAgain}, {"notice.save_copy", Msg::kSaveCopy}});
    if (pressed == "notice.save_again") save(*store);
    if (pressed == "notice.save_copy")
      platform.share_file("bentbook-" + store->key + ".json", "application/json", bytes_of(*store));
    return page;
  }
  if (!shop.failure().empty()) {
    const Msg words = shop.failure() == "quota" ? Msg::kSaveFailedQuota : Msg::kSaveFailedOther;
    if (!band(ui, page, "notice.tick_failed", ui.say(words), {{"notice.tick_again", Msg::kSaveAgain}}).empty())
      shop.retry();
    return page;
  }
  if (new_version) {
    if (!band(ui, page, "notice.new_version", ui.say(Msg::kNewVersion),
              {{"notice.use_new_version", Msg::kNewVersionUse, Weight::kPrimary}})
             .empty())
      platform.use_new_version();
  } else if (read_only) {
    draw_hindrance(ui, page);
  } else if (not_persistent && !kit.now().settings.storage_seen && about_storage(pages.top())) {
    const auto pressed =
        band(ui, page, "notice.not_persistent", ui.say(Msg::kNotPersistent),
             {{"notice.keep_copy", Msg::kBackupKeep}, {"notice.understood", Msg::kWelcomeUnderstood}}, Edge::kFoot);
    if (!pressed.empty()) keep_seen(&Settings::storage_seen);
    if (pressed == "notice.keep_copy") pages.push(books_copy_page());
  }
  return page;
}

}  // namespace bentbook::screens
