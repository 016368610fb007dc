#include "command/args.h"

#include <algorithm>

namespace bentbook {
namespace {

// Every command takes these.
constexpr std::string_view kCommonFlags[] = {"json"};
constexpr std::string_view kCommonOptions[] = {"unit", "division", "lang"};

bool among(std::span<const std::string_view> names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string dashed(std::string_view name) { return "--" + std::string(name); }

template <class T>
Result<std::optional<T>> at_option(Result<T> value, std::string_view name) {
  if (value) return std::optional<T>(*value);
  Error error = value.error();
  error.where = dashed(name);
  return tl::unexpected(error);
}

}  // namespace

Result<Args> Args::read(std::span<const std::string_view> words, std::span<const std::string_view> flags,
                        std::span<const std::string_view> options) {
  Args args;
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string_view word = words[i];
    if (!word.starts_with("--")) {
      args.words_.push_back(word);
      continue;
    }
    word.remove_prefix(2);
    const std::size_t equals = word.find('=');
    const std::string_view name = word.substr(0, equals);
    const bool flag = among(flags, name) || among(kCommonFlags, name);
    if (!flag && !among(options, name) && !among(kCommonOptions, name))
      return fail(ErrorCode::kUnknownOption, dashed(name));
    if (args.has(name)) return fail(ErrorCode::kConflict, dashed(name));
    Option option{name, {}};
    if (equals != std::string_view::npos)
      option.value = word.substr(equals + 1);
    else if (!flag && ++i < words.size())
      option.value = words[i];
    else if (!flag)
      return fail(ErrorCode::kMissing, dashed(name));
    args.options_.push_back(option);
  }
  if (auto ok = args.read_common(); !ok) return tl::unexpected(ok.error());
  return args;
}

Result<void> Args::read_common() {
  constexpr std::string_view kUnits[] = {"in", "ft", "mm", "m"};
  constexpr BareUnit kBare[] = {BareUnit::kInch, BareUnit::kFoot, BareUnit::kMm, BareUnit::kMetre};
  constexpr std::string_view kDivisions[] = {"8", "16", "32", "64"};
  voice_.marks = Marks::kAscii;
  const auto unit = choice("unit", kUnits);
  if (!unit) return tl::unexpected(unit.error());
  if (*unit) bare_ = kBare[**unit];
  if (bare_ == BareUnit::kMm) voice_.lengths = {LengthForm::kMm, 16, 1};
  if (bare_ == BareUnit::kMetre) voice_.lengths = {LengthForm::kMetre, 16, 4};
  const auto division = choice("division", kDivisions);
  if (!division) return tl::unexpected(division.error());
  if (*division) voice_.lengths.denominator = 8 << **division;
  if (!has("lang")) return {};
  const auto language = find_language(text("lang"));
  if (!language) return fail(ErrorCode::kUnknownOption, "--lang " + std::string(text("lang")));
  voice_.language = *language;
  return {};
}

const Args::Option* Args::find(std::string_view name) const {
  for (const Option& o : options_)
    if (o.name == name) return &o;
  return nullptr;
}

std::string_view Args::text(std::string_view name) const {
  const Option* o = find(name);
  return o ? o->value : std::string_view{};
}

Result<std::optional<Length>> Args::length(std::string_view name) const {
  if (!has(name)) return std::optional<Length>{};
  return at_option(parse_length(text(name), bare_), name);
}

Result<std::optional<Slope>> Args::slope(std::string_view name) const {
  if (!has(name)) return std::optional<Slope>{};
  return at_option(parse_slope(text(name), BareSlope::kIn12), name);
}

Result<std::optional<Angle>> Args::angle(std::string_view name) const {
  if (!has(name)) return std::optional<Angle>{};
  return at_option(parse_angle(text(name)), name);
}

Result<std::optional<int>> Args::choice(std::string_view name, std::span<const std::string_view> choices) const {
  if (!has(name)) return std::optional<int>{};
  for (std::size_t i = 0; i < choices.size(); ++i)
    if (choices[i] == text(name)) return std::optional<int>(static_cast<int>(i));
  return fail(ErrorCode::kUnknownOption, dashed(name) + " " + std::string(text(name)));
}

}  // namespace bentbook
