#include "files.h"

#include <unistd.h>

#include <cstdio>

namespace {

std::optional<std::string> read_file(std::string_view path) {
  std::FILE* file = std::fopen(std::string(path).c_str(), "rb");
  if (file == nullptr) return std::nullopt;
  std::string bytes;
  char part[65536];
  for (std::size_t n; (n = std::fread(part, 1, sizeof part, file)) > 0;) bytes.append(part, n);
  const bool whole = std::ferror(file) == 0;
  std::fclose(file);
  if (!whole) return std::nullopt;
  return bytes;
}

bool write_file(std::string_view path, std::string_view bytes) {
  const std::string own(path), beside = own + ".part";
  std::FILE* file = std::fopen(beside.c_str(), "wb");
  if (file == nullptr) return false;
  bool whole = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  whole = std::fflush(file) == 0 && fsync(fileno(file)) == 0 && whole;
  whole = std::fclose(file) == 0 && whole;
  if (whole && std::rename(beside.c_str(), own.c_str()) == 0) return true;
  std::remove(beside.c_str());
  return false;
}

}  // namespace

bentbook::Files disk_files() { return {read_file, write_file}; }
