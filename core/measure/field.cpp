#include "measure/field.h"

#include <algorithm>
#include <charconv>
#include <utility>

namespace bentbook {
namespace {

/// Every member is passed over.
class Passing : public Fields {
 public:
  [[nodiscard]] bool reads() const override { return true; }
  void fail(ErrorCode, const char*, std::int64_t) override {}
  void text(const char*, std::string&, std::size_t) override {}
  void flag(const char*, bool&) override {}
  void integer(const char*, int&, int, int) override {}
  void whole(const char*, std::int64_t&, std::int64_t, std::int64_t) override {}
  void number(const char*, double&, double, double, double) override {}
  void length(const char*, Length&, const LengthEntry&) override {}
  void angle(const char*, Angle&, const AngleEntry&) override {}
  void slope(const char*, Slope&) override {}
  void weight(const char*, Weight&) override {}
  void word(const char*, int&, std::span<const std::string_view>) override {}
  void inner(const char*, Described) override {}
  void items(const char*, DescribedList&, unsigned) override {}

 protected:
  ~Passing() = default;
};

class Paths final : public Passing {
 public:
  Paths(std::string before, std::vector<std::string>& out) : before_(std::move(before)), out_(out) {}
  void text(const char* key, std::string&, std::size_t) override { add(key); }
  void flag(const char* key, bool&) override { add(key); }
  void integer(const char* key, int&, int, int) override { add(key); }
  void whole(const char* key, std::int64_t&, std::int64_t, std::int64_t) override { add(key); }
  void number(const char* key, double&, double, double, double) override { add(key); }
  void length(const char* key, Length&, const LengthEntry&) override { add(key); }
  void angle(const char* key, Angle&, const AngleEntry&) override { add(key); }
  void slope(const char* key, Slope&) override { add(key); }
  void weight(const char* key, Weight&) override { add(key); }
  void word(const char* key, int&, std::span<const std::string_view>) override { add(key); }
  void inner(const char* key, Described value) override {
    Paths inside(before_ + key + ".", out_);
    value.describe(inside, value.value);
  }

 private:
  void add(const char* key) { out_.push_back(before_ + key); }
  std::string before_;
  std::vector<std::string>& out_;
};

/// What an item of a list is known by; "": by nothing but its place.
class Known final : public Passing {
 public:
  std::string by;
  void text(const char* key, std::string& value, std::size_t) override {
    const std::string_view name = key;
    if (by.empty() && (name == "mark" || name == "name")) by = value;
  }
  void integer(const char* key, int& value, int, int) override {
    if (by.empty() && std::string_view(key) == "label") by = std::to_string(value);
  }
};

/// What follows `head` and a point in `path`; none: it does not begin so.
std::optional<std::string_view> after(std::string_view path, std::string_view head) {
  if (path.size() <= head.size() || path[head.size()] != '.' || !path.starts_with(head)) return std::nullopt;
  return path.substr(head.size() + 1);
}

/// Walks down one path, tells what is there and, where a new value is given, puts it there.
class Search final : public Passing {
 public:
  Search(std::string_view path, const FieldValue* wanted) : rest_(path), wanted_(wanted) {}
  [[nodiscard]] const std::optional<Field>& found() const { return found_; }
  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

