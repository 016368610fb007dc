# deps: core native fonts paper
# What is printed, read back by outside readers: every number of a timber's sheet stands on its page, files are well
# formed, no word stands on another, two runs give the same bytes.
. tests/lib/suite.sh
build native-release bentbook
program=build/native-release/native-app/bentbook
out=$(/usr/bin/python3 -B tests/paper/paper_checks.py "$program" assets/strings 2>&1)
status=$?
counts=$(sed -n 's/^paper checks: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' <<<"$out")
if [ -z "$counts" ]; then
  echo "$out" | tail -n 40
  echo "ended with status $status and no summary"
  finish 0 1
fi
[ "${counts#* }" = 0 ] || echo "$out"
finish ${counts% *} ${counts#* }
