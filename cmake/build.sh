# Sourced from the project's root: build PRESET TARGET… configures and builds, one build at a time in a folder. Says how
# far it is and, when it fails, why (BENTBOOK_VERBOSE=1: everything); all its words go to standard error, but how far it
# is goes to the file descriptor BENTBOOK_PROGRESS where that is set.
build() {
  local preset=$1 log
  shift
  mkdir -p build
  log=$(mktemp)
  if ! (
    set -o pipefail
    flock 8
    { cmake --preset "$preset" && cmake --build "build/$preset" -j "$(nproc)" --target "$@"; } 2>&1 8>&- |
      tell_progress "$preset" "$log" >&2
  ) 8>"build/$preset.lock"; then
    [ -n "${BENTBOOK_VERBOSE:-}" ] || show_failure "$log" >&2
    echo "$preset does not build: $*" >&2
    rm -f "$log"
    return 1
  fi
  rm -f "$log"
}

# tell_progress PRESET LOG: keeps what it reads in LOG and says `building PRESET [213/640]`: in place on a terminal, else
# a line every ten seconds. Nothing where there was nothing to build.
tell_progress() {
  local line start='' end='\n' every=10 said=-100 told=0
  if [ -n "${BENTBOOK_PROGRESS:-}" ]; then exec >&"$BENTBOOK_PROGRESS"; fi
  if [ -z "${BENTBOOK_PROGRESS:-}" ] && [ -t 1 ]; then start='\r' end='\e[K' every=1; fi
  while IFS= read -r line; do
    printf '%s\n' "$line"
    if [ -n "${BENTBOOK_VERBOSE:-}" ]; then
      printf '%s\n' "$line" >&3
    elif [[ $line =~ ^\[[1-9][0-9]*/[0-9]+\] ]] && ((SECONDS - said >= every)); then
      printf "${start}building %s %s${end}" "$1" "${BASH_REMATCH[0]}" >&3
      said=$SECONDS told=1
    fi
  done 3>&1 >"$2"
  [ "$told" = 0 ] || [ -z "$start" ] || printf '\r\e[K'
}

# The first errors; compilers say the most important thing first, configuring says it last.
show_failure() {
  if grep -q '^FAILED' "$1"; then
    sed -n '/^FAILED/,$p' "$1" | grep -vE '^(\[[0-9]+/[0-9]+\]|/usr/bin/ccache|/usr/bin/cmake -E|: &&|em\+\+: error)' | head -n 60
  else
    tail -n 40 "$1"
  fi
}
