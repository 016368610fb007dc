// golden_rows FOLDER: writes each file of rows to FOLDER/<name>.txt. The folder must be there.

#include <cstdio>

#include "rows.h"

namespace {

constexpr golden::RowFile kFiles[] = {
    {"libm", golden::libm_rows},
    {"fixed", golden::fixed_rows},
    {"length_print", golden::length_print_rows},
    {"length_parse", golden::length_parse_rows},
    {"slope", golden::slope_rows},
    {"corner", golden::corner_rows},
    {"rafter", golden::rafter_rows},
    {"saw", golden::saw_rows},
    {"triangle", golden::triangle_rows},
    {"joint", golden::joint_rows},
    {"answers", golden::answer_rows},
    {"files", golden::file_rows},
    {"frame", golden::frame_rows},
    {"shop", golden::shop_rows},
    {"paper", golden::paper_rows},
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
  for (const golden::RowFile& file : kFiles) {
    golden::Rows rows;
    file.write(rows);
    if (!write_file(std::string(argv[1]) + "/" + file.name + ".txt", rows.text())) {
      std::fprintf(stderr, "cannot write %s\n", file.name);
      return 1;
    }
  }
}
