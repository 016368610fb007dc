// Files of the desktop's storage, in a folder of its own under the temporary one.

#include "storage.h"

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "data_folder.h"
#include "ui/platform.h"

using namespace bentbook;
using desktop::Record;

namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string record(int sequence, const std::string& text) {
  return "00000000000000a7 " + std::to_string(sequence) + " e\t" + std::to_string(sequence) + "\t" + text + "\n";
}

std::set<Record> records(const desktop::Storage& storage, std::string_view log) {
  const auto read = storage.read_records(log);
  REQUIRE(read);
  return *read;
}

std::string lines(const desktop::Storage& storage, std::string_view log) {
  std::string all;
  for (const Record& r : records(storage, log)) all += std::get<2>(r);
  return all;
}

}  // namespace

TEST_CASE("a key that is none has no file, inside the folder or out of it", "[storage]") {
  const DataFolder folder;
  desktop::Storage storage;
  REQUIRE(storage.take_writing());
  const std::set<std::string> before = folder.files();
  const std::string wrong[] = {
      "",         ".",    "..",    "../x",      "../../x",     "a/b",    "/x",   std::string("kit\0x", 5), "Kit",
      "kit.json", "kit ", ".shop", "../x.shop", "a.shop.shop", "\u00e9", "a\nb", std::string(65, 'a')};
  for (const std::string& key : wrong) {
    INFO(key);
    CHECK_FALSE(screens::is_key(key));
    CHECK(storage.write(key, "bytes") == "other");
    CHECK(storage.append(key, "line\n") == "other");
    CHECK(storage.read(key) == "");
    CHECK(lines(storage, key).empty());
    storage.erase(key);
    storage.erase_log(key);
  }
  CHECK(folder.files() == before);
}

TEST_CASE("a log that is called like a value shares nothing with it", "[storage]") {
  const DataFolder folder;
  desktop::Storage storage;
  REQUIRE(storage.take_writing());
  for (const char* key : {"kit", "shelf", "places", "device", "book1", "demo", "00000000000000b1b", "demo.shop"}) {
    CHECK_FALSE(storage.write(key, "value"));
    CHECK_FALSE(storage.append(key, "a7 1 line\n"));
    CHECK(storage.read(key) == "value");
    CHECK(lines(storage, key) == "line\n");
    storage.erase_log(key);
    CHECK(storage.read(key) == "value");
    CHECK(lines(storage, key).empty());
    CHECK_FALSE(storage.append(key, "a7 1 line\n"));
    storage.erase(key);
    CHECK(storage.read(key) == "");
    CHECK(lines(storage, key) == "line\n");
  }
}

TEST_CASE("a log cut at any byte of its last three records goes on with every whole one", "[storage]") {
  const DataFolder folder;
  desktop::Storage storage;
  REQUIRE(storage.take_writing());
  std::string whole;
  for (int n = 1; n <= 5; ++n) whole += record(n, std::string(static_cast<std::size_t>(n) * 7, 'x'));
  std::size_t from = 0;
  for (int n = 0; n < 2; ++n) from = whole.find('\n', from) + 1;
  for (std::size_t cut = from; cut <= whole.size(); ++cut) {
    INFO("cut at " << cut);
    const std::string left = whole.substr(0, cut);
    std::ofstream(folder.file("demo.log"), std::ios::binary) << left;
    const std::string kept = left.substr(0, left.rfind('\n') + 1);
    const int last = static_cast<int>(std::count(kept.begin(), kept.end(), '\n'));
    // The one that was cut is made anew, and may say something else.
    REQUIRE_FALSE(storage.append("demo", record(last + 1, "anew") + record(last + 2, "next")));
    CHECK(bytes_of(folder.file("demo.log")) == kept + record(last + 1, "anew") + record(last + 2, "next"));
    const std::set<Record> read = records(storage, "demo");
    REQUIRE(read.size() == static_cast<std::size_t>(last) + 2);
    int n = 0;
    for (const auto& [device, sequence, text] : read) {
      CHECK(sequence == ++n);
      CHECK(text.ends_with('\n'));
    }
  }
}

TEST_CASE("a line longer than what is looked at at once is cut off whole", "[storage]") {
  const DataFolder folder;
  desktop::Storage storage;
  REQUIRE(storage.take_writing());
  std::ofstream(folder.file("demo.log"), std::ios::binary) << record(1, "one") << std::string(10'000, 'x');
  REQUIRE_FALSE(storage.append("demo", record(2, "two")));
  CHECK(bytes_of(folder.file("demo.log")) == record(1, "one") + record(2, "two"));
}

TEST_CASE("unlike records under one number are both there, in files of earlier versions too", "[storage]") {
  const DataFolder folder;
  desktop::Storage storage;
  REQUIRE(storage.take_writing());
  std::ofstream(folder.file("demo.log"), std::ios::binary) << "00000000000000a7 1 e\t1\tcut sh\n"
                                                           << record(1, "cut short");
  REQUIRE_FALSE(storage.append("demo", record(1, "of a copied folder") + record(1, "cut short")));
  CHECK(records(storage, "demo").size() == 3);
}

TEST_CASE("only a file that is not there is empty", "[storage]") {
  const DataFolder folder;
  const desktop::Storage storage;
  CHECK(storage.read("kit") == "");
  CHECK(records(storage, "demo").empty());
  // A folder in its place: no read gives its bytes, whoever asks.
  for (const char* name : {"kit.json", "demo.log"}) REQUIRE(std::filesystem::create_directory(folder.file(name)));
  CHECK_FALSE(storage.read("kit"));
  CHECK_FALSE(storage.read_records("demo"));
}
