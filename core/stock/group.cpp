#include "stock/group.h"

#include <algorithm>
#include <numeric>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "stock/cutting.h"
#include "stock/limits.h"

namespace bentbook {
namespace {

/// Sound wood of one stick, from end A; what was cut out of it already, in the order in which it was.
struct Span {
  Length from, to;
  std::vector<StickPiece> pieces;
};
/// A length that is bought.
struct Bought {
  Length length;
  int most = -1;   ///< sticks; −1: as many as are wanted
  int wanted = 0;  ///< the piece that wants it, of those that do the first; what is sold: of all
};
/// A stick that pieces can come out of, before it is known whether any do.
struct Bin {
  PlannedStick stick;
  std::vector<Span> spans;
  bool held = false;
};

class Group {
 public:
  Group(const std::vector<StockPiece>& pieces, const std::vector<int>& members, const StockPlan& plan)
      : pieces_(pieces), members_(members), plan_(plan) {
    const StockPiece& first = pieces[at(members.front())];
    group_.section = lying(first.section);
    group_.species = first.species;
  }

  StockGroup solve() {
    lay_out_held();
    lay_out_yard();
    lay_out_bought();
    if (!price_all()) return std::move(group_);
    rows_of_pieces();
    kinds_of_sticks();
    const auto cutting = solve_cutting(problem_);
    if (!cutting) return refuse(cutting.error());
    cut(*cutting);
    finish(*cutting);
    return std::move(group_);
  }

 private:
  [[nodiscard]] bool is_of(const Section& section, const std::string& species) const {
    return lying(section) == group_.section && species == group_.species;
  }
  /// What a piece takes with the kerf behind it.
  [[nodiscard]] Length taken(int piece) const { return pieces_[at(piece)].length + plan_.allowance + plan_.kerf; }

  /// Hundredths; 0: not known.
  [[nodiscard]] std::int64_t price_of(Length length) const {
    const double feet = board_feet_of(group_.section, length);
    // Board feet to cubic metres: 144 in³ each; a price by those is in whole money.
    const double per = plan_.priced_by == PricedBy::kBoardFoot ? 1 : 100 * 144 * 25.4 * 25.4 * 25.4 / 1e9;
    int by_volume = plan_.price;
    for (const StockPrice& p : plan_.prices) {
      if (!(lying(p.section) == group_.section) || (!p.species.empty() && p.species != group_.species)) continue;
      if (p.length == length && p.length.count > 0) return p.price;
      if (p.length.count == 0) by_volume = p.price;
    }
    return static_cast<std::int64_t>(feet * per * by_volume + 0.5);
  }

  bool price_all() {
    if (plan_.aim != StockAim::kCost) return true;
    const auto unpriced = std::find_if(bought_.begin(), bought_.end(),
                                       [&](const Bought& bought) { return price_of(bought.length) <= 0; });
    if (unpriced == bought_.end()) return true;
    group_.trouble = StockTrouble{{ErrorCode::kMissing, "stock_price", -1, 0}, pieces_[at(unpriced->wanted)].mark};
    return false;
  }

  /// What the aim counts of a stick that is bought.
  [[nodiscard]] std::int64_t counts(Length length) const {
    if (plan_.aim == StockAim::kSticks) return 1;
    return plan_.aim == StockAim::kWaste ? length.count : price_of(length);
  }

  [[nodiscard]] Bin bin_of(Length length, const std::string& yard, std::vector<StickDefect> defects) const {
    Bin bin;
    bin.stick.number = 0;  // none yet
    bin.stick.length = length;
    bin.stick.yard = yard;
    bin.stick.defects = defects;
    sort_by(defects, [](const StickDefect& a, const StickDefect& b) { return a.from < b.from; });
    Length from = plan_.trim;
    const Length end = length - plan_.trim;
    for (const StickDefect& defect : defects) {
      const Length to = std::min(defect.from, end);
      if (to > from) bin.spans.push_back({from, to, {}});
      from = std::max(from, defect.to);
    }
    if (end > from) bin.spans.push_back({from, end, {}});
    return bin;
  }

  [[nodiscard]] Length room_of(const Span& span) const {
    Length room = span.to - span.from + plan_.kerf;
    for (const StickPiece& piece : span.pieces) room = room - piece.length - plan_.kerf;
    return room;
  }
  /// False: it has no room there.
  bool put(Span& span, int piece, bool held) const {
    const Length room = room_of(span);
    if (taken(piece) > room) return false;
    span.pieces.push_back({piece, span.to + plan_.kerf - room, taken(piece) - plan_.kerf, held});
    return true;
  }

