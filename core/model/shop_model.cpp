#include "model/shop_model.h"

namespace bentbook {

Result<TimberWork> timber_work(const Book& book, const BookModel& model, const ShopState& state,
                               std::string_view mark) {
  const auto sheet = sheet_of(book, model, mark);
  if (!sheet) return tl::unexpected(sheet.error());
  return work_on(**model.frame, *sheet, state);
}

Result<std::vector<TimberWork>> work_of(const Book& book, const BookModel& model, const ShopState& state) {
  const Result<Frame>& frame = *model.frame;
  if (!frame) return tl::unexpected(frame.error());
  return shop_work(*frame, state, saw_of(book));
}

}  // namespace bentbook
