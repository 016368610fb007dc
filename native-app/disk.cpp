#include "disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>

namespace bentbook::desktop {
namespace {

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(file, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
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

/// Bytes on the disk, their name not yet; or nothing of them.
bool write_through(const std::string& path, std::string_view bytes, int flags, unsigned mode) {
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC | flags, mode);
  if (file < 0) return false;
  const bool written = write_all(file, bytes) && fsync(file) == 0;
  const int why = errno;
  close(file);
  if (!written) unlink(path.c_str());
  errno = why;
  return written;
}

/// The names in the folder that a path lies in.
void flush_names(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash == 0 ? 1 : slash);
  const int file = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (file < 0) return;
  fsync(file);
  close(file);
}

}  // namespace

void make_folders(const std::string& path) {
  for (std::size_t at = path.find('/', 1);; at = path.find('/', at + 1)) {
    const std::string folder = path.substr(0, at);
    if (mkdir(folder.c_str(), 0700) == 0) flush_names(folder);
    if (at == std::string::npos) return;
  }
}

std::optional<std::string> read_whole(const std::string& path) {
  const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return std::nullopt;
  std::string bytes;
  char part[65536];
  ssize_t n = 0;
  while ((n = ::read(file, part, sizeof part)) != 0) {
    if (n > 0)
      bytes.append(part, static_cast<std::size_t>(n));
    else if (errno != EINTR)
      break;
  }
  const int why = errno;
  close(file);
  errno = why;
  return n == 0 ? std::optional(std::move(bytes)) : std::nullopt;
}

bool write_new(const std::string& path, std::string_view bytes) {
  if (!write_through(path, bytes, O_EXCL, 0600)) return false;
  flush_names(path);
  return true;
}

bool replace_file(const std::string& path, std::string_view bytes, unsigned mode) {
  const std::string beside = path + ".new";
  if (!write_through(beside, bytes, O_TRUNC, mode)) return false;
  if (rename(beside.c_str(), path.c_str()) != 0) {
    const int why = errno;
    unlink(beside.c_str());
    errno = why;
    return false;
  }
  flush_names(path);
  return true;
}

bool append_lines(const std::string& path, std::string_view lines) {
  const int file = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0) return false;
  // A line that a crash cut short was never said to be stored; left there, it would pass for the next one's number.
  const off_t end = end_of_lines(file);
  const bool written = end >= 0 && ftruncate(file, end) == 0 && lseek(file, end, SEEK_SET) == end &&
                       write_all(file, lines) && fsync(file) == 0;
  const int why = errno;
  if (!written && (end < 0 || ftruncate(file, end) != 0)) ::fsync(file);
  close(file);
  if (written && end == 0) flush_names(path);
  errno = why;
  return written;
}

void remove_file(const std::string& path) {
  unlink(path.c_str());
  flush_names(path);
}

}  // namespace bentbook::desktop
