#pragma once
/// Pages as a PDF file: the app's own letters embedded (only those that are used), streams packed, no clock and no
/// chance in it: the same document gives the same bytes on every target. Fractions stand as on the screen and read back
/// as 7⁄8. Source: SOURCES.md, "PDF".
///
/// Not of the core's library: whoever writes PDF links bentbook_pdf.

#include <string>
#include <string_view>

#include "numeric/result.h"
#include "paper/page.h"

namespace bentbook::paper {

/// TrueType files: those whose widths paper/letters.h has.
struct PdfFonts {
  std::string_view regular, bold;
};

/// Errors: kSyntax ("font") where a font cannot be read; kTooLarge ("paper") where memory or the format's limits end.
[[nodiscard]] Result<std::string> write_pdf(const Document& document, const PdfFonts& fonts);

}  // namespace bentbook::paper
