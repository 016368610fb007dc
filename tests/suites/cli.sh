# deps: core native fonts solver
# The installed program from outside: its JSON against printed tables and an outside solver, its refusals, and its
# README, which must list each key that it answers with and no other.
. tests/lib/suite.sh
build native-release bentbook
program=build/native-release/native-app/bentbook
out=$(/usr/bin/python3 -B tests/cli/cli_checks.py "$program" native-app/README.md 2>&1)
status=$?
counts=$(sed -n 's/^cli checks: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' <<<"$out")
if [ -z "$counts" ]; then
  echo "$out" | tail -n 40
  echo "ended with status $status and no summary"
  finish 0 1
fi
[ "${counts#* }" = 0 ] || echo "$out"
finish ${counts% *} ${counts#* }
