#pragma once
/// Files that are there after a power cut: bytes and names are flushed before anything is said to be stored.

#include <optional>
#include <string>
#include <string_view>

namespace bentbook::desktop {

/// Makes a folder and what it stands in, each with its name on the disk.
void make_folders(const std::string& path);

/// A whole file; nothing where it cannot be read, errno says why (ENOENT: there is none).
[[nodiscard]] std::optional<std::string> read_whole(const std::string& path);

/// Puts bytes into a new file that nobody has (EEXIST: somebody does) and flushes them and their name. False: nothing
/// of them is there, errno says why.
[[nodiscard]] bool write_new(const std::string& path, std::string_view bytes);

/// The file has these bytes, or those it had: written beside, flushed, renamed, the name flushed. `mode` as of open().
/// False: it has those it had, errno says why.
[[nodiscard]] bool replace_file(const std::string& path, std::string_view bytes, unsigned mode);

/// Puts whole lines at a file's end and flushes them; a last line without its line break is cut off first. False: the
/// file has what it had, errno says why.
[[nodiscard]] bool append_lines(const std::string& path, std::string_view lines);

void remove_file(const std::string& path);

}  // namespace bentbook::desktop
