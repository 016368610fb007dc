#include "command/backup.h"

#include <algorithm>
#include <set>
#include <utility>

#include "book/backup/merge.h"
#include "book/demo.h"
#include "command/args.h"
#include "command/output.h"
#include "numeric/sorting.h"
#include "shop/log/explained.h"
#include "shop/log/log_file.h"
#include "shop/log/record.h"
#include "text/hex.h"
#include "text/json_writer.h"
#include "words/shop_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kBackupUsage =
    R"(usage: bentbook backup FILE|-
       bentbook restore FILE [--kit]
every command: [--json] [--lang TAG]
)";

constexpr std::string_view kRestoreFlags[] = {"kit"};

struct Kept {
  Shelf shelf;
  Backup all;
};

/// The events that are good of a log's lines.
Log log_of_lines(std::string identity, std::string_view lines) {
  Log log{std::move(identity), {}};
  while (const auto line = take_line(lines))
    if (auto event = read_event(*line)) log.events.push_back(*std::move(event));
  sort_by(log.events, before);
  log.events.erase(std::unique(log.events.begin(), log.events.end()), log.events.end());
  Explained explained;
  std::erase_if(log.events, [&](const Event& e) { return !explained.take(e); });
  return log;
}

std::string_view part_word(ComingPart coming) {
  constexpr std::string_view kWords[] = {"same", "taken", "asked", "damaged"};
  return kWords[static_cast<std::size_t>(coming)];
}

std::string taking_json(const Taking& taking) {
  JsonWriter json;
  json.open_object();
  json.key("complete");
  json.flag(taking.complete);
  json.key("books");
  json.open_list();
  for (const ComingBook& book : taking.books) {
    json.open_object();
    json.key("title");
    json.text(book.title);
    json.key("coming");
    json.text(kComingWords[static_cast<std::size_t>(book.coming)]);
    json.key("deleted");
    json.flag(book.deleted);
    json.key("readable");
    json.flag(book.coming != Coming::kDamaged && !book.unreadable);
    json.close_object();
  }
  json.close_list();
  json.key("logs");
  json.open_list();
  for (const ComingLog& log : taking.logs) {
    json.open_object();
    json.key("identity");
    json.text(log.identity);
    json.key("events");
    json.count(static_cast<std::int64_t>(log.fresh.size()));
    json.key("damaged");
    json.flag(log.damaged);
    json.close_object();
  }
  json.close_list();
  json.key("kit");
  json.text(part_word(taking.kit));
  json.key("places");
  json.text(part_word(taking.places));
  json.close_object();
  return std::string(json.bytes()) + "\n";
}

std::string written_json(std::int64_t books, std::int64_t events) {
  JsonWriter json;
  json.open_object();
  json.key("books");
  json.count(books);
  json.key("events");
  json.count(events);
  json.close_object();
  return std::string(json.bytes()) + "\n";
}

class FolderCall {
 public:
  FolderCall(const Args& args, const Files& files, const Folder& folder)
      : args_(args), files_(files), folder_(folder), voice_(args.voice()) {}

  CommandOutput write() {
    const std::string_view path = word();
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    auto kept = gather();
    if (!kept) return refused(kept.error());
    const std::string bytes = write_backup(kept->all);
    if (path == "-") return said(bytes);
    if (!files_.write(path, bytes)) return refused(say(Msg::kBookUnwritable, voice_.language, path));
    std::int64_t events = 0;
    for (const BackupLog& log : kept->all.logs)
      if (const auto read = read_log(log.bytes)) events += static_cast<std::int64_t>(read->events.size());
    const auto books = static_cast<std::int64_t>(kept->all.books.size());
    if (args_.json()) return said(written_json(books, events));
    return said(say(Msg::kBackupWritten, voice_.language,
                    {{"path", path},
                     {"books", say_count(Msg::kBooksNote, voice_.language, books)},
                     {"events", say_count(Msg::kBackupEntries, voice_.language, events)}}) +
                "\n");
  }

  CommandOutput restore() {
    const std::string_view path = word();
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    const auto file = read_backup(*bytes);
    if (!file) return refused(std::string(path) + ": " + frame_error_text(file.error(), voice_));
    if (!folder_.take_writing()) return refused(text(Msg::kBackupWindow, voice_.language));
    auto kept = gather();
    if (!kept) return refused(kept.error());
    const std::string when = day_text(file->made_at, folder_.clock_ahead_minutes(file->made_at), voice_.language);
    const Taking taking = taking_of(*file, kept->all, kept->shelf, when);
    if (const std::string failed = store(taking, *file, *kept); !failed.empty())
      return refused(say(Msg::kBackupStore, voice_.language, failed));
    return args_.json() ? said(taking_json(taking)) : told_of(taking, *file);
  }

 private:
  [[nodiscard]] std::string_view word() const { return args_.words().empty() ? std::string_view{} : args_.words()[0]; }

