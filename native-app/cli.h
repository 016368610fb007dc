#pragma once
/// The command line: bentbook COMMAND [options]. What each command takes stands in README.md beside this file.

/// True when argv[1] is a word (a command, known or not) or --help: then no window opens.
[[nodiscard]] bool cli_wanted(int argc, char** argv);
/// Runs it; answers go to stdout, messages to stderr. Returns the exit status, 0 or 2 (verify: 0 or 1).
int cli_main(int argc, char** argv);
