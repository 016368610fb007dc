#include <set>
#include <utility>

#include "fuzz.h"
#include "raising/order_csv.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const OrderCsv order = read_order_csv(fuzz::text_of(data, size));
  fuzz::hold(order.steps.size() == order.lines.size());
  int before = 0;
  for (const OrderCsvTrouble& trouble : order.troubles) {
    fuzz::hold(trouble.line >= before && !trouble.column.empty());
    before = trouble.line;
  }
  const std::vector<JointName> none;
  // What was good goes out and comes back whole.
  const OrderCsv again = read_order_csv(write_order_csv(order.steps, order.later.value_or(none)));
  fuzz::hold(again.troubles.empty() && again.steps == order.steps);
  const auto counted = [](const OrderCsv& it) {
    std::multiset<std::pair<std::string, std::string>> names;
    for (const JointName& joint : it.later.value_or(std::vector<JointName>{})) names.emplace(joint.one, joint.other);
    return names;
  };
  fuzz::hold(order.steps.empty() || counted(again) == counted(order));
  return 0;
}
