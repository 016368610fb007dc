#include "power_cut.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdarg>
#include <filesystem>
#include <fstream>
#include <map>
#include <utility>

namespace power {
namespace {

/// What is recorded now; the system's calls have no other way to it.
struct Recording {
  std::string folder;
  Lie lie = Lie::kNone;
  std::vector<Call>* calls = nullptr;
  std::map<std::string, int> files;  ///< by the path that each has now
  std::map<int, std::pair<int, std::string>>
      opened;  ///< descriptor → file (-1: a folder) and the path it was opened by
  int last = 0;

  /// The path within the folder; "" is the folder itself, nothing for what lies elsewhere.
  [[nodiscard]] const char* inside(const char* path) const {
    if (calls == nullptr || std::string_view(path).substr(0, folder.size()) != folder) return nullptr;
    const char* rest = path + folder.size();
    return *rest == '/' ? rest + 1 : *rest == 0 ? rest : nullptr;
  }
} recording;

std::size_t up_to(Random& random, std::size_t most) {
  return static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(most)));
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? "" : path.substr(0, slash);
}

/// What the disk has of a file or a folder, and what was asked of it since.
template <class Whole>
struct Kept {
  Whole whole;
  std::vector<const Call*> since;
};

void apply(std::map<std::string, int>& names, const Call& call) {
  switch (call.kind) {
    case Kind::kRename:
      names[call.to] = call.file;
      names.erase(call.path);
      break;
    case Kind::kRemove:
      names.erase(call.path);
      break;
    default:
      names[call.path] = call.file;
  }
}

void apply(std::string& bytes, const Call& call, std::size_t much) {
  if (call.kind == Kind::kCut) {
    bytes.resize(call.at);
    return;
  }
  bytes.resize(std::max(bytes.size(), call.at + much));
  bytes.replace(call.at, much, call.bytes, 0, much);
}

/// Some of what was asked: of a write all, a part, nothing, or its length with none of its bytes.
void apply_some(std::string& bytes, const Call& call, Random& random) {
  const auto pick = random.whole(0, 3);
  if (pick == 0) return;
  if (pick == 1) return apply(bytes, call, up_to(random, call.bytes.size()));
  if (pick == 2 && call.kind == Kind::kWrite) {
    bytes.resize(std::max(bytes.size(), call.at + call.bytes.size()));
    return;
  }
  apply(bytes, call, call.bytes.size());
}

}  // namespace

Recorder::Recorder(std::string folder, Lie lie) { recording = {std::move(folder), lie, &calls_, {}, {}, 0}; }

Recorder::~Recorder() { recording = {}; }

void leave(const std::vector<Call>& calls, std::size_t count, Random& random, const std::string& into) {
  std::map<int, Kept<std::string>> files;
  std::map<std::string, Kept<std::map<std::string, int>>> folders;
  for (std::size_t i = 0; i < count; ++i) {
    const Call& call = calls[i];
    switch (call.kind) {
      case Kind::kWrite:
      case Kind::kCut:
        files[call.file].since.push_back(&call);
        break;
      case Kind::kFlushFile:
        for (const Call* c : files[call.file].since) apply(files[call.file].whole, *c, c->bytes.size());
        files[call.file].since.clear();
        break;
      case Kind::kFlushNames:
        for (const Call* c : folders[call.path].since) apply(folders[call.path].whole, *c);
        folders[call.path].since.clear();
        break;
      default:
        folders[folder_of(call.path)].since.push_back(&call);
    }
  }
  for (auto& [path, folder] : folders) {
    const auto kept = up_to(random, folder.since.size());
    for (std::size_t i = 0; i < kept; ++i) apply(folder.whole, *folder.since[i]);
  }
  for (auto& [number, file] : files)
    for (const Call* call : file.since) apply_some(file.whole, *call, random);
  // A folder's path sorts before what lies in it: where it is lost, so is all of that.
  for (const auto& [path, folder] : folders) {
    const std::filesystem::path here = std::filesystem::path(into) / path;
    if (!std::filesystem::exists(here)) continue;
    for (const auto& [name, number] : folder.whole) {
      const std::filesystem::path file = std::filesystem::path(into) / name;
      if (number < 0)
        std::filesystem::create_directory(file);
      else
        std::ofstream(file, std::ios::binary) << files[number].whole;
    }
  }
}

}  // namespace power

