#include "text/print_fixed.h"

#include <cstdint>
#include <cstring>
#include <vector>

#include "numeric/int128.h"

namespace bentbook {
namespace {

constexpr int kMostDecimals = 30;

/// A whole number in decimal limbs, least first.
class Decimal {
 public:
  explicit Decimal(std::uint64_t value) {
    for (; value > 0; value /= kBase) limbs_.push_back(static_cast<std::uint32_t>(value % kBase));
  }

  void multiply(std::uint32_t factor) {
    std::uint64_t carry = 0;
    for (std::uint32_t& limb : limbs_) {
      carry += std::uint64_t{limb} * factor;
      limb = static_cast<std::uint32_t>(carry % kBase);
      carry /= kBase;
    }
    if (carry > 0) limbs_.push_back(static_cast<std::uint32_t>(carry));
  }

  /// Halves; says whether a half was lost.
  bool halve() {
    std::uint64_t rest = 0;
    for (std::size_t i = limbs_.size(); i-- > 0;) {
      const std::uint64_t part = rest * kBase + limbs_[i];
      limbs_[i] = static_cast<std::uint32_t>(part / 2);
      rest = part % 2;
    }
    while (!limbs_.empty() && limbs_.back() == 0) limbs_.pop_back();
    return rest != 0;
  }

  void add_one() {
    for (std::uint32_t& limb : limbs_) {
      if (++limb < kBase) return;
      limb = 0;
    }
    limbs_.push_back(1);
  }

  bool zero() const { return limbs_.empty(); }

  std::string text() const {
    std::string digits;
    for (std::size_t i = 0; i < limbs_.size(); ++i) {
      std::uint32_t limb = limbs_[i];
      for (int k = 0; k < 9; ++k, limb /= 10) digits.insert(digits.begin(), static_cast<char>('0' + limb % 10));
    }
    const std::size_t first = digits.find_first_not_of('0');
    return first == std::string::npos ? std::string("0") : digits.substr(first);
  }

 private:
  static constexpr std::uint32_t kBase = 1'000'000'000;
  std::vector<std::uint32_t> limbs_;
};

/// Digits of mantissa · 10^decimals · 2^exponent, halves up, where that fits 128 bits; it does for nearly all measures.
bool short_digits(std::uint64_t mantissa, int exponent, int decimals, std::string& digits) {
  constexpr int kMostShort = 18;
  if (exponent >= 0 || decimals > kMostShort) return false;
  Uint128 scaled = mantissa;
  for (int i = 0; i < decimals; ++i) scaled *= 10;  // < 2^53 · 2^60
  const int shift = -exponent;
  const bool half = shift <= 127 && ((scaled >> (shift - 1)) & 1) != 0;
  scaled = shift <= 127 ? scaled >> shift : 0;
  if (half) ++scaled;
  if (scaled >> 64 != 0) return false;
  digits = std::to_string(static_cast<std::uint64_t>(scaled));
  return true;
}

std::string long_digits(std::uint64_t mantissa, int exponent, int decimals) {
  Decimal digits(mantissa);
  for (int i = 0; i < decimals; ++i) digits.multiply(10);
  for (; exponent > 0; --exponent) digits.multiply(2);
  bool half = false;  // the last bit shifted out: the half that goes up
  for (; exponent < 0 && (half || !digits.zero()); ++exponent) half = digits.halve();
  if (half && exponent == 0) digits.add_one();
  return digits.text();
}

}  // namespace

std::string print_fixed(double value, int decimals) {
  decimals = decimals < 0 ? 0 : decimals > kMostDecimals ? kMostDecimals : decimals;
  std::uint64_t bits = 0;
  std::memcpy(&bits, &value, sizeof bits);
  const int biased = static_cast<int>((bits >> 52) & 0x7ff);
  if (biased == 0x7ff) return "null";
  const std::uint64_t fraction = bits & ((std::uint64_t{1} << 52) - 1);
  const std::uint64_t mantissa = biased == 0 ? fraction : fraction | (std::uint64_t{1} << 52);
  const int exponent = (biased == 0 ? 1 : biased) - 1075;
  std::string text;
  if (!short_digits(mantissa, exponent, decimals, text)) text = long_digits(mantissa, exponent, decimals);
  const bool nothing = text == "0";
  const std::size_t places = static_cast<std::size_t>(decimals);
  if (places > 0) {
    if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
    text.insert(text.size() - places, 1, '.');
  }
  return (bits >> 63) != 0 && !nothing ? "-" + text : text;
}

std::string without_trailing_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace bentbook
