// The power goes at any moment of a day's saves: what was said to be stored is there when the desktop starts again.

#include <catch_amalgamated.hpp>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "data_folder.h"
#include "power_cut.h"
#include "storage.h"

using namespace bentbook;

namespace {

constexpr const char* kKeys[] = {"kit", "places", "book1"};

/// What is true of the folder from a call on: which of its values, how many records of each log were said to be stored.
struct Promise {
  std::size_t from = 0;  ///< number of calls before it
  std::map<std::string, int> values, records;
};

struct Day {
  std::vector<power::Call> calls;
  std::vector<Promise> promises;  ///< in their order; the first promises nothing
};

// Long enough that a value and a line are more than one sector.
std::string value_of(const std::string& key, int n) {
  return key + " " + std::to_string(n) + " " + std::string(static_cast<std::size_t>(100 * n % 1500), 'v') + " end";
}
std::string line_of(const std::string& log, int n) {
  return log + " line " + std::to_string(n) + " " + std::string(static_cast<std::size_t>(170 * n % 900), 'x') + "\n";
}

void append(const desktop::Storage& storage, Promise& now, const std::string& log, int count) {
  std::string lines;
  for (int i = 0; i < count; ++i) {
    std::string line = line_of(log, now.records[log] + i + 1);
    line.pop_back();
    desktop::put_record(lines, "00000000000000a7", now.records[log] + i + 1, line);
  }
  REQUIRE_FALSE(storage.append(log, lines));
  now.records[log] += count;
}

/// Saves and records by turns, the desktop closed and opened now and then, from an empty home on.
Day work(Random& random, int acts, power::Lie lie) {
  const DataFolder folder;
  const power::Recorder recorder(folder.path(), lie);
  Day day{{}, {{}}};
  Promise now;
  auto storage = std::make_unique<desktop::Storage>();
  REQUIRE(storage->take_writing());
  for (int i = 0; i < acts; ++i) {
    const std::string key = kKeys[random.whole(0, 2)];
    switch (random.whole(0, 5)) {
      case 0:
        storage.reset();
        storage = std::make_unique<desktop::Storage>();
        REQUIRE(storage->take_writing());
        break;
      case 1:
      case 2:
        append(*storage, now, key, static_cast<int>(random.whole(1, 4)));
        break;
      default:
        REQUIRE_FALSE(storage->write(key, value_of(key, now.values[key] + 1)));
        ++now.values[key];
    }
    now.from = recorder.calls().size();
    day.promises.push_back(now);
  }
  day.calls = recorder.calls();
  return day;
}

/// What of a promise is not there.
std::vector<std::string> lost(const desktop::Storage& storage, const Promise& promise) {
  std::vector<std::string> all;
  for (const auto& [key, least] : promise.values) {
    const auto read = storage.read(key);
    bool good = false;  // the one that was promised, or the one that was being written
    for (int n = least; n <= least + 1; ++n) good = good || read == (n == 0 ? "" : value_of(key, n));
    if (!good) all.push_back(key + ": " + read.value_or("cannot be read").substr(0, 40));
  }
  for (const auto& [log, count] : promise.records) {
    const auto read = storage.read_records(log);
    for (int n = 1; n <= count; ++n)
      if (!read || !read->contains({"00000000000000a7", n, line_of(log, n)}))
        all.push_back(log + " " + std::to_string(n));
  }
  return all;
}

/// What is lost when the power goes after so many calls; work that goes on there must lose nothing more.
std::vector<std::string> after_cut(const Day& day, std::size_t count, Random& random) {
  const DataFolder folder;
  power::leave(day.calls, count, random, folder.path());
  const power::Recorder recorder(folder.path());  // or each flush would wait for a real disk
  Promise promised;
  for (const Promise& p : day.promises)
    if (p.from <= count) promised = p;
  desktop::Storage storage;
  std::vector<std::string> all = lost(storage, promised);
  if (!all.empty()) return all;
  REQUIRE(storage.take_writing());
  for (const char* log : {"kit", "book1"}) append(storage, promised, log, 1);
  return lost(storage, promised);
}

}  // namespace

TEST_CASE("whenever the power goes, what was said to be stored is there at the next start", "[storage][power]") {
  Random random(1127);
  int rounds = 0;
  for (int days = 0; days < 4; ++days) {
    const Day day = work(random, 30, power::Lie::kNone);
    for (std::size_t count = 0; count <= day.calls.size(); ++count)
      for (int draw = 0; draw < 3; ++draw, ++rounds) {
        INFO("day " << days << ", after " << count << " of " << day.calls.size() << " calls");
        const std::vector<std::string> gone = after_cut(day, count, random);
        INFO((gone.empty() ? std::string{} : gone.front()));
        REQUIRE(gone.empty());
      }
  }
  CHECK(rounds >= 200);
}

TEST_CASE("a desktop that does not flush its files, or their names, is found out", "[storage][power]") {
  for (const power::Lie lie : {power::Lie::kFilesNotFlushed, power::Lie::kNamesNotFlushed}) {
    Random random(1127);
    const Day day = work(random, 30, lie);
    int caught = 0;
    for (std::size_t count = 0; count <= day.calls.size(); ++count)
      caught += after_cut(day, count, random).empty() ? 0 : 1;
    CHECK(caught > 20);
  }
}