  void fail(ErrorCode code, const char* key, std::int64_t limit) override {
    if (found_ && !error_) error_ = Error{code, key, -1, limit};
  }
  void text(const char* key, std::string& value, std::size_t most) override {
    Field field{value};
    field.most = static_cast<std::int64_t>(most);
    if (here(key, field)) put<std::string>(key, value, [&](const std::string& text) { return text.size() <= most; });
  }
  void flag(const char* key, bool& value) override {
    if (here(key, {value})) put<bool>(key, value);
  }
  void integer(const char* key, int& value, int low, int high) override {
    std::int64_t count = value;
    whole(key, count, low, high);
    value = static_cast<int>(count);
  }
  void whole(const char* key, std::int64_t& value, std::int64_t low, std::int64_t high) override {
    Field field{value};
    field.least = low;
    field.most = high;
    if (here(key, field)) put_within<std::int64_t>(key, value, low, high, low, high);
  }
  void number(const char* key, double& value, double low, double high, double most) override {
    high = std::min(high, most);
    Field field{value};
    field.low = low;
    field.high = high;
    if (here(key, field)) put_within<double>(key, value, low, high, 0, 0);
  }
  void length(const char* key, Length& value, const LengthEntry& entry) override {
    Field field{value};
    field.length = entry;
    if (here(key, field)) put_within<Length>(key, value, entry.min, entry.max, entry.min.count, entry.max.count);
  }
  void angle(const char* key, Angle& value, const AngleEntry& entry) override {
    Field field{value};
    field.angle = entry;
    if (here(key, field))
      put_within<Angle>(key, value, entry.min, entry.max, entry.min.nano_degrees, entry.max.nano_degrees);
  }
  void slope(const char* key, Slope& value) override {
    if (here(key, {value})) put<Slope>(key, value);
  }
  void weight(const char* key, Weight& value) override {
    if (here(key, {value})) put_within<Weight>(key, value, {}, {Weight::kLimit}, 0, Weight::kLimit);
  }
  void word(const char* key, int& index, std::span<const std::string_view> words) override {
    Field field{Choice{index}};
    field.words = words;
    if (!here(key, field)) return;
    Choice chosen{index};
    put_within<Choice>(key, chosen, {0}, {static_cast<int>(words.size()) - 1}, 0, 0);
    index = chosen.index;
  }
  void inner(const char* key, Described value) override {
    const auto rest = found_ ? std::nullopt : after(rest_, key);
    if (rest) into(value, *rest);
  }
  void items(const char* key, DescribedList& list, unsigned) override {
    const auto rest = found_ ? std::nullopt : after(rest_, key);
    if (!rest) return;
    if (rest->starts_with('@')) return into_known(list, rest->substr(1));
    std::size_t index = 0;
    const auto [end, trouble] = std::from_chars(rest->data(), rest->data() + rest->size(), index);
    const auto digits = static_cast<std::size_t>(end - rest->data());
    if (trouble == std::errc{} && index < list.size())
      if (const auto inside = after(*rest, rest->substr(0, digits))) into(list.at(index), *inside);
  }

 private:
  void into(Described value, std::string_view rest) {
    const std::string_view outer = std::exchange(rest_, rest);
    value.describe(*this, value.value);
    rest_ = outer;
  }
  /// A mark may have points of its own: the first item that has the rest of the path is the one.
  void into_known(DescribedList& list, std::string_view rest) {
    for (std::size_t i = 0; i < list.size() && !found_; ++i) {
      const Described item = list.at(i);
      Known known;
      item.describe(known, item.value);
      if (const auto inside = after(rest, known.by); inside && !known.by.empty()) into(item, *inside);
    }
  }
  bool here(const char* key, const Field& field) {
    if (found_ || rest_ != key) return false;
    found_ = field;
    found_->kept = kept_in(key);
    return wanted_ != nullptr;
  }
  template <class Value>
  void put(const char* key, Value& value) {
    put<Value>(key, value, [](const Value&) { return true; });
  }
  template <class Value, class Fits>
  void put(const char* key, Value& value, Fits&& fits) {
    const Value* wanted = std::get_if<Value>(wanted_);
    if (wanted == nullptr) return fail(ErrorCode::kUnitMismatch, key, 0);
    if (*wanted == value) return;
    if (!fits(*wanted)) return fail(ErrorCode::kTooLarge, key, 0);
    value = *wanted;
  }
  template <class Value>
  void put_within(const char* key, Value& value, const Value& low, const Value& high, std::int64_t least,
                  std::int64_t most) {
    const Value* wanted = std::get_if<Value>(wanted_);
    if (wanted == nullptr) return fail(ErrorCode::kUnitMismatch, key, 0);
    if (*wanted == value) return;
    if (!(*wanted >= low)) return fail(ErrorCode::kTooSmall, key, least);
    if (!(*wanted <= high)) return fail(ErrorCode::kTooLarge, key, most);
    value = *wanted;
  }

  std::string_view rest_;
  const FieldValue* wanted_;
  std::optional<Field> found_;
  std::optional<Error> error_;
};

}  // namespace

std::vector<std::string> field_paths(Described of) {
  std::vector<std::string> out;
  Paths paths({}, out);
  of.describe(paths, of.value);
  return out;
}

std::optional<Field> find_field(Described of, std::string_view path) {
  Search search(path, nullptr);
  of.describe(search, of.value);
  return search.found();
}

Result<void> set_field(Described of, std::string_view path, const FieldValue& value) {
  Search search(path, &value);
  of.describe(search, of.value);
  if (!search.found()) return fail(ErrorCode::kMissing, std::string(path));
  if (search.error()) return tl::unexpected(*search.error());
  return {};
}

}  // namespace bentbook
