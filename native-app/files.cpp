#include "files.h"

#include "disk.h"

bentbook::Files disk_files() {
  using namespace bentbook::desktop;
  return {[](std::string_view path) { return read_whole(std::string(path)); },
          [](std::string_view path, std::string_view bytes) { return replace_file(std::string(path), bytes, 0666); }};
}
