#include "paper/pdf.h"
#include "tasks/paper_fields.h"
#include "tasks/worker_answer.h"
#include "worker/work.h"

namespace bentbook::page {

/// What lies behind the request are the letters.
std::string run_work(std::string_view request, std::string_view behind, const Progress&) {
  json::FlatReader reader(request, "task");
  constexpr int kPaper = static_cast<int>(TaskKind::kPaper);
  int kind = kPaper;
  PaperRequest asked;
  reader.integer("kind", kind, kPaper, kPaper);
  describe(reader, asked);
  const auto refuse = [](const Error& error) { return write_answer<PaperFile>(tl::unexpected(error)); };
  if (auto ok = reader.end(); !ok) return refuse(ok.error());
  const auto fonts = read_fonts(behind);
  if (!fonts) return refuse({ErrorCode::kSyntax, "font", -1, 0});
  return write_answer(paper::write_pdf(*asked.document, {fonts->regular, fonts->bold}).map([](std::string&& pdf) {
    return PaperFile{std::move(pdf)};
  }));
}

}  // namespace bentbook::page
