/// One program: with a command it is the command line, without one it opens the window.

#include "cli.h"
#include "window.h"

int main(int argc, char** argv) {
  if (cli_wanted(argc, argv)) return cli_main(argc, argv);
  return bentbook::desktop::run_window(argc, argv);
}
