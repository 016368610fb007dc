#include "cli.h"

#include <cstdio>
#include <string_view>
#include <vector>

#include "answers/book_command.h"
#include "answers/command.h"
#include "files.h"

bool cli_wanted(int argc, char** argv) { return argc > 1 && (argv[1][0] != '-' || bentbook::is_command(argv[1])); }

int cli_main(int argc, char** argv) {
  const std::vector<std::string_view> args(argv + 1, argv + argc);
  const bool book = !args.empty() && args[0] == "book";
  const bentbook::CommandOutput output =
      book ? bentbook::book_command({args.data() + 1, args.size() - 1}, disk_files()) : bentbook::run_command(args);
  std::fwrite(output.out.data(), 1, output.out.size(), stdout);
  std::fwrite(output.err.data(), 1, output.err.size(), stderr);
  return output.exit_code;
}
