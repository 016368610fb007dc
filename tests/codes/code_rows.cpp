// code_rows FOLDER: a log of three phones cut into codes, and labels: NAME.svg and, for what a reader must find in it,
// NAME.txt; the log's own bytes in log.bin.
// code_rows join FOLDER: reads the texts of codes, a line each, from standard input in whatever order, and writes what
// they make to FOLDER/joined.bin; then each line that is a label as "book mark".

#include <cstdio>
#include <cstring>

#include "histories.h"
#include "paper/code.h"
#include "shop/log/chunk.h"
#include "shop/log/log_file.h"

using namespace bentbook;

namespace {

bool write_file(const std::string& path, std::string_view bytes) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool all = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  return std::fclose(file) == 0 && all;
}

bool write_code(const std::string& folder, const std::string& name, const std::string& text, CodeLevel level) {
  const auto code = make_code(text, level);
  return code && write_file(folder + "/" + name + ".svg", code_svg(*code, 1, name)) &&
         write_file(folder + "/" + name + ".txt", text + "\n");
}

int make(const std::string& folder) {
  Random random(440);
  const auto phones = histories::random_phones(random, 3, 90);
  const Log log = *merged(*merged(phones[0], phones[1]), phones[2]);
  const std::string bytes = write_log(log);
  bool good = write_file(folder + "/log.bin", bytes);
  const auto texts = make_chunks(bytes);
  if (!texts) return 1;
  for (std::size_t i = 0; i < texts->size(); ++i)
    good = good && write_code(folder, "piece" + std::to_string(i), (*texts)[i], CodeLevel::kLow);
  int n = 0;
  for (const TimberLabel& label : {TimberLabel{"b1", "P-A1"}, TimberLabel{"7fa31c", "G-AC2.1"},
                                   TimberLabel{"b2", "Viga ñ 1/2"}, TimberLabel{"", "C-E1.3"}})
    good = good && write_code(folder, "label" + std::to_string(n++), label_text(label), CodeLevel::kHigh);
  return good ? 0 : 1;
}

int join(const std::string& folder) {
  Chunks chunks;
  char line[8192];
  while (std::fgets(line, sizeof line, stdin) != nullptr) {
    const std::string_view text(line, std::strcspn(line, "\n"));
    if (const auto label = read_label(text))
      std::printf("%s %s\n", label->book.c_str(), label->mark.c_str());
    else if (!take_chunk(chunks, text))
      return 1;
  }
  const auto bytes = joined(chunks);
  return bytes && write_file(folder + "/joined.bin", *bytes) ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 2) return make(argv[1]);
  if (argc == 3 && std::strcmp(argv[1], "join") == 0) return join(argv[2]);
  return 2;
}
