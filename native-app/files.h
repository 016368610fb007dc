#pragma once
/// Files by their path, for the command line.

#include "command/book.h"

/// As disk.h reads and replaces them.
[[nodiscard]] bentbook::Files disk_files();
