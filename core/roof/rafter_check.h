#pragma once
/// Inside the rafter: each field alone, before anything is worked out.

#include "roof/rafter.h"

namespace bentbook {

[[nodiscard]] Result<void> check_rafter_fields(const RafterInput& input);

}  // namespace bentbook
