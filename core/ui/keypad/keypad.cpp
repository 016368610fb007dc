#include "ui/keypad/keypad.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "cut/triangle.h"
#include "numeric/libm.h"

namespace bentbook::screens {
namespace {

std::string fraction_text(int tick, int denominator) {
  int n = tick, d = denominator;
  while (n % 2 == 0 && d > 1) {
    n /= 2;
    d /= 2;
  }
  return std::to_string(n) + "⁄" + std::to_string(d);
}

}  // namespace

// ── Opening, closing, the outcome ─────────────────────────────────────────────────────────────────────────────────

void Keypad::begin(Quantity quantity, std::string_view key, std::string_view title) {
  if (open_) finish();
  open_ = true;
  fresh_ = true;
  typing_ = chosen_ = operators_ = signed_ = carried_ = false;
  key_ = key;
  title_ = title;
  typed_.clear();
  sum_.clear();
  steps_.clear();
  usual_.clear();
  next_.clear();
  quantity_ = quantity;
  opened_ = {};
  lay_slots();
}

void Keypad::open_length(std::string_view key, std::string_view title, Length value, LengthEntry range) {
  begin(Quantity::kLength, key, title);
  range_ = range;
  lay_slots();
  show_length(value);
  opened_.length = value;
}

void Keypad::open_length(std::string_view key, std::string_view title, LengthEntry range) {
  begin(Quantity::kLength, key, title);
  range_ = range;
  lay_slots();
  opened_.error = Error{ErrorCode::kEmpty, {}, 0, 0};
}

void Keypad::open_slope(std::string_view key, std::string_view title, const Slope& value) {
  begin(Quantity::kSlope, key, title);
  form_ = value.form == SlopeForm::kAngle     ? BareSlope::kDegrees
          : value.form == SlopeForm::kPercent ? BareSlope::kPercent
          : value.form == SlopeForm::kMmPerM  ? BareSlope::kMmPerM
                                              : BareSlope::kIn12;
  lay_slots();
  show_slope(value);
  opened_.slope = value;
}

void Keypad::open_angle(std::string_view key, std::string_view title, Angle value, Angle min, Angle max) {
  begin(Quantity::kAngle, key, title);
  angle_min_ = min;
  angle_max_ = max;
  term_.negative = value < Angle{};
  term_.slots[0].digits = without_trailing_zeros(print_fixed(libm::fabs(value.deg()), 3));
  opened_.angle = value;
}

void Keypad::open_count(std::string_view key, std::string_view title, std::int64_t value, std::int64_t min,
                        std::int64_t max, EntryStep step) {
  begin(Quantity::kCount, key, title);
  count_min_ = min;
  count_max_ = max;
  step_ = step;
  term_.slots[0].digits = steps_text(value, step);
  opened_.count = value;
}

void Keypad::close() {
  open_ = false;
  key_.clear();
  usual_.clear();
}

/// Hands out what was changed if it reads well; nothing was changed: nothing is handed out.
bool Keypad::finish() {
  const Reading now = reading();
  if (!now.good()) return false;
  if (!fresh_ || carried_) hand_out({key_, now});
  return true;
}

void Keypad::hand_out(Outcome outcome) {
  constexpr std::size_t kRemembered = 12;
  entered_.insert(entered_.begin(), outcome);
  if (entered_.size() > kRemembered) entered_.pop_back();
  outcomes_.push_back(std::move(outcome));
}

void Keypad::pick_usual(std::size_t which) {
  if (which >= usual_.size()) return;
  Usual picked = std::move(usual_[which]);
  for (Outcome& outcome : picked.gives) hand_out(std::move(outcome));
  lead_on();
}

std::string Keypad::next_key() const {
  const auto here = std::find(walk_.begin(), walk_.end(), key_);
  return open_ && here != walk_.end() && here + 1 != walk_.end() ? *(here + 1) : std::string{};
}

/// What was asked for is done: on to the next field, else away.
void Keypad::lead_on() {
  next_ = next_key();
  close();
}

bool Keypad::take_next(std::string_view key) {
  if (next_.empty() || next_ != key) return false;
  next_.clear();
  return true;
}

std::optional<Keypad::Reading> Keypad::take(std::string_view key) {
  const auto found = std::find_if(outcomes_.begin(), outcomes_.end(), [&](const Outcome& o) { return o.key == key; });
  if (found == outcomes_.end()) return std::nullopt;
  Reading out = std::move(found->reading);
  outcomes_.erase(found);
  return out;
}

std::string Keypad::waiting(std::string_view prefix) const {
  for (const Outcome& outcome : outcomes_)
    if (outcome.key.starts_with(prefix)) return outcome.key;
  return {};
}

std::optional<Length> Keypad::take_length(std::string_view key) {
  const auto r = take(key);
  return r ? r->length : std::nullopt;
}
std::optional<Slope> Keypad::take_slope(std::string_view key) {
  const auto r = take(key);
  return r ? r->slope : std::nullopt;
}
std::optional<Angle> Keypad::take_angle(std::string_view key) {
  const auto r = take(key);
  return r ? r->angle : std::nullopt;
}
std::optional<std::int64_t> Keypad::take_count(std::string_view key) {
  const auto r = take(key);
  return r ? r->count : std::nullopt;
}

std::optional<Keypad::Reading> Keypad::preview(std::string_view key) const {
  if (!is_open(key) || (fresh_ && !carried_)) return std::nullopt;
  Reading r = reading();
  return r.good() ? std::optional(std::move(r)) : std::nullopt;
}
std::optional<Length> Keypad::preview_length(std::string_view key) const {
  const auto r = preview(key);
  return r ? r->length : std::nullopt;
}
std::optional<Slope> Keypad::preview_slope(std::string_view key) const {
  const auto r = preview(key);
  return r ? r->slope : std::nullopt;
}
std::optional<Angle> Keypad::preview_angle(std::string_view key) const {
  const auto r = preview(key);
  return r ? r->angle : std::nullopt;
}

// ── Slots ─────────────────────────────────────────────────────────────────────────────────────────────────────────

void Keypad::lay_slots() {
  const auto lay = [&](std::initializer_list<SlotKind> kinds) {
    term_ = {};
    term_.slot_count = static_cast<int>(kinds.size());
    std::size_t i = 0;
    for (const SlotKind kind : kinds) term_.slots[i++].kind = kind;
  };
  if (quantity_ == Quantity::kAngle) return lay({SlotKind::kDegrees});
  if (quantity_ == Quantity::kCount || wants_factor()) return lay({SlotKind::kPlain});
  if (quantity_ == Quantity::kSlope) {
    switch (form_) {
      case BareSlope::kIn12:
        return lay({SlotKind::kInches, SlotKind::kFraction});
      case BareSlope::kDegrees:
        return lay({SlotKind::kDegrees});
      case BareSlope::kPercent:
        return lay({SlotKind::kPercent});
      case BareSlope::kMmPerM:
        return lay({SlotKind::kMmPerM});
    }
  }
  switch (style_.form) {
    case LengthForm::kFeetInches:
      lay({SlotKind::kFeet, SlotKind::kInches, SlotKind::kFraction});
      term_.active = range_.bare == BareUnit::kFoot ? 0 : 1;
      return;
    case LengthForm::kInchFraction:
      return lay({SlotKind::kInches, SlotKind::kFraction});
    case LengthForm::kDecimalInch:
      return lay({SlotKind::kInches});
    case LengthForm::kMm:
      return lay({SlotKind::kMm});
    case LengthForm::kMetre:
      return lay({SlotKind::kMetres});
  }
}

/// The nearest value that the slots can hold; what was opened stays exact while nothing is changed.
void Keypad::show_length(Length value) {
  term_.negative = value.count < 0;
  const Length size = value.count < 0 ? -value : value;
  if (!has_tape()) {
    LengthStyle plain = style_;
    if (plain.form == LengthForm::kDecimalInch) plain.decimals = std::max(plain.decimals, 3);
    std::string text = print_length(size, plain, Marks::kAscii).text;
    std::string digits;
    for (const char c : text)
      if ((c >= '0' && c <= '9') || c == '.') digits.push_back(c);
    term_.slots[0].digits = without_trailing_zeros(digits);
    return;
  }
  const std::int64_t division = Length::kPerInch / style_.denominator;
  const std::int64_t divisions = (size.count + division / 2) / division;
  term_.tick = static_cast<int>(divisions % style_.denominator);
  const std::int64_t inches = divisions / style_.denominator;
  if (term_.slot_count == 3) {
    term_.slots[0].digits = std::to_string(inches / 12);
    term_.slots[1].digits = std::to_string(inches % 12);
  } else {
    term_.slots[0].digits = std::to_string(inches);
  }
}

void Keypad::show_slope(const Slope& value) {
  const SlopeFacts facts = slope_facts(value);
  switch (form_) {
    case BareSlope::kIn12:
      return show_length(Length::from_inches(facts.in_12));
    case BareSlope::kDegrees:
      term_.slots[0].digits = without_trailing_zeros(print_fixed(facts.angle.deg(), 3));
      return;
    case BareSlope::kPercent:
      term_.slots[0].digits = without_trailing_zeros(print_fixed(facts.percent, 2));
      return;
    case BareSlope::kMmPerM:
      term_.slots[0].digits = without_trailing_zeros(print_fixed(facts.mm_per_m, 1));
      return;
  }
}

bool Keypad::has_tape() const {
  return term_.slot_count > 1 &&
         term_.slots[static_cast<std::size_t>(term_.slot_count) - 1].kind == SlotKind::kFraction;
}

bool Keypad::takes_sign() const {
  if (quantity_ == Quantity::kLength) return range_.min < Length{};
  return quantity_ == Quantity::kAngle && angle_min_ < Angle{};
}

bool Keypad::takes_point() const { return quantity_ == Quantity::kCount ? step_.decimals > 0 : !has_tape(); }

bool Keypad::after_closed() const { return !sum_.empty() && sum_.back() == ')'; }

/// After × or ÷ stands a plain number.
bool Keypad::wants_factor() const { return sum_.ends_with("× ") || sum_.ends_with("÷ "); }

BareUnit Keypad::bare() const {
  if (style_.form == LengthForm::kMm) return BareUnit::kMm;
  if (style_.form == LengthForm::kMetre) return BareUnit::kMetre;
  // Who has lengths in inches alone types no feet.
  const bool feet = style_.form == LengthForm::kFeetInches && range_.bare == BareUnit::kFoot;
  return feet ? BareUnit::kFoot : BareUnit::kInch;
}

Keypad::SlotKind Keypad::bare_kind() const {
  if (!typing_ || quantity_ != Quantity::kLength) return term_.slots[static_cast<std::size_t>(term_.active)].kind;
  switch (bare()) {
    case BareUnit::kFoot:
      return SlotKind::kFeet;
    case BareUnit::kInch:
      return SlotKind::kInches;
    case BareUnit::kMm:
      return SlotKind::kMm;
    case BareUnit::kMetre:
      break;
  }
  return SlotKind::kMetres;
}

bool Keypad::term_empty() const {
  for (int i = 0; i < term_.slot_count; ++i)
    if (!term_.slots[static_cast<std::size_t>(i)].digits.empty()) return false;
  return term_.tick == 0;
}

std::string Keypad::term_text() const {
  if (term_empty()) return {};
  std::string out = term_.negative ? "−" : "";
  const std::string tick = term_.tick > 0 ? fraction_text(term_.tick, style_.denominator) : std::string{};
  for (int i = 0; i < term_.slot_count; ++i) {
    const Slot& s = term_.slots[static_cast<std::size_t>(i)];
    const std::string_view gap = out.empty() || out == "−" ? "" : " ";
    switch (s.kind) {
      case SlotKind::kFeet:
        if (!s.digits.empty()) out += s.digits + "′";
        break;
      case SlotKind::kInches:
        if (!s.digits.empty())
          out += std::string(gap) + s.digits + (tick.empty() ? "″" : " " + tick + "″");
        else if (!tick.empty())
          out += std::string(gap) + tick + "″";
        break;
      case SlotKind::kMm:
        out += s.digits + " mm";
        break;
      case SlotKind::kMetres:
        out += s.digits + " m";
        break;
      case SlotKind::kFraction:
        break;
      default:
        out += s.digits;
    }
  }
  return out;
}

std::string Keypad::entry() const { return typing_ ? typed_ : sum_ + term_text(); }

}  // namespace bentbook::screens
