#pragma once
/// Pages filled from the top: one part below the other, a new page where one has no room; and tables, whose head stands
/// again on every page that they go on to.

#include <string>
#include <string_view>
#include <vector>

#include "printed/columns.h"
#include "printed/page_head.h"

namespace bentbook {

struct TableColumn {
  std::string head;
  paper::Align align = paper::Align::kLeft;
  bool wide = false;    ///< takes what the others leave, its cells in several lines; at most one of a table
  bool strong = false;  ///< what is looked for
};
using TableRow = std::vector<std::string>;  ///< a cell a column

class PageFlow {
 public:
  /// `foot` stands at the lower edge of every page.
  PageFlow(const PrintOptions& options, PagePart foot);

  [[nodiscard]] double width() const { return room_.width(); }
  /// Of what is left on the page; that of a whole page before there is one.
  [[nodiscard]] double left() const;
  /// A part that is kept goes to the next page with the first of those behind it.
  void add(PagePart part);
  void title(std::string_view words);
  void heading(std::string_view words);
  void words(std::string_view said, bool strong = false);
  void gap(double mm);
  void table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows);
  void turn();

  [[nodiscard]] paper::Document finished();

 private:
  PageRoom room_;
  PagePart foot_;
  double y_ = 0;
  std::vector<PagePart> kept_;
  paper::Document out_;
};

}  // namespace bentbook