  /// Everything in the folder, or what cannot be read.
  [[nodiscard]] tl::expected<Kept, std::string> gather() const {
    const auto unreadable = [&](std::string_view what) {
      return tl::unexpected(say(Msg::kBackupStored, voice_.language, what));
    };
    Kept kept;
    const auto shelf = folder_.read("shelf"), kit = folder_.read("kit"), places = folder_.read("places");
    if (!kit) return unreadable("kit");
    if (!places) return unreadable("places");
    if (!shelf) return unreadable("shelf");
    if (!shelf->empty()) {
      auto read = read_shelf(*shelf);
      if (!read) return tl::unexpected(frame_error_text(read.error(), voice_));
      kept.shelf = *std::move(read);
    }
    kept.all.made_at = folder_.wall_clock_ms();
    kept.all.kit.bytes = *kit;
    kept.all.places.bytes = *places;
    std::set<std::string> identities;
    kept.all.books.reserve(kept.shelf.books.size());
    for (const ShelvedBook& book : kept.shelf.books) {
      auto bytes = folder_.read(book.id);
      if (!bytes) return unreadable(book.id);
      std::string identity = identity_of(book, *bytes);
      if (!identity.empty()) identities.insert(identity);
      kept.all.books.push_back(
          {book.title, std::move(identity), book.changed_at, book.deleted_at, book.days_seen, *std::move(bytes), {}});
    }
    for (const std::string& identity : identities) {
      const auto lines = folder_.read_log(identity);
      if (!lines) return unreadable(identity);
      const Log log = log_of_lines(identity, *lines);
      if (!log.events.empty()) kept.all.logs.push_back({identity, write_log(log), {}});
    }
    kept.all = sealed(std::move(kept.all));
    return kept;
  }

  /// The key of the first that storage refused; "": all is stored.
  [[nodiscard]] std::string store(const Taking& taking, const Backup& file, const Kept& kept) const {
    Shelf shelf = kept.shelf;
    for (const Taking::Fresh& fresh : taking.fresh) {
      shelf = with_shelved(std::move(shelf), fresh.book);
      const ShelvedBook& last = shelf.books.back();
      if (shelf.open.empty() && last.deleted_at == 0) shelf.open = last.id;
      if (!folder_.write(last.id, fresh.bytes)) return last.id;
    }
    // A book that is not on the disk yet never stands on the shelf.
    if (!taking.fresh.empty() && !folder_.write("shelf", write_shelf(shelf))) return "shelf";
    for (const ComingLog& log : taking.logs) {
      if (log.fresh.empty()) continue;
      if (!own_number(log.fresh)) return "device";
      if (!folder_.append(log.identity, log.fresh)) return log.identity;
    }
    return store_parts(taking, file, kept);
  }

  /// Nobody else may have counted under this computer's number: if so it takes another one.
  [[nodiscard]] bool own_number(const std::vector<Event>& fresh) const {
    const auto own = read_hex(folder_.read("device").value_or(""), 16);
    if (!own || std::none_of(fresh.begin(), fresh.end(), [&](const Event& e) { return e.device == *own; })) return true;
    std::string other;
    put_hex(other, folder_.random_bits(), 16);
    return folder_.write("device", other);
  }

  [[nodiscard]] std::string store_parts(const Taking& taking, const Backup& file, const Kept& kept) const {
    const bool wanted = args_.has("kit");
    const Kit kit = read_kit(kept.all.kit.bytes).value_or(first_kit());
    const Places places = read_places(kept.all.places.bytes).value_or(demo_places());
    if (const Kit next = taken_kit(kit, file, taking.kit, wanted); !(next == kit))
      if (!folder_.write("kit", write_kit(next))) return "kit";
    if (const Places next = taken_places(places, file, taking.places, wanted); !(next == places))
      if (!folder_.write("places", write_places(next))) return "places";
    return {};
  }

  [[nodiscard]] CommandOutput told_of(const Taking& taking, const Backup& file) const {
    const Language language = voice_.language;
    CommandOutput out;
    if (!taking.complete) out.err += "bentbook: " + std::string(text(Msg::kBackupIncomplete, language)) + "\n";
    for (const ComingBook& book : taking.books) {
      std::string& to = book.coming == Coming::kDamaged ? out.err : out.out;
      to += told(foreign_title(book.title, language), coming_text(book, language));
    }
    for (const ComingLog& log : taking.logs) {
      const std::string name = coming_log_name(file, log.identity, language);
      if (log.damaged) out.err += told(name, text(Msg::kBackupLogDamaged, language));
      if (!log.fresh.empty())
        out.out += told(name, say_count(Msg::kBackupLogNew, language, static_cast<std::int64_t>(log.fresh.size())));
    }
    tell_part(out, Msg::kBackupKitName, taking.kit);
    tell_part(out, Msg::kBackupPlacesName, taking.places);
    return out;
  }

  void tell_part(CommandOutput& out, Msg name, ComingPart coming) const {
    const std::string_view said_name = text(name, voice_.language);
    if (coming == ComingPart::kDamaged) out.err += told(said_name, text(Msg::kBackupDamaged, voice_.language));
    const bool taken = is_taken(coming, args_.has("kit"));
    if (taken) out.out += told(said_name, text(Msg::kBackupTaken, voice_.language));
    if (coming == ComingPart::kAsked && !taken) out.out += told(said_name, text(Msg::kBackupOwn, voice_.language));
  }

  const Args& args_;
  const Files& files_;
  const Folder& folder_;
  Voice voice_;
};

template <class Run>
CommandOutput with_args(std::span<const std::string_view> args, std::span<const std::string_view> flags, Run run) {
  const auto read = Args::read(args, flags, {});
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kBackupUsage)};
  if (read->words()[0] == "help") return said(std::string(kBackupUsage));
  return run(*read);
}

}  // namespace

CommandOutput backup_command(std::span<const std::string_view> args, const Files& files, const Folder& folder) {
  return with_args(args, {}, [&](const Args& read) { return FolderCall(read, files, folder).write(); });
}

CommandOutput restore_command(std::span<const std::string_view> args, const Files& files, const Folder& folder) {
  return with_args(args, kRestoreFlags, [&](const Args& read) { return FolderCall(read, files, folder).restore(); });
}

}  // namespace bentbook
