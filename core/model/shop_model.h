#pragma once
/// The shop of one book: its timbers' steps against the crew's log.

#include "model/book_model.h"
#include "shop/workplace.h"

namespace bentbook {

/// Errors as sheet_of.
[[nodiscard]] Result<TimberWork> timber_work(const Book& book, const BookModel& model, const ShopState& state,
                                             std::string_view mark);
/// Of every timber, for the saw in use. The frame's own error.
[[nodiscard]] Result<std::vector<TimberWork>> work_of(const Book& book, const BookModel& model, const ShopState& state);

}  // namespace bentbook