  [[nodiscard]] const YardStick* yard_stick(const std::string& name) const {
    for (const YardStick& stick : plan_.yard)
      if (stick.name == name && is_of(stick.section, stick.species)) return &stick;
    return nullptr;
  }

  void lay_out_held() {
    left_ = members_;
    for (const HeldStick& held : plan_.held) {
      if (!is_of(held.section, held.species)) continue;
      const YardStick* yard = held.yard.empty() ? nullptr : yard_stick(held.yard);
      if (!held.yard.empty() && (yard == nullptr || gone_from(held.yard) >= yard->count)) continue;
      Bin bin = bin_of(held.length, held.yard, yard == nullptr ? std::vector<StickDefect>{} : yard->defects);
      bin.held = true;
      bin.stick.number = held.number;
      bin.stick.used = held.used;
      std::vector<int> wanted;
      for (const int piece : left_)
        if (std::find(held.marks.begin(), held.marks.end(), pieces_[at(piece)].mark) != held.marks.end())
          wanted.push_back(piece);
      sort_by(wanted, [&](int a, int b) { return pieces_[at(a)].length > pieces_[at(b)].length; });
      bool any = held.used;
      for (const int piece : wanted)
        if (std::any_of(bin.spans.begin(), bin.spans.end(), [&](Span& span) { return put(span, piece, true); })) {
          std::erase(left_, piece);
          any = true;
        }
      if (any) bins_.push_back(std::move(bin));
    }
  }
  [[nodiscard]] int gone_from(const std::string& yard) const {
    return static_cast<int>(
        std::count_if(bins_.begin(), bins_.end(), [&](const Bin& bin) { return bin.stick.yard == yard; }));
  }

  void lay_out_yard() {
    for (const YardStick& stick : plan_.yard) {
      if (!is_of(stick.section, stick.species)) continue;
      for (int n = gone_from(stick.name); n < stick.count; ++n)
        bins_.push_back(bin_of(stick.length, stick.name, stick.defects));
    }
  }

  /// What is bought: the lengths sold, and behind them those sawn to order, each as often at most as there is a piece
  /// that wants it.
  void lay_out_bought() {
    const std::vector<Length> sold = lengths_sold(plan_);
    longest_sold_ = sold.back();
    bought_.reserve(sold.size());
    for (const Length length : sold) bought_.push_back({length, -1, members_.front()});
    if (!plan_.longer || !plan_.lengths.empty()) return;
    for (const int piece : left_) {
      const Length over = taken(piece) - plan_.kerf + plan_.trim * 2 - longest_sold_;
      if (over.count <= 0) continue;
      const Length length = longest_sold_ + plan_.step * ((over.count + plan_.step.count - 1) / plan_.step.count);
      if (length > longest_to_order()) continue;  // it is told as too long
      const auto known =
          std::find_if(bought_.begin(), bought_.end(), [&](const Bought& bought) { return bought.length == length; });
      if (known != bought_.end())
        ++known->most;
      else
        bought_.push_back({length, 1, piece});
    }
  }

  /// The longest stick that can be had; what is sold, where nothing is sawn to order.
  [[nodiscard]] Length longest_to_order() const {
    const std::int64_t over = limits::kLongestToOrder.count - longest_sold_.count;
    if (!plan_.longer || !plan_.lengths.empty() || over <= 0) return longest_sold_;
    return longest_sold_ + plan_.step * (over / plan_.step.count);
  }

  void rows_of_pieces() {
    sort_by(left_, [&](int a, int b) { return pieces_[at(a)].length > pieces_[at(b)].length; });
    for (const int piece : left_) {
      if (problem_.rows.empty() || problem_.rows.back().size != taken(piece).count) {
        problem_.rows.push_back({taken(piece).count, 0});
        of_row_.emplace_back();
      }
      ++problem_.rows.back().count;
      of_row_.back().push_back(piece);
    }
  }

  /// A span that pieces may come out of is a kind; alike ones are one. Whatever is bought weighs more than all that
  /// lies in the yard: first as little as possible is bought, then as few spans as possible are begun.
  void kinds_of_sticks() {
    std::int64_t unit = 0;
    for (const Bought& bought : bought_) unit = std::gcd(unit, counts(bought.length));
    unit_ = std::max<std::int64_t>(unit, 1);
    for (std::size_t b = 0; b < bins_.size(); ++b)
      if (!bins_[b].stick.used)
        for (std::size_t s = 0; s < bins_[b].spans.size(); ++s)
          add_span(room_of(bins_[b].spans[s]).count, bins_[b].held ? 0 : 1, static_cast<int>(b), static_cast<int>(s));
    weight_ = 1;
    for (const StickKind& kind : problem_.kinds) weight_ += kind.most;
    first_bought_ = problem_.kinds.size();
    for (const Bought& bought : bought_)
      problem_.kinds.push_back(
          {(bought.length - plan_.trim * 2 + plan_.kerf).count, counts(bought.length) / unit_ * weight_, bought.most});
  }
  void add_span(std::int64_t room, int cost, int bin, int span) {
    std::size_t k = 0;
    while (k < problem_.kinds.size() && (problem_.kinds[k].room != room || problem_.kinds[k].cost != cost)) ++k;
    if (k == problem_.kinds.size()) {
      problem_.kinds.push_back({room, cost, 0});
      of_kind_.emplace_back();
    }
    ++problem_.kinds[k].most;
    of_kind_[k].push_back({bin, span});
  }

