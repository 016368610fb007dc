#include "cli.h"

#include <chrono>
#include <cstdio>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "command/backup.h"
#include "command/book.h"
#include "command/command.h"
#include "command/log.h"
#include "command/paper.h"
#include "command/raise.h"
#include "command/roofs/roof.h"
#include "command/stock/stock.h"
#include "command/verify.h"
#include "files.h"
#include "machine.h"
#include "paper/pdf.h"
#include "shop/log/log_file.h"
#include "storage.h"
#include "text/hex.h"
#include "ui/fonts.h"
#include "words/shop_words.h"

namespace {

double seconds() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

/// The window's folder. It is made where there is none.
bentbook::Folder disk_folder(bentbook::desktop::Storage& storage) {
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
      std::string device, bytes = bentbook::write_event(event);
      bentbook::put_hex(device, event.device, 16);
      bytes.pop_back();  // its line feed
      bentbook::desktop::put_record(lines, device, static_cast<std::int64_t>(event.sequence), bytes);
    }
    return !storage.append(log, lines);
  };
  folder.wall_clock_ms = bentbook::desktop::wall_clock_ms;
  folder.clock_ahead_minutes = bentbook::desktop::clock_ahead_minutes;
  folder.random_bits = bentbook::desktop::random_bits;
  return folder;
}

/// The app's own letters and today.
bentbook::Printer printer() {
  bentbook::Printer printer;
  printer.pdf = [](const bentbook::paper::Document& document) {
    return write_pdf(document, {bentbook::screens::regular_font_file(), bentbook::screens::bold_font_file()});
  };
  const std::int64_t now = bentbook::desktop::wall_clock_ms();
  printer.day = bentbook::date_text(now, bentbook::desktop::clock_ahead_minutes(now));
  return printer;
}

/// Those that work on files have the disk lent to them.
bentbook::CommandOutput run(const std::vector<std::string_view>& args) {
  const std::string_view first = args.empty() ? std::string_view{} : args[0];
  const auto rest = std::span(args).subspan(args.empty() ? 0 : 1);
  if (first == "book") return bentbook::book_command(rest, disk_files());
  if (first == "roof") return bentbook::roof_command(rest, disk_files());
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
  if (first == "paper") return bentbook::paper_command(rest, disk_files(), printer());
  if (first == "stock") return bentbook::stock_command(rest, disk_files());
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
