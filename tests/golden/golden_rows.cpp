// golden_rows FOLDER: writes each section's rows to FOLDER/<section>.txt. The folder must be there.

#include <cstdio>

#include "rows.h"

namespace {

constexpr golden::Section kSections[] = {
    {"libm", golden::libm_rows},
    {"fixed", golden::fixed_rows},
    {"length_print", golden::length_print_rows},
    {"length_parse", golden::length_parse_rows},
    {"slope", golden::slope_rows},
};

bool write_file(const std::string& path, const std::string& text) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool all = std::fwrite(text.data(), 1, text.size(), file) == text.size();
  return std::fclose(file) == 0 && all;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  for (const golden::Section& section : kSections) {
    golden::Rows rows;
    section.write(rows);
    if (!write_file(std::string(argv[1]) + "/" + section.name + ".txt", rows.text())) {
      std::fprintf(stderr, "cannot write %s\n", section.name);
      return 1;
    }
  }
}
