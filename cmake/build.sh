# Sourced from the project's root: build PRESET TARGET… configures and builds, one build at a time in a folder. Silent
# unless it fails (or BENTBOOK_VERBOSE=1); all its words go to standard error.
build() {
  local preset=$1 log
  shift
  mkdir -p build
  log=$(mktemp)
  [ -z "${BENTBOOK_VERBOSE:-}" ] || log=/dev/stderr
  if ! (
    flock 8
    cmake --preset "$preset" && cmake --build "build/$preset" -j "$(nproc)" --target "$@"
  ) >"$log" 2>&1 8>"build/$preset.lock"; then
    [ "$log" = /dev/stderr ] || show_failure "$log" >&2
    echo "$preset does not build: $*" >&2
    [ "$log" = /dev/stderr ] || rm -f "$log"
    return 1
  fi
  [ "$log" = /dev/stderr ] || rm -f "$log"
}

# The first errors; compilers say the most important thing first, configuring says it last.
show_failure() {
  if grep -q '^FAILED' "$1"; then
    sed -n '/^FAILED/,$p' "$1" | grep -vE '^(\[[0-9]+/[0-9]+\]|/usr/bin/ccache|/usr/bin/cmake -E|: &&|em\+\+: error)' | head -n 60
  else
    tail -n 40 "$1"
  fi
}
