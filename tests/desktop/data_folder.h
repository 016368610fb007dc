#pragma once
/// A user's data folder of a test's own, put away afterwards.

#include <catch_amalgamated.hpp>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <string>

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

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / "a/b/bentbook" / name).string(); }
  [[nodiscard]] std::set<std::string> files() const {
    std::set<std::string> all;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(path_))
      if (entry.is_regular_file()) all.insert(std::filesystem::relative(entry.path(), path_).string());
    return all;
  }

 private:
  std::filesystem::path path_;
};
