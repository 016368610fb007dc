#pragma once
/// From pieces to what is ordered and what is cut out of which stick.
///
/// A stick gives up `trim` at each end; n pieces out of one length of sound wood take n − 1 kerfs. A defect parts a
/// stick in two. Sections lie as they may: 8 × 10 is 10 × 8. Nothing is cut out of a larger section.

#include <optional>

#include "frame/plan.h"
#include "stock/plan.h"

namespace bentbook {

struct StockPiece {
  std::string mark;
  Section section;  ///< nominal
  std::string species;
  Length length;       ///< tip to tip; above 0
  double density = 0;  ///< lb/ft³; 0: not known
  friend bool operator==(const StockPiece&, const StockPiece&) = default;
};
/// Every timber of the frame, as it is ordered.
[[nodiscard]] std::vector<StockPiece> pieces_of(const Frame& frame);

struct StickPiece {
  int piece = 0;        ///< index among the pieces
  Length from, length;  ///< from the stick's end A; the allowance counted in
  bool held = false;
  friend bool operator==(const StickPiece&, const StickPiece&) = default;
};
/// Sound wood that is left over.
struct Offcut {
  Length from, length;
  bool kept = false;  ///< long enough
  friend bool operator==(const Offcut&, const Offcut&) = default;
};
struct PlannedStick {
  int number = 1;  ///< written on it; no two have one
  Length length;
  std::string yard;  ///< name of those in the yard that it is of; empty: it is bought
  bool used = false;
  bool to_order = false;  ///< longer than what is sold
  std::vector<StickPiece> pieces;
  std::vector<Offcut> offcuts;
  std::vector<StickDefect> defects;
  std::int64_t price = 0;  ///< hundredths; 0: in the yard, or not known
  friend bool operator==(const PlannedStick&, const PlannedStick&) = default;
};

/// What is wrong with the wood of one section and species, or with the plan as a whole.
struct StockTrouble {
  Error error;  ///< kTooLarge: `mark` is longer than what a stick gives, `limit`; kMissing "stock_price": of a stick
                ///< for `mark`; …
  std::string mark;  ///< the piece, where it is one
};

/// The sticks of one section and species.
struct StockGroup {
  Section section;  ///< the narrower side first
  std::string species;
  std::vector<PlannedStick> sticks;
  /// What the aim counts: sticks, counts of length or hundredths that are bought, and what no plan is below (of held
  /// sticks: with them as they are).
  std::int64_t counted = 0, bound = 0;
  std::optional<StockTrouble> trouble;  ///< then there are no sticks
  [[nodiscard]] bool proven() const { return bound >= counted; }
};

struct StockOrder {
  std::vector<StockPiece> pieces;
  std::vector<StockGroup> groups;       ///< the largest section first
  std::optional<StockTrouble> trouble;  ///< with what the plan says: there are no groups
  std::vector<std::string> gone;        ///< marks of held pieces that are no more, or no longer fit where they were
};
/// Errors stand in the order's troubles. `kMissing` "stock_price": the aim is cost, and a stick that is sold has none.
[[nodiscard]] StockOrder plan_stock(std::vector<StockPiece> pieces, const StockPlan& plan);

/// What is bought, a row for each section, species and length.
struct OrderRow {
  Section section;
  std::string species;
  Length length;
  bool to_order = false;  ///< longer than what is sold
  int count = 0;
  double board_feet = 0;
  std::int64_t price = 0;  ///< hundredths, of all of them; 0: not known
};
[[nodiscard]] std::vector<OrderRow> order_rows(const StockOrder& order);

struct StockTotals {
  int sticks = 0, bought = 0;
  std::int64_t bound = 0, counted = 0;   ///< as of the groups, together
  bool planned = false;                  ///< the wood of one group at least is in no trouble
  bool proven = true;                    ///< …and nothing does better than what is planned of it
  bool priced = true;                    ///< every stick that is bought has a price
  Length waste;                          ///< of all sticks, less the pieces' own lengths and kept offcuts
  Length kept;                           ///< offcuts
  std::int64_t price = 0;                ///< hundredths
  double board_feet = 0, weight_lb = 0;  ///< of what is bought, nominal
};
[[nodiscard]] StockTotals totals_of(const StockOrder& order);

/// The troubles of its groups; several times the same field missing is one.
[[nodiscard]] std::vector<StockTrouble> troubles_of(const StockOrder& order);

/// Loads of what is bought, heaviest sticks first, each where it has room: no more than `carries` pounds. Sticks that
/// are longer than the bed or heavier than all that it carries are counted in `over`.
struct Trips {
  int loads = 0, over = 0;
};
[[nodiscard]] Trips trips_for(const StockOrder& order, Length bed, double carries);

/// The stick that a piece comes out of; nullptr: none.
[[nodiscard]] const PlannedStick* stick_of(const StockOrder& order, std::string_view mark);

/// Pounds of a stick of that group.
[[nodiscard]] double stick_weight(const StockOrder& order, const StockGroup& group, const PlannedStick& stick);
[[nodiscard]] double board_feet_of(const Section& section, Length length);

}  // namespace bentbook
