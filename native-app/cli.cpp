#include "cli.h"

#include <chrono>
#include <cstdio>
#include <string_view>
#include <vector>

#include "command/book.h"
#include "command/command.h"
#include "command/log.h"
#include "command/raise.h"
#include "files.h"

namespace {

double seconds() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

/// Those that work on files have the disk lent to them.
bentbook::CommandOutput run(const std::vector<std::string_view>& args) {
  const std::string_view first = args.empty() ? std::string_view{} : args[0];
  const auto rest = std::span(args).subspan(args.empty() ? 0 : 1);
  if (first == "book") return bentbook::book_command(rest, disk_files());
  if (first == "log") return bentbook::log_command(rest, disk_files());
  if (first == "steps") return bentbook::steps_command(rest, disk_files());
  if (first == "raise") return bentbook::raise_command(rest, disk_files(), seconds);
  return bentbook::run_command(args);
}

}  // namespace

bool cli_wanted(int argc, char** argv) { return argc > 1 && (argv[1][0] != '-' || bentbook::is_command(argv[1])); }

int cli_main(int argc, char** argv) {
  const std::vector<std::string_view> args(argv + 1, argv + argc);
  const bentbook::CommandOutput output = run(args);
  std::fwrite(output.out.data(), 1, output.out.size(), stdout);
  std::fwrite(output.err.data(), 1, output.err.size(), stderr);
  return output.exit_code;
}
