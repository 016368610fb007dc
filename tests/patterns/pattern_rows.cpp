// pattern_rows FOLDER CASE [MARK…]: writes the patterns of a book, of the marks or of all timbers:
//   book                   the book itself, for the command line to print
//   MARK_N.dxf, MARK_N.svg each pattern at 1:1
// and to standard output the timbers (solid_rows.h) and a line for each pattern: `pattern NAME MARK FACE ZERO FROM TO`,
// inches; ZERO a station, FROM and TO from zero.
// pattern_rows FOLDER labels SHEET a4|letter: the book of the first case, and to standard output where the
// labels are on such a sheet (printed/labels.h) and what the code of each must read, in order. Cases: rafter (9 in 12,
// inches, letter), metric (the same in mm, A4, French), plates (the demo, A4, Spanish), hips (a roof with hips,
// letter), braces (8 × 8 braces, letter).

#include <cstring>
#include <exception>

#include "book/book_file.h"
#include "printed/pages/labels.h"
#include "printed/pages/patterns.h"
#include "shop/log/chunk.h"
#include "solid_rows.h"

using namespace bentbook;

namespace {

bool write_file(const std::string& path, std::string_view bytes) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool all = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  return std::fclose(file) == 0 && all;
}

struct Case {
  Book book;
  PrintOptions options;
  Voice voice;
};

Case case_of(std::string_view name) {
  const Slope pitch = Slope::in_12(Length::inches(9));
  Case out;
  out.book = new_book("Patterns", Length::feet(24), Length::feet(24), Length::feet(10), pitch);
  out.book.identity = "7fa31c";
  out.options.what = PrintedKind::kPatterns;
  out.options.page = paper::PageSize::kLetter;
  out.options.day = "2026-11-28";
  if (name == "metric") {
    out.book.lengths.form = LengthForm::kMm;
    out.voice.language = *find_language("fr-CA");
    out.options.page = paper::PageSize::kA4;
  } else if (name == "plates") {
    out.book = demo_book();
    out.book.frame.joints[static_cast<std::size_t>(Meeting::kTiePost)] = KnifePlate{};
    out.voice.language = *find_language("es");
    out.options.page = paper::PageSize::kA4;
  } else if (name == "hips") {
    out.book.framed = false;
    out.book.frame.added.clear();
    out.book.roof = rectangle_roof(Length::feet(20), Length::feet(14), pitch);
  } else if (name == "braces") {
    out.book.frame.sections.brace = {Length::inches(8), Length::inches(8)};
    out.book.frame.sections.post = out.book.frame.sections.plate = {Length::inches(10), Length::inches(10)};
  }
  out.voice.lengths = out.book.lengths;
  return out;
}

int labels(const std::string& folder, const char* sheet, std::string_view paper) {
  Case given = case_of("rafter");
  given.options.page = paper == "a4" ? paper::PageSize::kA4 : paper::PageSize::kLetter;
  const BookModel model = solve(given.book);
  if (!*model.frame || !write_file(folder + "/book", write_book(given.book))) return 1;
  const LabelSheet& on = *find_label_sheet(sheet, given.options.page);
  int at = 0;
  for (const Timber& timber : (*model.frame)->timbers) {
    const int page = at / (on.columns * on.rows), place = at % (on.columns * on.rows);
    const draw::Point corner = on.corner(place % on.columns, place / on.columns);
    std::printf("label %d %.4f %.4f %.4f %.4f %s\n", page + 1, corner.x, corner.y, on.width, on.height,
                label_text({given.book.identity, timber.mark}).c_str());
    ++at;
  }
  return 0;
}

int patterns(const std::string& folder, const Case& given) {
  const BookModel model = solve(given.book);
  if (!*model.frame) return 1;
  const Frame& frame = **model.frame;
  const auto groups = pattern_groups(given.book, model, given.options);
  if (!groups) return 1;
  bool good = write_file(folder + "/book", write_book(given.book));
  for (const PatternForm form : {PatternForm::kDxf, PatternForm::kSvg}) {
    const auto files = pattern_files(given.book, model, given.options, form, given.voice);
    if (!files) return 1;
    for (const PatternFile& file : *files) good = good && write_file(folder + "/" + file.name, file.bytes);
    if (form == PatternForm::kSvg) continue;
    for (std::size_t i = 0; i < files->size(); ++i)
      for (const PatternPlace& place : (*groups)[i].places)
        std::printf("pattern %s %s %d %.17g %.17g %.17g\n", (*files)[i].name.c_str(),
                    frame.timbers[static_cast<std::size_t>(place.timber)].mark.c_str(), static_cast<int>(place.face),
                    place.station, (*groups)[i].pattern.from, (*groups)[i].pattern.to);
  }
  for (const Timber& timber : frame.timbers) write_timber(timber);
  return good ? 0 : 1;
}

}  // namespace

int main(int count, char** words) try {
  if (count < 3) return 2;
  if (std::strcmp(words[2], "labels") == 0) return count == 5 ? labels(words[1], words[3], words[4]) : 2;
  Case given = case_of(words[2]);
  for (int i = 3; i < count; ++i) given.options.marks.emplace_back(words[i]);
  return patterns(words[1], given);
} catch (const std::exception& error) {
  std::fprintf(stderr, "pattern_rows: %s\n", error.what());
  return 1;
}
