#pragma once
/// Printed pages over the Worker's border: a document as bytes, and back. What writes PDF stands in a module of its own
/// (wasm-app/worker/work_paper.cpp) and knows nothing but pages.

#include <string>
#include <string_view>

#include "numeric/result.h"
#include "paper/page.h"

namespace bentbook {

class Fields;

namespace paper {
void describe(Fields& fields, Document& document);
}  // namespace paper

[[nodiscard]] std::string write_document(const paper::Document& document);
/// Error: kSyntax ("document").
[[nodiscard]] Result<paper::Document> read_document(std::string_view bytes);

}  // namespace bentbook
