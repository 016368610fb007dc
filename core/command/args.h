#pragma once
/// Inside the command line: options by name, read as measures.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/parse.h"
#include "words/words.h"

namespace bentbook {

/// `--name value` or `--name=value`; the rest are plain words. Names without their dashes.
class Args {
 public:
  /// `flags`: options that take no value; `options`: those that do. Others are kUnknownOption, one without its value
  /// kMissing, one given twice kConflict.
  static Result<Args> read(std::span<const std::string_view> words, std::span<const std::string_view> flags,
                           std::span<const std::string_view> options);

  [[nodiscard]] bool has(std::string_view name) const { return find(name) != nullptr; }
  [[nodiscard]] std::string_view text(std::string_view name) const;
  [[nodiscard]] const std::vector<std::string_view>& words() const { return words_; }

  /// Nothing if the option was not given. Errors have where = "--name".
  [[nodiscard]] Result<std::optional<Length>> length(std::string_view name) const;
  [[nodiscard]] Result<std::optional<Slope>> slope(std::string_view name) const;
  [[nodiscard]] Result<std::optional<Angle>> angle(std::string_view name) const;
  /// Index among `choices`, kUnknownOption if it is none of them.
  [[nodiscard]] Result<std::optional<int>> choice(std::string_view name,
                                                  std::span<const std::string_view> choices) const;

  [[nodiscard]] BareUnit bare() const { return bare_; }
  [[nodiscard]] const Voice& voice() const { return voice_; }
  [[nodiscard]] bool json() const { return has("json"); }

 private:
  struct Option {
    std::string_view name, value;
  };
  [[nodiscard]] const Option* find(std::string_view name) const;
  Result<void> read_common();
  std::vector<Option> options_;
  std::vector<std::string_view> words_;
  BareUnit bare_ = BareUnit::kInch;
  Voice voice_;
};

}  // namespace bentbook
