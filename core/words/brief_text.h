#pragma once
/// The raising on one page, as a lead carries it: a line a step, then the temporary braces with where and until when.

#include <string>

#include "book/book.h"
#include "frame/plan.h"
#include "raising/check.h"
#include "raising/lists.h"
#include "words/words.h"

namespace bentbook {

/// 80 columns at most (a name longer than its column has a line of its own). `check`: that of the book's own order;
/// null: the text says that it was not checked.
[[nodiscard]] std::string raising_brief(const Book& book, const Frame& frame, const Voice& voice,
                                        const OrderCheck* check = nullptr);
/// "Diagonal T1: P-A1 at 7′ 11″ to the ground. 11′ 2″ long, 1 1⁄2″ thick; step 1 to 6"
[[nodiscard]] std::string temporary_time_text(const TemporaryTime& time, const Frame& frame, const RaisingPlan& plan,
                                              const Voice& voice);

}  // namespace bentbook
