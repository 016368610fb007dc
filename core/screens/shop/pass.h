#pragma once
/// Passing the crew's log on with no network: files through the share sheet, codes from screen to camera. What comes in
/// is read whole and checked before anything of it is taken.

#include "screens/app/pages.h"

namespace bentbook::screens {

/// "Barn log.txt"
[[nodiscard]] std::string log_file_name(const Context&, std::string_view what);
[[nodiscard]] Page shop_pass_page();     ///< passing the log on
[[nodiscard]] Page shop_receive_page();  ///< a log that was opened as a file

}  // namespace bentbook::screens
