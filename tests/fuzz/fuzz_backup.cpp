#include "book/backup/merge.h"
#include "fuzz.h"
#include "shop/log/record.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto backup = read_backup(fuzz::text_of(data, size));
  if (!backup) {
    fuzz::hold(!backup.error().where.empty());
    fuzz::hold(backup.error().at <= static_cast<std::int64_t>(size));
    return 0;
  }
  const std::string once = write_backup(*backup);
  auto again = read_backup(once);
  fuzz::hold(again.has_value() && write_backup(*again) == once);
  again->kept = backup->kept;
  fuzz::hold(*again == *backup);
  // As if nothing were damaged, so that what stands behind the checksums is reached.
  for (const Backup& file : {*backup, sealed(*backup)}) {
    const Taking taking = taking_of(file, {}, {}, "28 Nov");
    Shelf shelf;
    Backup here;
    for (const Taking::Fresh& fresh : taking.fresh) {
      fuzz::hold(is_book_id(fresh.book.identity));
      shelf = with_shelved(std::move(shelf), fresh.book);
      here.books.push_back({{}, fresh.book.identity, 0, 0, 0, fresh.bytes, {}});
    }
    const auto read = read_shelf(write_shelf(shelf));
    fuzz::hold(read.has_value() && read->books == shelf.books);
    fuzz::hold(taking_of(file, here, shelf, "28 Nov").fresh.empty());
  }
  return 0;
}
