#include <string>
#include <utility>

#include "text/utf8.h"
#include "ui/keypad/keypad.h"

namespace bentbook::screens {
namespace {

constexpr std::size_t kMostDigits = 9;

std::string_view operator_text(char c) {
  switch (c) {
    case '+':
      return " + ";
    case '-':
      return " − ";
    case '*':
      return " × ";
    default:
      return " ÷ ";
  }
}

}  // namespace

void Keypad::press(Stroke stroke) {
  if (!open_) return;
  using Kind = Stroke::Kind;
  signed_ &= stroke.kind == Kind::kSign || stroke.kind == Kind::kDigit || stroke.kind == Kind::kPoint;
  switch (stroke.kind) {
    case Kind::kDigit:
      return digit(static_cast<char>('0' + stroke.value));
    case Kind::kPoint:
      return takes_point() ? digit('.') : void();
    case Kind::kTick:
      return pick_tick(stroke.value);
    case Kind::kSlot:
      return pick_slot(stroke.value);
    case Kind::kSign:
      return change_sign();
    case Kind::kOperator:
      return apply_operator(static_cast<char>(stroke.value));
    case Kind::kErase:
      return erase();
    case Kind::kOperators:
      operators_ = takes_sum() && !operators_;
      return;
    case Kind::kForm:
      return pick_form(static_cast<BareSlope>(stroke.value));
    case Kind::kNext:
      if (finish()) lead_on();
      return;
    case Kind::kUsual:
      return pick_usual(static_cast<std::size_t>(stroke.value));
    case Kind::kDone:
      if (finish()) close();
      return;
    case Kind::kCancel:
      return close();
  }
}

void Keypad::start_anew() {
  lay_slots();
  fresh_ = false;
  chosen_ = false;
}

void Keypad::digit(char c) {
  if (typing_) return type(std::string_view(&c, 1));
  if (after_closed()) return;
  if (fresh_ && !chosen_) start_anew();
  if (std::exchange(signed_, false)) {
    const bool negative = term_.negative;
    start_anew();
    term_.negative = negative;
  }
  std::string& digits = term_.slots[static_cast<std::size_t>(term_.active)].digits;
  if (chosen_) digits.clear();
  fresh_ = chosen_ = false;
  if (digits.size() >= kMostDigits) return;
  if (c == '.') {
    if (digits.find('.') != std::string::npos) return;
    if (digits.empty()) digits = "0";
  } else if (digits == "0") {
    digits.clear();
  }
  const std::size_t point = digits.find('.');
  if (quantity_ == Quantity::kCount && point != std::string::npos &&
      digits.size() > point + static_cast<std::size_t>(step_.decimals))
    return;
  digits.push_back(c);
}

void Keypad::pick_tick(int tick) {
  if (!leave_typing() || !has_tape() || after_closed()) return;
  term_.tick = tick < 0 ? 0 : tick >= style_.denominator ? style_.denominator - 1 : tick;
  fresh_ = false;
}

void Keypad::pick_slot(int slot) {
  if (!leave_typing() || slot < 0 || slot >= term_.slot_count) return;
  if (term_.slots[static_cast<std::size_t>(slot)].kind == SlotKind::kFraction) return pick_tick(0);
  term_.active = slot;
  chosen_ = true;
}

/// From free text back to slots, when it reads as one value.
bool Keypad::leave_typing() {
  if (!typing_) return true;
  const Reading now = reading();
  if (quantity_ != Quantity::kLength || !now.good()) return false;
  typing_ = false;
  sum_.clear();
  steps_.clear();
  lay_slots();
  show_length(*now.length);
  return true;
}

void Keypad::change_sign() {
  if (!takes_sign()) return;
  if (typing_) return type("−");
  term_.negative = !term_.negative;
  operators_ = false;
  signed_ |= fresh_;
  fresh_ = false;
}

void Keypad::apply_operator(char c) {
  operators_ = false;
  if (!takes_sum()) return;
  const bool bracket = c == '(' || c == ')';
  if (typing_) return type(bracket ? std::string_view(&c, 1) : operator_text(c));
  // Brackets and signs go only where the sum can take them; what cannot stand is not typed.
  if (c == '(') {
    if (fresh_) start_anew();
    if (!term_empty() || after_closed()) return;
  } else if (term_empty() && !after_closed()) {
    return;
  }
  if (c == ')') {
    int depth = 0;
    for (const char s : sum_) depth += s == '(' ? 1 : s == ')' ? -1 : 0;
    if (depth <= 0) return;
  }
  steps_.push_back({term_, sum_.size()});
  sum_ += term_text();
  sum_ += bracket ? std::string(1, c) : std::string(operator_text(c));
  start_anew();
}

void Keypad::erase() {
  if (typing_) {
    drop_last_character(typed_);
    fresh_ = false;
    return;
  }
  if (fresh_ && !chosen_) return start_anew();
  fresh_ = chosen_ = false;
  for (int i = term_.active; i >= 0; --i) {
    std::string& digits = term_.slots[static_cast<std::size_t>(i)].digits;
    if (term_.tick > 0 && i == term_.active && digits.empty()) break;
    if (digits.empty()) continue;
    digits.pop_back();
    term_.active = i;
    return;
  }
  if (term_.tick > 0) {
    term_.tick = 0;
    return;
  }
  term_.negative = false;
  if (steps_.empty()) return;
  term_ = steps_.back().term;
  sum_.resize(steps_.back().sum_size);
  steps_.pop_back();
}

void Keypad::pick_form(BareSlope form) {
  if (quantity_ != Quantity::kSlope || form == form_) return;
  const Reading now = reading();
  std::string digits = term_.slots[0].digits;
  form_ = form;
  typing_ = chosen_ = false;
  lay_slots();
  if (!now.slope) {  // no slope yet: what was typed may have been meant in this unit
    term_.slots[0].digits = std::move(digits);
    return;
  }
  // Exactly what was said, shown in the other unit: looking at it changes nothing.
  carried_ |= !fresh_;
  fresh_ = true;
  opened_ = now;
  show_slope(*now.slope);
}

void Keypad::type(std::string_view text) {
  if (!typing_) {
    typed_ = fresh_ ? std::string{} : entry();
    typing_ = true;
  }
  fresh_ = chosen_ = operators_ = false;
  if (typed_.size() + text.size() <= 120) typed_ += text;
}

void Keypad::character(std::uint32_t code_point) {
  constexpr std::uint32_t kLastInPlane = 0xFFFF;  // no sign of a measure lies past it
  if (!open_ || code_point < 0x20 || code_point == 0x7F || code_point > kLastInPlane) return;
  type(utf8(code_point));
}

void Keypad::set_text(std::string_view text) {
  if (!open_) return;
  typing_ = true;
  typed_.clear();
  type(text.substr(0, 120));
}

}  // namespace bentbook::screens
