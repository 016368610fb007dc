#include "storage.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <utility>

#include "ui/platform.h"

namespace bentbook::desktop {
namespace {

constexpr const char *kValue = ".json", *kLog = ".log";

std::string variable(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

void make_folders(const std::string& path) {
  for (std::size_t at = path.find('/', 1); at != std::string::npos; at = path.find('/', at + 1))
    mkdir(path.substr(0, at).c_str(), 0700);
  mkdir(path.c_str(), 0700);
}

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(file, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

/// Only a file that is not there is empty.
std::optional<std::string> read_whole(const std::string& path) {
  const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  std::string bytes;
  if (file < 0) return errno == ENOENT ? std::optional(bytes) : std::nullopt;
  char part[65536];
  ssize_t n = 0;
  while ((n = ::read(file, part, sizeof part)) != 0) {
    if (n > 0)
      bytes.append(part, static_cast<std::size_t>(n));
    else if (errno != EINTR)
      break;
  }
  close(file);
  return n == 0 ? std::optional(std::move(bytes)) : std::nullopt;
}

/// Where the file's last whole line ends; -1: it cannot be read.
off_t end_of_lines(int file) {
  off_t end = lseek(file, 0, SEEK_END);
  char part[4096];
  while (end > 0) {
    const off_t from = end > static_cast<off_t>(sizeof part) ? end - static_cast<off_t>(sizeof part) : 0;
    const auto size = static_cast<std::size_t>(end - from);
    if (pread(file, part, size, from) != static_cast<ssize_t>(size)) return -1;
    const std::size_t at = std::string_view(part, size).rfind('\n');
    if (at != std::string_view::npos) return from + static_cast<off_t>(at) + 1;
    end = from;
  }
  return end;
}

std::string_view failure_of(int why) { return why == ENOSPC || why == EDQUOT ? "quota" : "other"; }

/// Bytes and their name both on the disk, or nothing of them.
bool write_through(const std::string& path, std::string_view bytes, int flags) {
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC | flags, 0600);
  if (file < 0) return false;
  const bool written = write_all(file, bytes) && fsync(file) == 0;
  const int why = errno;
  close(file);
  if (!written) unlink(path.c_str());
  errno = why;
  return written;
}

void flush_folder(const std::string& folder) {
  const int file = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (file < 0) return;
  fsync(file);
  close(file);
}

}  // namespace

void put_record(std::string& lines, std::string_view device, std::int64_t sequence, std::string_view bytes) {
  lines += device;
  (lines += ' ') += std::to_string(sequence);
  (lines += ' ') += bytes;
  lines += '\n';
}

Storage::Storage() {
  folder_ = variable("XDG_DATA_HOME");
  if (folder_.empty()) folder_ = variable("HOME") + "/.local/share";
  folder_ += "/bentbook";
  make_folders(folder_);
}

Storage::~Storage() {
  if (lock_ >= 0) close(lock_);
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
  return path ? read_whole(*path) : "";
}

std::optional<std::string_view> Storage::write(std::string_view key, std::string_view bytes) const {
  if (lock_ < 0) return "closed";
  const auto path = path_of(key, kValue);
  if (!path) return "other";
  const std::string beside = *path + ".new";
  if (!write_through(beside, bytes, O_TRUNC) || rename(beside.c_str(), path->c_str()) != 0) return failure_of(errno);
  flush_folder(folder_);
  return std::nullopt;
}

std::optional<std::string_view> Storage::append(std::string_view log, std::string_view lines) const {
  if (lock_ < 0) return "closed";
  const auto path = path_of(log, kLog);
  if (!path) return "other";
  const int file = open(path->c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0) return failure_of(errno);
  // A line that a crash cut short was never said to be stored; left there, it would pass for the next one's number.
  const off_t end = end_of_lines(file);
  const bool written = end >= 0 && ftruncate(file, end) == 0 && lseek(file, end, SEEK_SET) == end &&
                       write_all(file, lines) && fsync(file) == 0;
  const int why = errno;
  if (!written && (end < 0 || ftruncate(file, end) != 0)) ::fsync(file);
  close(file);
  if (!written) return failure_of(why);
  if (end == 0) flush_folder(folder_);
  return std::nullopt;
}

std::optional<std::set<Record>> Storage::read_records(std::string_view log) const {
  const auto path = path_of(log, kLog);
  std::set<Record> records;
  if (!path) return records;
  const std::optional<std::string> bytes = read_whole(*path);
  if (!bytes) return std::nullopt;
  for (std::size_t at = 0, end; (end = bytes->find('\n', at)) != std::string::npos; at = end + 1) {
    const std::size_t first = bytes->find(' ', at), second = first < end ? bytes->find(' ', first + 1) : end;
    if (second >= end) continue;  // no record: something else wrote in the file
    records.emplace(bytes->substr(at, first - at), std::strtoll(bytes->c_str() + first, nullptr, 10),
                    bytes->substr(second + 1, end - second));
  }
  return records;
}

void Storage::take_away(const std::optional<std::string>& path) const {
  if (lock_ < 0 || !path) return;
  unlink(path->c_str());
  flush_folder(folder_);
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
    if (write_through(path, bytes, O_EXCL)) return true;
    if (errno != EEXIST) return false;
  }
  return false;
}

}  // namespace bentbook::desktop
