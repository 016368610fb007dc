# deps: core native fonts fit
# Random frame plans, every timber built again by an outside solid modeller from its sheet alone, placed and
# intersected (tests/fit/check.mjs): 520 plans in which the frame finds no clash, under `tests/run long` 5 200; a plan is
# one check. Then plans in which it finds some, each as large as it says; and some with every end B cut too long, which
# must fail. Of one plan in five, and of plans whose timbers are rough and hang from other reference faces, every timber
# is also cut again by its steps' numbers alone (tests/fit/rebuild.mjs): the same solid. With a fence from the wrong
# face, a shoulder that is not cut, or any one number off, it must not be.
. tests/lib/suite.sh
build native-release fit_rows bentbook
rows=build/native-release/tests/fit/fit_rows
modeller=$(bash cmake/deps.sh where modeller)
share=$((long == 1 ? 2600 : 260))
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

check_steps() { "$rows" "$@" | node tests/fit/check.mjs "$modeller" steps; }
check_rows() { "$rows" "$@" | node tests/fit/check.mjs "$modeller"; }

for half in 1 2; do
  check_rows "$share" "$half" clean >"$made/$half" 2>&1 &
done
wait
for half in 1 2; do
  cat "$made/$half"
  counts=$(sed -n 's/^fit: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/$half")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
done

# A plan drawn at random may put a brace where a girt runs: those are passed over, and must stay the lesser part.
few_clashes() {
  local over
  over=$(sed -n 's/^[0-9]* plans, \([0-9]*\) passed over.*/\1/p' "$made"/[12] | awk '{ s += $1 } END { print s + 0 }')
  echo "$over plans passed over for $((2 * share)) checked"
  [ "$over" -le $((share / 2)) ]
}
check "few plans are passed over" few_clashes

roofs_fit() { check_rows $((long == 1 ? 400 : 20)) 8 roofs | tee "$made/roofs"; }
check "roofs of any plan fit, and are cut by their steps' numbers alone" roofs_fit
tail -n 3 "$made/roofs"

dormers_fit() { check_rows $((long == 1 ? 300 : 15)) 11 dormers | tee "$made/dormers"; }
check "roofs with dormers fit, and are cut by their steps' numbers alone" dormers_fit
tail -n 3 "$made/dormers"

hips_fit() { check_rows $((long == 1 ? 300 : 15)) 9 hips | tee "$made/hips"; }
check "hip-ended frames fit, and are cut by their steps' numbers alone" hips_fit
tail -n 3 "$made/hips"

check "clashes are as large as the frame says" check_rows 16 3 clashing

# A plan whose every end B stands in a mortise deeper than its tenon fits with 1/32 in too much, and may; with 3/8 in none.
too_long_fails() { # INCHES LEAST
  local found
  check_rows 12 4 clean "$1" >"$made/wrong"
  tail -n 2 "$made/wrong"
  found=$(sed -n 's/^fit: [0-9]* passed, \([0-9]*\) failed$/\1/p' "$made/wrong")
  [ "${found:-0}" -ge "$2" ]
}
check "ends 1/32 in too long are found in 11 plans of 12" too_long_fails 0.03125 11
check "ends 3/8 in too long are found in every plan" too_long_fails 0.375 12

cut_by_steps() { check_steps $((long == 1 ? 200 : 16)) 5 turned | tee "$made/turned"; }
check "rough timbers with other reference faces are cut by their steps' numbers alone" cut_by_steps
tail -n 2 "$made/turned"

# Plans in which such a step is wrong must fail.
wrong_steps_fail() { # WRONG PLANS LEAST
  local found
  check_steps "$2" 6 turned "$1" >"$made/wrong"
  found=$(sed -n 's/^fit: [0-9]* passed, \([0-9]*\) failed$/\1/p' "$made/wrong")
  echo "$1: $found of $2 fail"
  [ "${found:-0}" -ge "$3" ]
}
check "a fence measured from the wrong face is found" wrong_steps_fail fence 6 6
check "a shoulder that is not cut is found" wrong_steps_fail shoulder 6 6
for number in table_deg tilt_deg stop_in depth_in from_in to_in fence_in far_in at_in off_in diameter_in overall_in; do
  check "one $number that is off is found" wrong_steps_fail "$number" 2 1
done

# Hips, valleys, jacks and what stands at their peak, from the numbers that the command line answers (tests/fit/corner.mjs);
# with every side cut half a degree off none may fit.
check_corners() { # COUNT [WRONG]
  node tests/fit/corner.mjs "$modeller" build/native-release/native-app/bentbook "$1" 7 ${2:+"$2"} >"$made/corners"
  tail -n 2 "$made/corners"
  corners=($(sed -n 's/^fit: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/corners"))
}
check_corners $((long == 1 ? 600 : 60))
passed=$((passed + ${corners[0]:-0}))
failed=$((failed + ${corners[1]:-1}))
[ "${corners[1]:-1}" = 0 ] || cat "$made/corners"
none_fits() {
  check_corners 12 0.5
  [ "${corners[0]:-1}" = 0 ]
}
check "side cuts half a degree off are found in every corner" none_fits

finish "$passed" "$failed"