// --- the system's calls, under the names that the linker gives them

using power::Kind;
using power::recording;

// NOLINTBEGIN(bugprone-reserved-identifier, readability-identifier-naming): the linker's names
extern "C" {
int __real_open(const char* path, int flags, ...);
int __real_mkdir(const char* path, mode_t mode);
ssize_t __real_write(int file, const void* bytes, size_t count);
int __real_ftruncate(int file, off_t length);
int __real_fsync(int file);
int __real_rename(const char* from, const char* to);
int __real_unlink(const char* path);
int __real_close(int file);

int __wrap_open(const char* path, int flags, ...) {
  va_list more;
  va_start(more, flags);
  const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
  va_end(more);
  const int file = __real_open(path, flags, mode);
  const char* within = recording.inside(path);
  if (file < 0 || within == nullptr) return file;
  if ((flags & O_DIRECTORY) != 0) {
    recording.opened[file] = {-1, within};
    return file;
  }
  const auto [known, is_new] = recording.files.try_emplace(within, recording.last + 1);
  if (is_new) recording.calls->push_back({Kind::kNewFile, within, "", ++recording.last, 0, ""});
  if ((flags & O_TRUNC) != 0) recording.calls->push_back({Kind::kCut, within, "", known->second, 0, ""});
  recording.opened[file] = {known->second, within};
  return file;
}

int __wrap_mkdir(const char* path, mode_t mode) {
  const int status = __real_mkdir(path, mode);
  const char* within = recording.inside(path);
  if (status == 0 && within != nullptr) recording.calls->push_back({Kind::kNewFolder, within, "", -1, 0, ""});
  return status;
}

ssize_t __wrap_write(int file, const void* bytes, size_t count) {
  const auto known = recording.opened.find(file);
  const off_t at = known == recording.opened.end() ? 0 : lseek(file, 0, SEEK_CUR);
  const ssize_t written = __real_write(file, bytes, count);
  if (known != recording.opened.end() && written > 0) {
    recording.calls->push_back({Kind::kWrite, known->second.second, "", known->second.first, static_cast<size_t>(at),
                                std::string(static_cast<const char*>(bytes), static_cast<size_t>(written))});
  }
  return written;
}

int __wrap_ftruncate(int file, off_t length) {
  const auto known = recording.opened.find(file);
  const int status = __real_ftruncate(file, length);
  if (known != recording.opened.end() && status == 0) {
    recording.calls->push_back(
        {Kind::kCut, known->second.second, "", known->second.first, static_cast<size_t>(length), ""});
  }
  return status;
}

int __wrap_fsync(int file) {
  const auto known = recording.opened.find(file);
  if (known == recording.opened.end()) return __real_fsync(file);
  const bool names = known->second.first < 0;
  if (recording.lie != (names ? power::Lie::kNamesNotFlushed : power::Lie::kFilesNotFlushed)) {
    recording.calls->push_back(
        {names ? Kind::kFlushNames : Kind::kFlushFile, known->second.second, "", known->second.first, 0, ""});
  }
  return 0;  // the disk below is this one
}

int __wrap_rename(const char* from, const char* to) {
  const int status = __real_rename(from, to);
  const char* within = recording.inside(from);
  if (status != 0 || within == nullptr) return status;
  const int file = recording.files[within];
  recording.calls->push_back({Kind::kRename, within, recording.inside(to), file, 0, ""});
  recording.files.erase(within);
  recording.files[recording.inside(to)] = file;
  return status;
}

int __wrap_unlink(const char* path) {
  const int status = __real_unlink(path);
  const char* within = recording.inside(path);
  if (status != 0 || within == nullptr) return status;
  recording.calls->push_back({Kind::kRemove, within, "", recording.files[within], 0, ""});
  recording.files.erase(within);
  return status;
}

int __wrap_close(int file) {
  recording.opened.erase(file);
  return __real_close(file);
}
}
// NOLINTEND(bugprone-reserved-identifier, readability-identifier-naming)
