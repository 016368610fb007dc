// On paper: what is printed is laid out as values, written as a PDF off the frame, and shared.
#include <catch_amalgamated.hpp>

#include "bed.h"
#include "tasks/border.h"
#include "tasks/flat.h"
#include "tasks/paper_fields.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct PrintingBed : Bed {
  PrintingBed() {
    tap("place.frame");
    press("bar.menu");
    press("menu.paper");
  }
  /// What was asked to be written.
  std::shared_ptr<const paper::Document> make() {
    press("paper.make");
    REQUIRE(platform.tasks.size() == 1);
    REQUIRE(platform.tasks[0].id.kind == TaskKind::kPaper);
    return std::get<PaperRequest>(platform.tasks[0].request).document;
  }
};

}  // namespace

TEST_CASE("a PDF of every timber's sheet is made from the menu and shared under the book's name", "[screens][paper]") {
  PrintingBed bed;
  const auto document = bed.make();
  CHECK(document->pages.size() > 10);
  const TaskId id = bed.platform.tasks[0].id;
  bed.platform.tasks.clear();
  bed.tell_task({id, 1000, TaskAnswer(PaperFile{"%PDF-1.4"})});
  bed.rest();
  REQUIRE(bed.platform.shared.size() == 1);
  CHECK(bed.platform.shared[0].ends_with("Timber sheets.pdf"));
  CHECK(bed.platform.shared_bytes == "%PDF-1.4");
}

TEST_CASE("pages and letters cross to the Worker as they were", "[tasks][paper]") {
  PrintingBed bed;
  const auto document = bed.make();
  const std::string request = write_request(bed.platform.tasks[0].request);
  json::FlatReader reader(request, "task");
  int kind = 0;
  PaperRequest crossed;
  reader.integer("kind", kind, 0, 100);
  describe(reader, crossed);
  REQUIRE(reader.end());
  CHECK(kind == static_cast<int>(TaskKind::kPaper));
  CHECK(write_request(crossed) == request);
  CHECK(crossed.document->pages.size() == document->pages.size());
  const std::string files = write_fonts("abc", "de");
  const auto fonts = read_fonts(files);
  REQUIRE(fonts);
  CHECK(fonts->regular == "abc");
  CHECK(fonts->bold == "de");
  CHECK_FALSE(read_fonts("0000000"));
  CHECK_FALSE(read_fonts("000000ffab"));
}

TEST_CASE("a pattern's file is written at the tap, in the unit of then", "[screens][paper]") {
  Bed bed;
  const auto each = [&](std::initializer_list<const char*> keys) {
    for (const char* key : keys) bed.press(key);
  };
  each({"place.shop", "shop.all", "shop.timber.P-A2", "shop.sheet", "sheet.paper", "paper.what.1"});
  each({"paper.file.P-A2_1.dxf"});
  const std::string inches = bed.platform.shared_bytes;
  CHECK(inches.starts_with("999"));
  each({"bar.menu", "menu.settings", "settings.form.3", "bar.back", "bar.back", "paper.file.P-A2_1.dxf"});
  CHECK(bed.platform.shared == std::vector<std::string>{"P-A2_1.dxf", "P-A2_1.dxf"});
  CHECK(bed.platform.shared_bytes != inches);
  each({"paper.file.P-A2_1.svg"});
  CHECK(bed.platform.shared_bytes.starts_with("<svg"));
}

TEST_CASE("a file's bytes come back from the Worker, and hostile ones are refused", "[tasks][paper]") {
  std::string all;
  for (int byte = 0; byte < 256; ++byte) all += static_cast<char>(byte);
  json::FlatWriter writer;
  bool good = true;
  writer.flag("good", good);
  PaperFile file{all};
  describe(writer, file);
  const auto answer = read_answer(TaskKind::kPaper, writer.bytes());
  REQUIRE(answer);
  CHECK(std::get<PaperFile>(*answer).pdf == all);
  for (const char* bytes : {R"([true,"0"])", R"([true,"0g"])", R"([true,7])", "[true]"})
    CHECK_FALSE(read_answer(TaskKind::kPaper, bytes));
}
