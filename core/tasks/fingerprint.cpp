#include "tasks/fingerprint.h"

#include <algorithm>
#include <cstring>

#include "frame/plan_fields.h"
#include "raising/plan_fields.h"
#include "tasks/paper_fields.h"
#include "tasks/request_fields.h"

namespace bentbook {
namespace {

/// What its members are called does not count, their order does.
class Digest final : public Fields {
 public:
  Fingerprint now = 0x243f6a8885a308d3;  ///< the fraction of pi, for want of a reason for any other

  void add(std::uint64_t value) {
    now = (now ^ value) * 0x9e3779b97f4a7c15;
    now ^= now >> 32;
  }
  void add_whole(std::int64_t value) { add(static_cast<std::uint64_t>(value)); }

  [[nodiscard]] bool reads() const override { return false; }
  void fail(ErrorCode, const char*, std::int64_t) override {}
  void text(const char*, std::string& value, std::size_t) override {
    add(value.size());
    for (std::size_t i = 0; i < value.size(); i += 8) {
      std::uint64_t part = 0;
      std::memcpy(&part, value.data() + i, std::min<std::size_t>(8, value.size() - i));
      add(part);
    }
  }
  void flag(const char*, bool& value) override { add(value ? 1 : 0); }
  void integer(const char*, int& value, int, int) override { add_whole(value); }
  void whole(const char*, std::int64_t& value, std::int64_t, std::int64_t) override { add_whole(value); }
  void number(const char*, double& value, double, double, double) override {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    add(bits);
  }
  void length(const char*, Length& value, const LengthEntry&) override { add_whole(value.count); }
  void angle(const char*, Angle& value, const AngleEntry&) override { add_whole(value.nano_degrees); }
  void slope(const char*, Slope& value) override { describe(*this, value); }
  void weight(const char*, Weight& value) override { add_whole(value.count); }
  void word(const char*, int& index, std::span<const std::string_view>) override { add_whole(index); }
  void inner(const char*, Described value) override { value.describe(*this, value.value); }
  void items(const char*, DescribedList& list, unsigned) override {
    add(list.size());
    for (std::size_t i = 0; i < list.size(); ++i) inner("", list.at(i));
  }
};

}  // namespace

Fingerprint fingerprint_of(const Book& book) {
  Digest digest;
  digest.add(book.framed ? 1 : 0);
  digest.inner("frame", described_as_is(book.frame));
  digest.inner("raising", described_as_is(book.raising));
  return digest.now;
}

Fingerprint fingerprint_of_step(Fingerprint raising, int step) {
  Digest digest;
  digest.add(raising);
  digest.add_whole(step);
  return digest.now;
}

Fingerprint fingerprint_of(const PatternRequest& request) {
  Digest digest;
  digest.inner("request", described_as_is(request));
  return digest.now;
}

Fingerprint fingerprint_of(const PaperRequest& request) {
  Digest digest;
  digest.inner("request", described_as_is(request));
  return digest.now;
}

}  // namespace bentbook
