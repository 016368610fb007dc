#pragma once
/// Files by their path, for the command line.

#include "command/book.h"

/// Reads whole files; writes beside, flushes to the disk, renames: a file is replaced whole or not at all.
[[nodiscard]] bentbook::Files disk_files();
