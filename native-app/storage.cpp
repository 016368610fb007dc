#include "storage.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <utility>

#include "disk.h"
#include "ui/platform.h"

namespace bentbook::desktop {
namespace {

constexpr const char *kValue = ".json", *kLog = ".log";

std::string variable(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

/// Only a file that is not there is empty.
std::optional<std::string> bytes_of(const std::string& path) {
  auto bytes = read_whole(path);
  return bytes || errno != ENOENT ? std::move(bytes) : "";
}

std::string_view failure_of(int why) { return why == ENOSPC || why == EDQUOT ? "quota" : "other"; }

}  // namespace

Storage::Storage() {
  folder_ = variable("XDG_DATA_HOME");
  if (folder_.empty()) folder_ = variable("HOME") + "/.local/share";
  folder_ += "/bentbook";
  make_folders(folder_);
}

Storage::~Storage() { leave_writing(); }

void Storage::leave_writing() {
  if (lock_ >= 0) close(lock_);
  lock_ = -1;
}

bool Storage::take_writing() {
  if (lock_ >= 0) return true;
  const int file = open((folder_ + "/lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0) return false;
  if (flock(file, LOCK_EX | LOCK_NB) != 0) {
    close(file);
    return false;
  }
  lock_ = file;
  return true;
}

std::optional<std::string> Storage::path_of(std::string_view key, const char* kind) const {
  if (!screens::is_key(key)) return std::nullopt;
  return folder_ + '/' + std::string(key) + kind;
}

std::optional<std::string> Storage::read(std::string_view key) const {
  const auto path = path_of(key, kValue);
  return path ? bytes_of(*path) : "";
}

std::optional<std::string_view> Storage::write(std::string_view key, std::string_view bytes) const {
  if (lock_ < 0) return "closed";
  const auto path = path_of(key, kValue);
  if (!path) return "other";
  if (!replace_file(*path, bytes, 0600)) return failure_of(errno);
  return std::nullopt;
}

std::optional<std::string_view> Storage::append(std::string_view log, std::string_view lines) const {
  if (lock_ < 0) return "closed";
  const auto path = path_of(log, kLog);
  if (!path) return "other";
  if (!append_lines(*path, lines)) return failure_of(errno);
  return std::nullopt;
}

std::optional<std::set<Record>> Storage::read_records(std::string_view log) const {
  const auto path = path_of(log, kLog);
  const auto bytes = path ? bytes_of(*path) : "";
  return bytes ? std::optional(records_of(*bytes)) : std::nullopt;
}

void Storage::take_away(const std::optional<std::string>& path) const {
  if (lock_ >= 0 && path) remove_file(*path);
}

void Storage::erase(std::string_view key) const { take_away(path_of(key, kValue)); }

void Storage::erase_log(std::string_view log) const { take_away(path_of(log, kLog)); }

bool Storage::hand_out(std::string_view name, std::string_view bytes) const {
  std::string folder = variable("HOME") + "/Downloads";
  struct stat info {};
  if (stat(folder.c_str(), &info) != 0) folder = variable("HOME");
  std::string safe(name);
  for (char& c : safe)
    if (c == '/' || static_cast<unsigned char>(c) < 32) c = '_';
  const std::size_t dot = safe.rfind('.') == std::string::npos ? safe.size() : safe.rfind('.');
  for (int copy = 0; copy < 1000; ++copy) {
    const std::string number = copy == 0 ? "" : " " + std::to_string(copy + 1);
    const std::string path = folder + '/' + safe.substr(0, dot) + number + safe.substr(dot);
    if (write_new(path, bytes)) return true;
    if (errno != EEXIST) return false;
  }
  return false;
}

}  // namespace bentbook::desktop
