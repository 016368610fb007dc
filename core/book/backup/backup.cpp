#include "book/backup/backup.h"

#include <optional>

#include "book/json_io.h"
#include "shop/log/record.h"
#include "text/crc32.h"
#include "text/hex.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

constexpr json::FileHead kBackupHead{"backup", 1};
constexpr unsigned kMostBooks = 10'000;  // as a shelf has at most
constexpr std::int64_t kMostMoment = std::int64_t{1} << 52;

/// A checksum over texts and numbers, each ended, so that none passes for the end of another.
class Summed {
 public:
  Summed& text(std::string_view bytes) {
    sum_ = crc32(std::string_view("\0", 1), crc32(bytes, sum_));
    return *this;
  }
  Summed& number(std::int64_t n) { return text(std::to_string(n)); }
  [[nodiscard]] std::string hex() const {
    std::string out;
    put_hex(out, sum_, 8);
    return out;
  }

 private:
  std::uint32_t sum_ = 0;
};

std::string sum_of(const BackupPart& part) { return Summed().text(part.bytes).hex(); }
std::string sum_of(const BackupLog& log) { return Summed().text(log.identity).text(log.bytes).hex(); }
std::string sum_of(const BackupBook& book) {
  return Summed()
      .text(book.title)
      .text(book.identity)
      .number(book.changed_at)
      .number(book.deleted_at)
      .number(book.days_seen)
      .text(book.bytes)
      .hex();
}
std::string sum_of(const Backup& backup) {
  Summed sum;
  sum.number(backup.made_at).text(backup.kit.sum).text(backup.places.sum);
  sum.number(static_cast<std::int64_t>(backup.books.size()));
  for (const BackupBook& book : backup.books) sum.text(book.sum);
  for (const BackupLog& log : backup.logs) sum.text(log.sum);
  return sum.hex();
}

/// JSON holds text: bytes that are none stand there in hexadecimal, under another name.
void describe_bytes(Fields& fields, std::string& bytes, std::string& sum) {
  if (fields.reads()) {
    std::string digits;
    fields.text("bytes", bytes, std::string::npos);
    fields.text("hex", digits, std::string::npos);
    if (!digits.empty()) {
      const auto read = bytes_of_hex(digits);
      if (!read || is_utf8(*read) || !bytes.empty())
        fields.fail(ErrorCode::kSyntax, "hex");  // there is one way to write each
      else
        bytes = *read;
    }
  } else if (is_utf8(bytes)) {
    fields.text("bytes", bytes);
  } else {
    std::string digits = hex_of(bytes);
    fields.text("hex", digits);
  }
  fields.text("sum", sum);
}

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, BackupPart& part) { describe_bytes(fields, part.bytes, part.sum); }

static void describe(Fields& fields, BackupBook& book) {
  fields.text("title", book.title, std::string::npos);
  fields.text("identity", book.identity);
  fields.whole("changed_at", book.changed_at, 0, kMostMoment);
  fields.whole("deleted_at", book.deleted_at, 0, kMostMoment);
  fields.whole("days_seen", book.days_seen, 0, kMostMoment);
  describe_bytes(fields, book.bytes, book.sum);
}

static void describe(Fields& fields, BackupLog& log) {
  fields.text("identity", log.identity);
  describe_bytes(fields, log.bytes, log.sum);
}

static void describe(Fields& fields, Backup& backup) {
  fields.whole("made_at", backup.made_at, 0, kMostMoment);
  fields.object("kit", backup.kit);
  fields.object("places", backup.places);
  fields.list("books", backup.books, kMostBooks);
  fields.list("logs", backup.logs, kMostBooks);
  fields.text("sum", backup.sum);
}

Backup sealed(Backup backup) {
  backup.kit.sum = sum_of(backup.kit);
  backup.places.sum = sum_of(backup.places);
  for (BackupBook& book : backup.books) book.sum = sum_of(book);
  for (BackupLog& log : backup.logs) log.sum = sum_of(log);
  backup.sum = sum_of(backup);
  return backup;
}

bool is_whole(const BackupPart& part) { return part.sum == sum_of(part); }
bool is_whole(const BackupBook& book) { return book.sum == sum_of(book); }
bool is_whole(const BackupLog& log) { return log.sum == sum_of(log); }
bool is_complete(const Backup& backup) { return backup.sum == sum_of(backup); }

bool is_backup_file(std::string_view bytes) {
  std::string head;
  for (const char c : bytes.substr(0, 80))
    if (c != ' ' && c != '\t' && c != '\r' && c != '\n') head += c;
  return head.starts_with(R"({"file":"backup")");
}

std::string write_backup(const Backup& backup) {
  return json::write_file(kBackupHead, described_as_is(backup), backup.kept);
}

Result<Backup> read_backup(std::string_view bytes) {
  Backup backup;
  std::string spot;
  if (auto ok = json::read_file(kBackupHead, bytes, described(backup), &spot); !ok) {
    Error error = ok.error();
    if (!spot.empty()) error.where = spot;
    return tl::unexpected(error);
  }
  // They become keys of storage: what the app would not give is not taken.
  const auto named = [](const char* list, std::size_t i) { return list + std::to_string(i) + ".identity"; };
  for (std::size_t i = 0; i < backup.books.size(); ++i)
    if (!is_book_id(backup.books[i].identity)) return fail(ErrorCode::kSyntax, named("books.", i), 0);
  for (std::size_t i = 0; i < backup.logs.size(); ++i)
    if (!is_book_id(backup.logs[i].identity)) return fail(ErrorCode::kSyntax, named("logs.", i), 0);
  backup.kept = bytes;
  return backup;
}

}  // namespace bentbook
