#pragma once
/// What a value consists of, said once. Beside each value that the book keeps stands one function
///
///   void describe(Fields& fields, Crane& crane) {
///     fields.flag("present", crane.present);
///     fields.length("x", crane.x, kOnSite);
///   }
///
/// and whoever implements Fields does something with the members in their order: the file's reader and writer
/// (book/json_io.h), or the search for one member by its path (field.h).

#include <cstdint>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/parse.h"
#include "measure/print.h"
#include "measure/weight.h"
#include "numeric/result.h"

namespace bentbook {

class Fields;

/// How a length is asked for: what may be typed, ends included, and the unit that the entry begins with. A file may
/// hold any length.
struct LengthEntry {
  Length min{0};
  Length max{Length::kLimit};
  BareUnit bare = BareUnit::kInch;
};
inline constexpr LengthEntry kOnTimber{};                                         ///< measured on a timber
inline constexpr LengthEntry kOnBuilding{{}, {Length::kLimit}, BareUnit::kFoot};  ///< paced off on the building
inline constexpr LengthEntry kOnSite{{-Length::kLimit}, {Length::kLimit}, BareUnit::kFoot};  ///< paced off, has a sign

/// …and an angle.
struct AngleEntry {
  Angle min = Angle::degrees(-180), max = Angle::degrees(180);
};

/// A value with members of its own, and the function that names them.
struct Described {
  void* value;
  void (*describe)(Fields&, void*);
};
template <class Thing>
[[nodiscard]] Described described(Thing& value) {
  return {&value, [](Fields& fields, void* it) { describe(fields, *static_cast<Thing*>(it)); }};
}
/// To be visited by someone who only looks: whose reads() is false, or who is known to set nothing.
template <class Thing>
[[nodiscard]] Described described_as_is(const Thing& value) {
  return described(const_cast<Thing&>(value));
}
/// A list of them.
class DescribedList {
 public:
  [[nodiscard]] virtual std::size_t size() const = 0;
  virtual void resize(std::size_t size) = 0;
  [[nodiscard]] virtual Described at(std::size_t index) = 0;

 protected:
  ~DescribedList() = default;
};

class Fields {
 public:
  /// Whether values may be set here. A writer says no: it changes nothing, checks nothing, and leaves out what says
  /// nothing.
  [[nodiscard]] virtual bool reads() const = 0;
  /// A member that was read cannot be so; what `limit` is, its kind says. The first trouble counts.
  virtual void fail(ErrorCode code, const char* key, std::int64_t limit = 0) = 0;

  /// `most`: longest text that is read, in bytes.
  virtual void text(const char* key, std::string& value, std::size_t most = 400) = 0;
  virtual void flag(const char* key, bool& value) = 0;
  virtual void integer(const char* key, int& value, int low, int high) = 0;
  virtual void whole(const char* key, std::int64_t& value, std::int64_t low, std::int64_t high) = 0;
  /// `low`, `high`: what a file may hold. `most`: what may be typed, where that is less.
  virtual void number(const char* key, double& value, double low = std::numeric_limits<double>::lowest(),
                      double high = std::numeric_limits<double>::max(),
                      double most = std::numeric_limits<double>::max()) = 0;
  virtual void length(const char* key, Length& value, const LengthEntry& entry = kOnTimber) = 0;
  virtual void angle(const char* key, Angle& value, const AngleEntry& entry = {}) = 0;
  virtual void slope(const char* key, Slope& value) = 0;
  virtual void weight(const char* key, Weight& value) = 0;
  /// One of `words`, by index.
  virtual void word(const char* key, int& index, std::span<const std::string_view> words) = 0;
  virtual void inner(const char* key, Described value) = 0;
  virtual void items(const char* key, DescribedList& list, unsigned most) = 0;

  /// An enumeration by its words, in the order of its enumerators.
  template <class Enum>
  void choice(const char* key, Enum& value, std::span<const std::string_view> words) {
    int index = static_cast<int>(value);
    word(key, index, words);
    value = static_cast<Enum>(index);
  }
  template <class Thing>
  void object(const char* key, Thing& value) {
    inner(key, described(value));
  }
  /// `most`: longest list that is read.
  template <class Thing>
  void list(const char* key, std::vector<Thing>& values, unsigned most) {
    ListOf<Thing> list(values);
    items(key, list, most);
  }

 protected:
  ~Fields() = default;

 private:
  template <class Thing>
  class ListOf final : public DescribedList {
   public:
    explicit ListOf(std::vector<Thing>& values) : values_(values) {}
    [[nodiscard]] std::size_t size() const override { return values_.size(); }
    void resize(std::size_t size) override { values_.resize(size); }
    [[nodiscard]] Described at(std::size_t index) override { return described(values_[index]); }

   private:
    std::vector<Thing>& values_;
  };
};

void describe(Fields&, Slope&);
void describe(Fields&, LengthStyle&);

}  // namespace bentbook
