#include "cli.h"

#include <chrono>
#include <cstdio>
#include <ctime>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "command/backup.h"
#include "command/book.h"
#include "command/command.h"
#include "command/log.h"
#include "command/raise.h"
#include "command/verify.h"
#include "files.h"
#include "shop/log/log_file.h"
#include "storage.h"
#include "text/hex.h"

namespace {

double seconds() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

/// The window's folder. It is made where there is none.
bentbook::Folder disk_folder(bentbook::desktop::Storage& storage) {
  using namespace std::chrono;
  bentbook::Folder folder;
  folder.take_writing = [&] { return storage.take_writing(); };
  folder.read = [&](std::string_view key) { return storage.read(key); };
  folder.write = [&](std::string_view key, std::string_view bytes) { return !storage.write(key, bytes); };
  folder.read_log = [&](std::string_view log) -> std::optional<std::string> {
    const auto records = storage.read_records(log);
    if (!records) return std::nullopt;
    std::string lines;
    for (const bentbook::desktop::Record& record : *records) lines += std::get<2>(record);
    return lines;
  };
  folder.append = [&](std::string_view log, const std::vector<bentbook::Event>& events) {
    std::string lines;
    for (const bentbook::Event& event : events) {
      bentbook::put_hex(lines, event.device, 16);
      lines += ' ' + std::to_string(event.sequence) + ' ' + bentbook::write_event(event);
    }
    return !storage.append(log, lines);
  };
  folder.wall_clock_ms = [] {
    return static_cast<std::int64_t>(duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count());
  };
  folder.clock_ahead_minutes = [](std::int64_t wall_ms) {
    const auto moment = static_cast<std::time_t>(wall_ms / 1000);
    std::tm there{};
    return localtime_r(&moment, &there) == nullptr ? 0 : static_cast<int>(there.tm_gmtoff / 60);
  };
  folder.random_bits = [] {
    std::random_device device;
    const std::uint64_t high = device();
    return high << 32 | device();
  };
  return folder;
}

/// Those that work on files have the disk lent to them.
bentbook::CommandOutput run(const std::vector<std::string_view>& args) {
  const std::string_view first = args.empty() ? std::string_view{} : args[0];
  const auto rest = std::span(args).subspan(args.empty() ? 0 : 1);
  if (first == "book") return bentbook::book_command(rest, disk_files());
  if (first == "log") return bentbook::log_command(rest, disk_files());
  if (first == "steps") return bentbook::steps_command(rest, disk_files());
  if (first == "verify") return bentbook::verify_command(rest, disk_files());
  if (first == "backup" || first == "restore") {
    bentbook::desktop::Storage storage;
    const bentbook::Folder folder = disk_folder(storage);
    return first == "backup" ? bentbook::backup_command(rest, disk_files(), folder)
                             : bentbook::restore_command(rest, disk_files(), folder);
  }
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
