#include "frame/layout.h"
namespace bentbook {
void place_added(Work&) {}
}  // namespace bentbook
