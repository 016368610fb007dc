#pragma once
/// What may be left of a folder after a power cut: every call that changes it is written down on its way to the system
/// (the linker's --wrap brings it here), and what was not flushed when the power went is there, in part, or not at all.
///
/// As POSIX has it: write() and ftruncate() are on the disk after fsync() of the file, names (of new, renamed and
/// removed files) after fsync() of their folder; before that, some of them may be, of one write some of its bytes.
/// Names of one folder come in the order in which they were made, as every journal of a file system has them.

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "random.h"

namespace power {

enum class Kind : std::uint8_t { kNewFile, kNewFolder, kRename, kRemove, kWrite, kCut, kFlushFile, kFlushNames };

struct Call {
  Kind kind;
  std::string path, to;  ///< `to` of a rename
  int file = -1;         ///< number of the file itself, whatever it is called
  std::size_t at = 0;    ///< of a write, or the length that is left
  std::string bytes;
};

/// What a mutant leaves out.
enum class Lie : std::uint8_t { kNone, kFilesNotFlushed, kNamesNotFlushed };

/// Writes down what happens under a folder while it lives; one at a time.
class Recorder {
 public:
  explicit Recorder(std::string folder, Lie lie = Lie::kNone);
  ~Recorder();
  Recorder(const Recorder&) = delete;
  Recorder& operator=(const Recorder&) = delete;
  [[nodiscard]] const std::vector<Call>& calls() const { return calls_; }

 private:
  std::vector<Call> calls_;
};

/// Makes in `into`, an empty folder, what may be left of the recorded one when the power goes after `count` calls.
void leave(const std::vector<Call>& calls, std::size_t count, Random& random, const std::string& into);

}  // namespace power
