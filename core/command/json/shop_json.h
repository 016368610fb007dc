#pragma once
/// The shop as JSON for programs. Keys stand in native-app/README.md.

#include <string>
#include <vector>

#include "frame/plan.h"
#include "shop/log/log_file.h"
#include "shop/log/writers.h"
#include "shop/workplace.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string log_json(const Log& log, const ShopState& state, const Voice& voice);
[[nodiscard]] std::string writers_json(const std::vector<Writer>& writers, const Voice& voice);
[[nodiscard]] std::string log_check_json(const LogScan& scan, const Voice& voice);
[[nodiscard]] std::string steps_json(const Timber& timber, const TimberWork& work, const ShopState& state,
                                     const Voice& voice);

}  // namespace bentbook
