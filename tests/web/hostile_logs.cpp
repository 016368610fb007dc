// hostile_logs FOLDER COUNT: for each kind of tests/shared/hostile.h a log of the demo with so many events, KIND.log.

#include <cstdio>
#include <cstdlib>
#include <string>

#include "hostile.h"
#include "shop/log/log_file.h"

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  std::uint64_t nth = 0;
  for (const hostile::Kind& kind : hostile::kinds()) {
    bentbook::Log log = hostile::log_of(kind, static_cast<std::uint64_t>(std::atoll(argv[2])));
    log.book = "demo";
    // Each kind's own devices: no number is used twice.
    ++nth;
    for (bentbook::Event& e : log.events) e.device += nth * 1'000'000'007;
    const std::string path =
        std::string(argv[1]) + "/" + std::string(kind.name) + (kind.many_devices ? "-many.log" : "-one.log");
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (file == nullptr) return 1;
    const std::string bytes = bentbook::write_log(log);
    const bool whole = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
    if (std::fclose(file) != 0 || !whole) return 1;
  }
  return 0;
}
