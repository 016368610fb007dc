#pragma once
/// What the user says about the wood that is bought for a frame: what the yard sells and lies in the yard, what saw and
/// ends take, what a plan is to save, and what was done to the plan by hand.

#include <string>
#include <vector>

#include "cut/saw.h"
#include "measure/length.h"
#include "stock/limits.h"

namespace bentbook {

/// What a cutting plan is to save. What lies in the yard counts nothing: it is used first.
enum class StockAim : std::uint8_t {
  kSticks,  ///< sticks to order
  kWaste,   ///< length to order
  kCost,    ///< money
};
inline constexpr std::string_view kStockAimWords[] = {"sticks", "waste", "cost"};

enum class PricedBy : std::uint8_t { kBoardFoot, kCubicMetre };
inline constexpr std::string_view kPricedByWords[] = {"board_foot", "cubic_metre"};

/// A span of a stick that is cut out, from its end A.
struct StickDefect {
  Length from, to;
  friend bool operator==(const StickDefect&, const StickDefect&) = default;
};

/// Sticks in the yard that are alike.
struct YardStick {
  std::string name;
  Section section{Length::inches(8), Length::inches(8)};
  std::string species;
  Length length = Length::feet(12);
  int count = 1;
  std::vector<StickDefect> defects;
  friend bool operator==(const YardStick&, const YardStick&) = default;
};

/// A price that is not the general one. With a length: of one such stick, in hundredths; without: as StockPlan::price.
struct StockPrice {
  Section section{Length::inches(8), Length::inches(8)};
  std::string species;  ///< empty: any
  Length length{};
  int price = 0;
  friend bool operator==(const StockPrice&, const StockPrice&) = default;
};

/// A stick of the plan that the user holds on to: what comes out of it stays with it. One that is used gives nothing
/// more.
struct HeldStick {
  int number = 1;
  Section section{Length::inches(8), Length::inches(8)};
  std::string species;
  Length length;
  std::string yard;  ///< name of the sticks in the yard that it is of; empty: to be bought
  bool used = false;
  std::vector<std::string> marks;
  friend bool operator==(const HeldStick&, const HeldStick&) = default;
};

struct StockPlan {
  Length shortest = limits::kShortestStick, longest = limits::kLongestStick, step = limits::kStickStep;  ///< as sold
  std::vector<Length> lengths;  ///< as sold, where they go by no step; empty: they do
  /// A piece that no stick that is sold gives may have one sawn to order, by the same step; there are no more of them
  /// than such pieces.
  bool longer = true;
  Length kerf = Length::inches(1, 8);
  Length trim = Length::inches(1);    ///< off each end, before anything is measured
  Length allowance{};                 ///< on each piece, for its crown and for cutting it twice
  Length keep = limits::kKeptOffcut;  ///< an offcut as long is kept
  StockAim aim = StockAim::kSticks;
  PricedBy priced_by = PricedBy::kBoardFoot;
  int price = 0;  ///< hundredths a board foot, or whole ones a cubic metre; 0: not known
  std::vector<StockPrice> prices;
  std::vector<YardStick> yard;
  std::vector<HeldStick> held;
  friend bool operator==(const StockPlan&, const StockPlan&) = default;
};

/// What is sold, the shortest first. The plan has no trouble (order.h).
[[nodiscard]] std::vector<Length> lengths_sold(const StockPlan& plan);

/// A yard that sells by the metre.
[[nodiscard]] StockPlan metric_stock();

}  // namespace bentbook
