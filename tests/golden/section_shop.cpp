// The shop: steps of every timber of the demo, a log of three phones, its state, codes.

#include "book/book.h"
#include "frame/placing/solve_frame.h"
#include "histories.h"
#include "paper/code.h"
#include "rows.h"
#include "shop/log/chunk.h"
#include "shop/log/seen.h"
#include "shop/log/snapshot.h"
#include "shop/workplace.h"

namespace golden {

using namespace bentbook;

void shop_rows(Rows& rows) {
  const Book book = demo_book();
  const auto frame = solve_frame(book.frame);
  if (!frame) return;
  const auto work = shop_work(*frame, {}, saw_of(book));
  for (const TimberWork& one : work)
    for (const WorkStep& step : one.steps)
      rows.word(frame->timbers[static_cast<std::size_t>(one.timber)].mark)
          .word(step.id)
          .word(numbers_text(step.numbers))
          .end();
  for (const SawGroup& group : waiting_for_saw(work))
    rows.whole(group.setup.table)
        .whole(group.setup.tilt)
        .whole(group.setup.stop)
        .whole(static_cast<std::int64_t>(group.cuts.size()))
        .end();
  Random random(460);
  for (int n = 0; n < 40; ++n) {
    const auto phones = histories::random_phones(random, 3, 40);
    const Log log = *merged(*merged(phones[0], phones[1]), phones[2]);
    const std::string bytes = write_log(log);
    rows.word(bytes).word(write_snapshot(fold(log))).word(write_seen("b1", seen_of(log))).end();
    const std::vector<std::string> texts = *make_chunks(bytes);
    for (const std::string& text : texts) rows.word(text).end();
  }
  const Code code = *make_code("BB1T/B1/P-A1", CodeLevel::kHigh);
  std::string dark;
  for (const bool module : code.dark) dark += module ? '#' : '.';
  rows.word(dark).end();
}

}  // namespace golden
