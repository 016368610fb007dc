#include <algorithm>
#include <catch_amalgamated.hpp>
#include <string>

#include "numeric/sorting.h"
#include "random.h"

using namespace bentbook;

namespace {

struct Card {
  int rank = 0, place = 0;
  std::string name;
  bool operator==(const Card&) const = default;
};

}  // namespace

TEST_CASE("sorting gives what the standard library's stable sort gives", "[sorting]") {
  Random random(7);
  for (int size = 0; size < 300; ++size) {
    std::vector<Card> cards;
    cards.reserve(static_cast<std::size_t>(size));
    const int ranks = static_cast<int>(random.whole(1, 40));
    for (int i = 0; i < size; ++i)
      cards.push_back({static_cast<int>(random.whole(0, ranks)), i, std::string(20, static_cast<char>('a' + i % 26))});
    std::vector<Card> wanted = cards;
    const auto before = [](const Card& a, const Card& b) { return a.rank < b.rank; };
    std::stable_sort(wanted.begin(), wanted.end(), before);
    sort_by(cards, before);
    REQUIRE(cards == wanted);
  }
}

TEST_CASE("plain values are sorted upward", "[sorting]") {
  std::vector<double> values{3, -1, 2.5, 2.5, 0};
  sort_up(values);
  REQUIRE(values == std::vector<double>{-1, 0, 2.5, 2.5, 3});
}

TEST_CASE("a reference to something callable calls it where it is", "[sorting]") {
  int calls = 0;
  const auto count = [&calls](int by) { return calls += by; };
  const FunctionRef<int(int)> ref = count;
  REQUIRE(ref(2) == 2);
  REQUIRE(ref(3) == 5);
  REQUIRE(calls == 5);
}
