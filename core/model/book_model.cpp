#include "model/book_model.h"

#include <unordered_set>

#include "frame/placing/hand_timber.h"
#include "frame/placing/solve_frame.h"
#include "frame/roofs/roof_frame.h"

namespace bentbook {
namespace {

/// A list of timbers without a plan.
Frame listed(const FramePlan& plan) {
  Frame frame;
  frame.timbers.reserve(plan.added.size());
  std::unordered_set<std::string_view> taken;
  for (const HandTimber& hand : plan.added) {
    if (taken.contains(hand.mark)) {
      frame.findings.push_back({FindingId::kMarkTaken, hand.mark, {}, 0});
      continue;
    }
    Result<Timber> timber = solve_hand_timber(hand);
    if (!timber) {
      frame.findings.push_back({FindingId::kBadHandTimber, hand.mark, {}, 0});
      continue;
    }
    taken.insert(hand.mark);
    timber->moisture = plan.moisture;
    frame.timbers.push_back(*std::move(timber));
  }
  return frame;
}

std::shared_ptr<const Result<Frame>> frame_of_book(const Book& book) {
  if (!book.framed && !book.roof.sides.empty())
    return std::make_shared<const Result<Frame>>(frame_of_roof(book.roof, book.frame));
  if (!book.framed) return std::make_shared<const Result<Frame>>(listed(book.frame));
  return std::make_shared<const Result<Frame>>(solve_frame(book.frame));
}

std::shared_ptr<const Result<RafterPair>> rafter_of_book(const Book& book) {
  return std::make_shared<const Result<RafterPair>>(solve_rafters(book.rafter));
}

}  // namespace

BookModel solve(const Book& book) { return {frame_of_book(book), rafter_of_book(book)}; }

BookModel solve_again(const Book& book, const Book& was, const BookModel& before) {
  BookModel model = before;
  if (!(book.framed == was.framed && book.frame == was.frame && book.roof == was.roof))
    model.frame = book.framed && was.framed && *before.frame
                      ? std::make_shared<const Result<Frame>>(solve_frame_again(book.frame, **before.frame))
                      : frame_of_book(book);
  if (!(book.rafter == was.rafter)) model.rafter = rafter_of_book(book);
  return model;
}

Result<Sheet> sheet_of(const Book& book, const BookModel& model, std::string_view mark) {
  const Result<Frame>& frame = *model.frame;
  if (!frame) return tl::unexpected(frame.error());
  const int timber = timber_by_mark(*frame, mark);
  if (timber < 0) return fail(ErrorCode::kMissing, "mark");
  return solve_sheet(*frame, timber, saw_of(book));
}

FrameTotals totals_of(const Frame& frame, Length stock_step) {
  FrameTotals totals;
  double placed = 0;
  Vec3 moment;
  for (const Timber& timber : frame.timbers) {
    const TimberFacts facts = facts_of(timber, stock_step);
    if (totals.timbers == 0) {
      totals.species = timber.species.name;
      totals.moisture = timber.moisture;
    }
    if (totals.species != timber.species.name) totals.species.reset();
    if (totals.moisture != timber.moisture) totals.moisture.reset();
    ++totals.timbers;
    totals.weight_lb += facts.weight_lb;
    totals.volume += facts.volume;
    totals.board_feet += facts.board_feet;
    if (!timber.placed) continue;
    placed += facts.weight_lb;
    moment = moment + facts.weight_lb * facts.cg_world;
  }
  if (placed > 0) totals.cg = (1 / placed) * moment;
  return totals;
}

}  // namespace bentbook
