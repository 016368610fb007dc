#include "numeric/simplex.h"

#include <algorithm>
#include <utility>

namespace bentbook {
namespace {

constexpr double kPivot = 1e-9;     // smaller entries of a column are rounding
constexpr double kNotTaken = 1e-7;  // of a column
constexpr double kMostDear = 1e15;  // a price at which what no column gives is left

}  // namespace

Simplex::Simplex(std::vector<double> wanted, std::vector<double> bought)
    : size_(static_cast<int>(wanted.size())),
      at_least_(static_cast<int>(bought.size())),
      inverse_(wanted.size() * wanted.size(), 0),
      value_(std::move(wanted)),
      price_(value_.size(), 0),
      bought_(std::move(bought)),
      over_weight_(value_.size(), 1),
      row_(value_.size(), 0) {
  basic_.reserve(value_.size());
  for (int r = 0; r < size_; ++r) {
    basic_.push_back(r < at_least_ ? kBought - r : over(r));
    inverse(r, r) = 1;
  }
  stepped_.reserve(value_.size());
}

int Simplex::add(double cost, const std::vector<RowShare>& shares) {
  columns_.push_back({cost, 1, shares_.size(), shares_.size() + shares.size()});
  shares_.insert(shares_.end(), shares.begin(), shares.end());
  return static_cast<int>(columns_.size()) - 1;
}

double Simplex::cost_of(int column) const {
  if (column >= 0) return columns_[at(column)].cost;
  return column <= kBought ? bought_[at(kBought - column)] : 0;
}

double Simplex::times_row(const Column& column, const std::vector<double>& row) const {
  double sum = 0;
  for (std::size_t i = column.begin; i < column.end; ++i) sum += shares_[i].count * row[at(shares_[i].row)];
  return sum;
}

int Simplex::entering(double hair) const {
  int found = kNone;
  double most = 0;
  const auto offer = [&](int column, double saved, double weight) {
    if (saved <= hair || saved * saved <= most * weight) return;
    most = saved * saved / weight;
    found = column;
  };
  for (int r = 0; r < size_; ++r) offer(over(r), sign_of(r) * price_[at(r)], over_weight_[at(r)]);
  for (std::size_t c = 0; c < columns_.size(); ++c)
    offer(static_cast<int>(c), times_row(columns_[c], price_) - columns_[c].cost, columns_[c].weight);
  return found;
}

bool Simplex::pivot(int column) {
  step_.assign(at(size_), 0);
  const auto add_step = [&](int row, double times) {
    for (int r = 0; r < size_; ++r) step_[at(r)] += times * inverse(r, row);
  };
  if (column >= 0) {
    for (std::size_t i = columns_[at(column)].begin; i < columns_[at(column)].end; ++i)
      add_step(shares_[i].row, shares_[i].count);
  } else {
    add_step(-2 - column, sign_of(-2 - column));
  }
  int out = -1;
  for (int r = 0; r < size_; ++r) {
    if (step_[at(r)] <= kPivot) continue;
    const double here = value_[at(r)] * step_[at(out < 0 ? r : out)];
    if (out < 0 || here < value_[at(out)] * step_[at(r)]) out = r;
  }
  if (out < 0) return false;
  const double by = step_[at(out)];
  double saved = cost_of(column);
  for (int r = 0; r < size_; ++r) saved -= cost_of(basic_[at(r)]) * step_[at(r)];
  value_[at(out)] /= by;
  stepped_.clear();
  for (int r = 0; r < size_; ++r) {
    if (r == out || step_[at(r)] == 0) continue;
    value_[at(r)] = std::max(value_[at(r)] - step_[at(r)] * value_[at(out)], 0.0);
    stepped_.push_back(r);
  }
  for (int c = 0; c < size_; ++c) {
    const double here = row_[at(c)] = inverse(out, c) /= by;
    if (here == 0) continue;
    price_[at(c)] += saved * here;
    double* const changed = &inverse(0, c);
    for (const int r : stepped_) changed[r] -= step_[at(r)] * here;
    work_ += static_cast<std::int64_t>(stepped_.size());
  }
  work_ += 8 * size_ + 4 * static_cast<std::int64_t>(shares_.size());
  reweigh(column, basic_[at(out)], by);
  basic_[at(out)] = column;
  ++pivots_;
  return true;
}

/// Devex weights after a pivot, by the row that it went through.
void Simplex::reweigh(int entered, int left, double by) {
  const double weight = entered >= 0 ? columns_[at(entered)].weight : over_weight_[at(-2 - entered)];
  for (int r = 0; r < size_; ++r)
    over_weight_[at(r)] = std::max(over_weight_[at(r)], row_[at(r)] * row_[at(r)] * weight);
  for (Column& column : columns_) {
    const double reach = times_row(column, row_);
    column.weight = std::max(column.weight, reach * reach * weight);
  }
  if (left <= kBought) return;
  (left >= 0 ? columns_[at(left)].weight : over_weight_[at(-2 - left)]) = std::max(weight / (by * by), 1.0);
}

void Simplex::price_afresh() {
  for (int c = 0; c < size_; ++c) {
    double price = 0;
    for (int r = 0; r < size_; ++r) price += cost_of(basic_[at(r)]) * inverse(r, c);
    price_[at(c)] = price;
  }
}

bool Simplex::make_dearer() {
  constexpr double kDearer = 4;
  bool any = false;
  for (int r = 0; r < size_; ++r) {
    if (basic_[at(r)] > kBought || value_[at(r)] < kNotTaken) continue;
    double& cost = bought_[at(kBought - basic_[at(r)])];
    if (cost > kMostDear) continue;
    cost *= kDearer;
    any = true;
  }
  price_afresh();
  return any;
}

double Simplex::value() const {
  double value = 0;
  for (int r = 0; r < size_; ++r) value += cost_of(basic_[at(r)]) * value_[at(r)];
  return value;
}

bool Simplex::is_bought() const {
  for (int r = 0; r < size_; ++r)
    if (basic_[at(r)] <= kBought && value_[at(r)] >= kNotTaken) return true;
  return false;
}

std::vector<Simplex::Taken> Simplex::taken() const {
  std::vector<Taken> taken;
  taken.reserve(at(size_));
  for (int r = 0; r < size_; ++r)
    if (basic_[at(r)] >= 0 && value_[at(r)] >= kNotTaken) taken.push_back({basic_[at(r)], value_[at(r)]});
  return taken;
}

}  // namespace bentbook
