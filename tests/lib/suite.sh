# Sourced by every suite. A suite is tests/suites/<name>.sh; it starts with `# deps: <parts of cmake/deps.sh>`, runs
# with the project's root as its working folder, and ends with `finish <passed> <failed>`.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

suite=$(basename "$0" .sh)
long=${BENTBOOK_LONG:-0} # 1 under `tests/run long`: the big counts
passed=0
failed=0

finish() {
  echo "$suite: $1 passed, $2 failed"
  [ "$2" = 0 ] && [ "$1" != 0 ]
  exit
}

# build PRESET TARGET…: a build that fails ends the suite.
. cmake/build.sh
eval "build_quietly() $(declare -f build | tail -n +2)"
build() { build_quietly "$@" || finish "$passed" $((failed + 1)); }

# run_catch COMMAND…: runs a Catch2 program and adds its test cases to passed and failed. Its output is shown when
# something failed; a crash or an empty run counts as one failure.
run_catch() {
  local out status counts
  out=$(mktemp)
  "$@" --colour-mode none --durations yes >"$out" 2>&1
  status=$?
  # `1.234 s: name` to the list of the slowest, out of what is shown.
  sed -n 's/^\([0-9.]*\) s: \(.*\)/\1 \2/p' "$out" | tell_times
  sed -i '/^[0-9.]* s: /d' "$out"
  counts=$(awk '
    /^All tests passed \(/ { n = $0; sub(/.* in /, "", n); sub(/ .*/, "", n); print n, 0 }
    /^test cases: / { p = 0; f = 0; k = split($0, part, "|")
      for (i = 2; i <= k; i++) { split(part[i], w, " "); if (w[2] == "passed") p = w[1]; if (w[2] == "failed") f += w[1] }
      print p, f }' "$out" | tail -n 1)
  if [ -z "$counts" ]; then
    tail -n 40 "$out"
    echo "$1: ended with status $status and no summary"
    failed=$((failed + 1))
  else
    set -- $counts
    if [ "$2" != 0 ]; then cat "$out"; elif [ "$status" != 0 ]; then
      tail -n 20 "$out"
      echo "ended with status $status after its summary"
      set -- "$1" 1
    fi
    passed=$((passed + $1))
    failed=$((failed + $2))
  fi
  rm -f "$out"
}

# tell_times: `SECONDS NAME` lines to the list from which tests/run shows the slowest.
tell_times() {
  if [ -n "${BENTBOOK_TIMES:-}" ]; then sed "s/ / $suite: /" >>"$BENTBOOK_TIMES"; else cat >/dev/null; fi
}

# check NAME COMMAND…: one check of a suite; its output is shown when it fails.
check() {
  local name=$1 out from=${EPOCHREALTIME/[.,]/}
  shift
  if out=$("$@" 2>&1); then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "FAILED $name"
    [ -z "$out" ] || echo "$out" | tail -n 40
  fi
  echo "$(((${EPOCHREALTIME/[.,]/} - from) / 1000))" "$name" | awk '{ $1 = sprintf("%.3f", $1 / 1000); print }' | tell_times
}