  StockGroup refuse(const Error& error) {
    const int piece = of_row_[at(static_cast<int>(error.at))].front();
    // Where the yard has none left, what is sold is the limit.
    Length room = longest_to_order() - plan_.trim * 2 + plan_.kerf;
    if (error.code == ErrorCode::kTooLarge) room = std::max(room, Length{error.limit});
    const Length most = room - plan_.kerf - plan_.allowance;
    group_.trouble =
        StockTrouble{{error.code, "stock_piece", -1, std::max<std::int64_t>(most.count, 0)}, pieces_[at(piece)].mark};
    return std::move(group_);
  }

  void cut(const Cutting& cutting) {
    std::vector<std::size_t> next_span(of_kind_.size(), 0), next_piece(of_row_.size(), 0);
    for (const CutStick& stick : cutting.sticks) {
      Span* span = nullptr;
      if (const auto kind = at(stick.kind); kind < first_bought_) {
        const auto [bin, which] = of_kind_[kind][next_span[kind]++];
        span = &bins_[at(bin)].spans[at(which)];
      } else {
        bins_.push_back(bin_of(bought_[kind - first_bought_].length, {}, {}));
        span = &bins_.back().spans.front();
      }
      for (const RowCount& row : stick.pieces)
        for (int n = 0; n < row.count; ++n) (void)put(*span, of_row_[at(row.row)][next_piece[at(row.row)]++], false);
    }
  }

  void finish(const Cutting& cutting) {
    for (Bin& bin : bins_) {
      PlannedStick& stick = bin.stick;
      for (const Span& span : bin.spans) {
        stick.pieces.insert(stick.pieces.end(), span.pieces.begin(), span.pieces.end());
        const Length left = room_of(span) - plan_.kerf;  // which has taken a kerf for each piece: it is cut off
        const Length from = span.to - left;
        if (left.count > 0) stick.offcuts.push_back({from, left, left >= plan_.keep});
      }
      if (stick.pieces.empty() && !stick.used) continue;
      if (stick.yard.empty()) {
        stick.to_order = plan_.lengths.empty() && stick.length > longest_sold_;
        stick.price = price_of(stick.length);
        group_.counted += counts(stick.length);
        if (bin.held) held_ += counts(stick.length);
      }
      group_.sticks.push_back(std::move(stick));
    }
    group_.bound = held_ + cutting.bound / weight_ * unit_;
  }

  const std::vector<StockPiece>& pieces_;
  const std::vector<int>& members_;
  const StockPlan& plan_;
  StockGroup group_;
  std::vector<Bought> bought_;
  Length longest_sold_;
  std::vector<int> left_;  ///< pieces that no held stick has
  std::vector<Bin> bins_;
  CuttingProblem problem_;
  std::vector<std::vector<int>> of_row_;                   ///< pieces of each row
  std::vector<std::vector<std::pair<int, int>>> of_kind_;  ///< bin and span of each that there is an end of
  std::size_t first_bought_ = 0;
  std::int64_t unit_ = 1, weight_ = 1, held_ = 0;
};

}  // namespace

Section lying(const Section& section) {
  return section.breadth <= section.depth ? section : Section{section.depth, section.breadth};
}

StockGroup plan_group(const std::vector<StockPiece>& pieces, const std::vector<int>& members, const StockPlan& plan) {
  return Group(pieces, members, plan).solve();
}

void number_sticks(StockOrder& order, const StockPlan& plan) {
  std::vector<int> held;
  held.reserve(plan.held.size());
  for (const HeldStick& stick : plan.held) held.push_back(stick.number);
  int next = 1;
  for (StockGroup& group : order.groups) {
    for (PlannedStick& stick : group.sticks) {
      if (stick.number != 0) continue;
      while (std::find(held.begin(), held.end(), next) != held.end()) ++next;
      stick.number = next++;
    }
    sort_by(group.sticks, [](const PlannedStick& a, const PlannedStick& b) { return a.number < b.number; });
  }
}

}  // namespace bentbook
