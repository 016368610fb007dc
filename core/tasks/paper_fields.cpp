#include "tasks/paper_fields.h"

#include <utility>

#include "tasks/document_fields.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr int kSizeDigits = 8;

}  // namespace

void describe(Fields& fields, PaperRequest& r) {
  if (!fields.reads()) return fields.inner("document", described_as_is(*r.document));
  auto document = std::make_shared<paper::Document>();
  fields.object("document", *document);
  r.document = std::move(document);
}

void describe(Fields& fields, PaperFile& f) {
  std::string digits = fields.reads() ? std::string{} : hex_of(f.pdf);
  fields.text("pdf", digits);
  if (!fields.reads()) return;
  auto bytes = bytes_of_hex(digits);
  if (!bytes) return fields.fail(ErrorCode::kSyntax, "pdf");
  f.pdf = std::move(*bytes);
}

std::string write_fonts(std::string_view regular, std::string_view bold) {
  std::string bytes;
  put_hex(bytes, regular.size(), kSizeDigits);
  return bytes.append(regular).append(bold);
}

std::optional<FontBytes> read_fonts(std::string_view bytes) {
  if (bytes.size() < kSizeDigits) return std::nullopt;
  const auto regular = read_hex(bytes.substr(0, kSizeDigits), kSizeDigits);
  bytes.remove_prefix(kSizeDigits);
  if (!regular || *regular > bytes.size()) return std::nullopt;
  return FontBytes{bytes.substr(0, static_cast<std::size_t>(*regular)),
                   bytes.substr(static_cast<std::size_t>(*regular))};
}

}  // namespace bentbook
