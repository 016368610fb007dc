// Files of the desktop's storage, in a folder of its own under the temporary one.

#include "storage.h"

#include <catch_amalgamated.hpp>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <string>

#include "ui/platform.h"

using namespace bentbook;

namespace {

/// The user's data folder, put away afterwards.
class DataFolder {
 public:
  DataFolder() {
    std::string made = (std::filesystem::temp_directory_path() / "storage_test.XXXXXX").string();
    REQUIRE(mkdtemp(made.data()) != nullptr);
    path_ = made;
    setenv("XDG_DATA_HOME", (path_ / "a" / "b").c_str(), 1);
  }
  ~DataFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  DataFolder(const DataFolder&) = delete;
  DataFolder& operator=(const DataFolder&) = delete;

  [[nodiscard]] std::set<std::string> files() const {
    std::set<std::string> all;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(path_))
      if (entry.is_regular_file()) all.insert(std::filesystem::relative(entry.path(), path_).string());
    return all;
  }

 private:
  std::filesystem::path path_;
};

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
    CHECK(storage.read(key).empty());
    CHECK(storage.read_lines(key).empty());
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
    CHECK_FALSE(storage.append(key, "line\n"));
    CHECK(storage.read(key) == "value");
    CHECK(storage.read_lines(key) == "line\n");
    storage.erase_log(key);
    CHECK(storage.read(key) == "value");
    CHECK(storage.read_lines(key).empty());
    CHECK_FALSE(storage.append(key, "line\n"));
    storage.erase(key);
    CHECK(storage.read(key).empty());
    CHECK(storage.read_lines(key) == "line\n");
  }
}
