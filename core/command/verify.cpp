#include "command/verify.h"

#include <string>
#include <vector>

#include "book/backup/backup.h"
#include "book/book_file.h"
#include "book/book_shelf.h"
#include "book/kit.h"
#include "book/places.h"
#include "command/args.h"
#include "command/output.h"
#include "shop/log/log_file.h"
#include "shop/log/seen.h"
#include "shop/log/snapshot.h"
#include "shop/log/writers.h"
#include "text/invisible.h"
#include "text/json_writer.h"
#include "words/shop_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kVerifyUsage = "usage: bentbook verify FILE [--json] [--lang TAG]\n";

/// What is wrong with a file, a sentence each.
using Troubles = std::vector<std::string>;

template <class Value>
void look(Troubles& troubles, const Result<Value>& read, const Voice& voice) {
  if (!read) troubles.push_back(frame_error_text(read.error(), voice));
}

void look_at_log(Troubles& troubles, std::string_view bytes, const Voice& voice) {
  for (const LogTrouble& trouble : scan_log(bytes).troubles) troubles.push_back(log_trouble_text(trouble, voice));
}

void look_at_book(Troubles& troubles, std::string_view bytes, const Voice& voice) {
  std::string refused;
  look(troubles, read_book(bytes, &refused), voice);
  if (!refused.empty()) troubles.emplace_back(text(Msg::kBookIdentityFresh, voice.language));
}

/// A part of a backup, told under its name.
void look_at_part(Troubles& troubles, std::string_view name, bool whole, Troubles inside, const Voice& voice) {
  if (!whole) inside = {std::string(text(Msg::kBackupDamaged, voice.language))};
  for (const std::string& why : inside)
    troubles.push_back(say(Msg::kVerifyBad, voice.language, {{"what", name}, {"why", why}}));
}

void look_at_backup(Troubles& troubles, std::string_view bytes, const Voice& voice) {
  const auto backup = read_backup(bytes);
  if (!backup) return look(troubles, backup, voice);
  const Language language = voice.language;
  if (!is_complete(*backup)) troubles.emplace_back(text(Msg::kBackupIncomplete, language));
  Troubles inside;
  if (!backup->kit.bytes.empty()) look(inside, read_kit(backup->kit.bytes), voice);
  look_at_part(troubles, text(Msg::kBackupKitName, language), is_whole(backup->kit), std::move(inside), voice);
  inside.clear();
  if (!backup->places.bytes.empty()) look(inside, read_places(backup->places.bytes), voice);
  look_at_part(troubles, text(Msg::kBackupPlacesName, language), is_whole(backup->places), std::move(inside), voice);
  const auto title_of = [&](std::string_view identity) {
    for (const BackupBook& book : backup->books)
      if (book.identity == identity) return made_visible(shown_name(book.title, language));
    return std::string(identity);
  };
  for (const BackupBook& book : backup->books) {
    inside.clear();
    look_at_book(inside, book.bytes, voice);
    look_at_part(troubles, made_visible(shown_name(book.title, language)), is_whole(book), std::move(inside), voice);
  }
  for (const BackupLog& log : backup->logs) {
    inside.clear();
    look_at_log(inside, log.bytes, voice);
    look_at_part(troubles, say(Msg::kBackupLogOf, language, title_of(log.identity)), is_whole(log), std::move(inside),
                 voice);
  }
}

struct KindOfFile {
  std::string_view word;    ///< of kind_of_file_
  std::string_view begins;  ///< without the blanks of its first bytes
  void (*look)(Troubles&, std::string_view bytes, const Voice&);
};
constexpr KindOfFile kKindsOfFile[] = {
    {"book", R"({"file":"book")", look_at_book},
    {"backup", R"({"file":"backup")", look_at_backup},
    {"kit", R"({"file":"kit")", [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_kit(b), v); }},
    {"places", R"({"file":"places")",
     [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_places(b), v); }},
    {"shelf", R"({"file":"shelf")", [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_shelf(b), v); }},
    {"log", "bentbooklog", look_at_log},
    {"seen", "bentbookseen", [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_seen(b), v); }},
    {"shop", "bentbookshop", [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_snapshot(b), v); }},
    {"out", "bentbookleftout", [](Troubles& t, std::string_view b, const Voice& v) { look(t, read_left_out(b), v); }},
};

const KindOfFile* kind_of(std::string_view bytes) {
  std::string head;
  for (const char c : bytes.substr(0, 80))
    if (c != ' ' && c != '\t' && c != '\r' && c != '\n') head += c;
  for (const KindOfFile& kind : kKindsOfFile)
    if (head.starts_with(kind.begins)) return &kind;
  return nullptr;
}

std::string verify_json(std::string_view kind, const Troubles& troubles) {
  JsonWriter json;
  json.open_object();
  json.key("file");
  json.text(kind);
  json.key("whole");
  json.flag(troubles.empty());
  json.key("troubles");
  json.open_list();
  for (const std::string& why : troubles) json.text(why);
  json.close_list();
  json.close_object();
  return std::string(json.bytes()) + "\n";
}

}  // namespace

CommandOutput verify_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(args, {}, {});
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kVerifyUsage)};
  const std::string_view path = read->words()[0];
  const Voice& voice = read->voice();
  if (path == "help") return said(std::string(kVerifyUsage));
  const auto bytes = files.read(path);
  if (!bytes) return refused(say(Msg::kBookUnreadable, voice.language, path));
  const auto bad = [](std::string_view why) { return "bentbook: " + std::string(why) + "\n"; };
  const KindOfFile* kind = kind_of(*bytes);
  if (kind == nullptr) return {1, {}, bad(text(Msg::kVerifyUnknown, voice.language))};
  const std::string_view name = key_text("kind_of_file_", kind->word, voice.language);
  Troubles troubles;
  kind->look(troubles, *bytes, voice);
  if (read->json()) return {troubles.empty() ? 0 : 1, verify_json(kind->word, troubles), {}};
  if (troubles.empty()) return said(say(Msg::kVerifyWhole, voice.language, name) + "\n");
  CommandOutput out{1, {}, {}};
  for (const std::string& why : troubles)
    out.err += bad(say(Msg::kVerifyBad, voice.language, {{"what", name}, {"why", why}}));
  return out;
}

}  // namespace bentbook
