#include <map>

#include "book/book.h"
#include "book/book_file.h"
#include "command/book.h"
#include "plans.h"
#include "random.h"
#include "rows.h"

using namespace bentbook;

namespace golden {
namespace {

/// A command's answer as rows, cut where a member begins so that a difference names its place.
void answer_rows(Rows& rows, const CommandOutput& output) {
  rows.whole(output.exit_code).word(output.err.empty() ? "-" : output.err.substr(0, output.err.size() - 1)).end();
  std::size_t from = 0;
  for (std::size_t at = 1; at < output.out.size(); ++at) {
    const bool cut = output.out[at] == '\n' || (output.out[at] == '{' && at - from > 200);
    if (!cut) continue;
    rows.word(output.out.substr(from, at - from)).end();
    from = output.out[at] == '\n' ? at + 1 : at;
  }
}

class Desk {
 public:
  void put(const std::string& path, std::string bytes) { files_[path] = std::move(bytes); }
  CommandOutput run(std::initializer_list<std::string_view> words) {
    return book_command({words.begin(), words.size()}, {[this](std::string_view path) -> std::optional<std::string> {
                                                          const auto it = files_.find(std::string(path));
                                                          if (it == files_.end()) return std::nullopt;
                                                          return it->second;
                                                        },
                                                        [this](std::string_view path, std::string_view bytes) {
                                                          files_[std::string(path)] = bytes;
                                                          return true;
                                                        }});
  }

 private:
  std::map<std::string, std::string> files_;
};

}  // namespace

void frame_rows(Rows& rows) {
  Desk desk;
  desk.put("demo", write_book(demo_book()));
  answer_rows(rows, desk.run({"members", "demo", "--json"}));
  answer_rows(rows, desk.run({"check", "demo", "--lang", "es"}));
  for (const char* mark : {"P-A1", "P-A2", "T-2", "C-A1", "B-A1.1"}) {
    answer_rows(rows, desk.run({"sheet", "demo", mark, "--json"}));
    answer_rows(rows, desk.run({"sheet", "demo", mark}));
  }
  answer_rows(rows, desk.run({"export", "demo", "--format", "obj"}));
  Random random(306);
  for (int n = 0; n < 12; ++n) {
    Book book = demo_book();
    book.frame = random_plan(random);
    desk.put("random", write_book(book));
    answer_rows(rows, desk.run({"members", "random", "--json"}));
    answer_rows(rows, desk.run({"check", "random"}));
  }
}

}  // namespace golden
