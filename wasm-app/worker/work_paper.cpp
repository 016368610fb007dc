#include "paper/pdf.h"
#include "tasks/document_fields.h"
#include "ui/fonts.gen.h"
#include "worker/work.h"

namespace bentbook::page {
namespace {

template <std::size_t N>
std::string_view bytes_of(const unsigned char (&font)[N]) {
  return {reinterpret_cast<const char*>(font), N};
}

}  // namespace

/// Bytes of write_document() in, a PDF out: empty where it cannot be written.
std::string run_work(std::string_view request, std::string_view, const Progress&) {
  const auto document = read_document(request);
  if (!document) return {};
  return write_pdf(*document, {bytes_of(screens::kRegularFont), bytes_of(screens::kBoldFont)}).value_or(std::string{});
}

}  // namespace bentbook::page
