#include <cmath>

#include "fuzz.h"
#include "paper/page_part.h"
#include "tasks/document_fields.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto read = read_document(fuzz::text_of(data, size));
  if (!read) {
    fuzz::hold(read.error().code == ErrorCode::kSyntax && read.error().where == "document");
    return 0;
  }
  // What was taken goes over once more and is the same.
  const std::string bytes = write_document(*read);
  const auto again = read_document(bytes);
  fuzz::hold(again.has_value() && write_document(*again) == bytes);
  for (const paper::Page& page : read->pages) {
    // Whoever writes it is asked to draw numbers, and codes whose modules are there.
    const paper::Window all = paper::bounds_of(page);
    fuzz::hold(std::isfinite(all.left + all.right + all.top + all.bottom));
    for (const paper::PageCode& code : page.codes)
      fuzz::hold(code.code.dark.size() ==
                 static_cast<std::size_t>(code.code.size) * static_cast<std::size_t>(code.code.size));
  }
  return 0;
}
