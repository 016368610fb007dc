# deps: core fit roofs
# Roofs of any plan. Their lines against the straight skeleton of a general-purpose geometry library where pitches are
# alike (400 random plans, under `tests/run long` 20 000); their timbers built again from their numbers by the outside
# solid modeller of tests/fit (320 and 3 200 plans, a plan is one check): hips, valleys, jacks, ridge pieces and dormers share no
# wood but as the roof says, and what it says to touch does. With every end B cut too long it must not.
. tests/lib/suite.sh
build native-release roof_rows skeleton_rows
rows=build/native-release/tests/roofs/roof_rows
modeller=$(bash cmake/deps.sh where modeller)
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

take_counts() { # NAME FILE
  local counts
  tail -n 12 "$2"
  counts=$(sed -n "s/^$1: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p" "$2")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
}

build/native-release/tests/roofs/skeleton_rows $((long == 1 ? 20000 : 400)) 1 >"$made/skeleton" 2>&1
take_counts skeleton "$made/skeleton"

check_rows() { "$rows" "$@" | node tests/fit/check.mjs "$modeller"; }
share=$((long == 1 ? 800 : 80))
seed=1
for kind in one_pitch unlike gables dormers; do
  check_rows "$share" $((seed += 1)) "$kind" >"$made/$kind" 2>&1
  take_counts fit "$made/$kind"
done

# A plan drawn at random may hold lines too short for its timbers: those clash, which is said; most must not.
few_clashes() {
  local clashing
  clashing=$(sed -n 's/^\([0-9]*\) of [0-9]* with clashes$/\1/p' "$made"/{one_pitch,unlike,gables,dormers} | awk '{ s += $1 } END { print s + 0 }')
  echo "$clashing of $((4 * share)) plans with clashes"
  [ "$clashing" -le $((4 * share / 8)) ]
}
check "few plans clash" few_clashes

too_long_fails() {
  local found
  check_rows 12 9 one_pitch 0.03125 >"$made/wrong" 2>&1
  tail -n 2 "$made/wrong"
  found=$(sed -n 's/^fit: [0-9]* passed, \([0-9]*\) failed$/\1/p' "$made/wrong")
  [ "${found:-0}" = 12 ]
}
check "ends 1/32 in too long are found in every plan" too_long_fails
finish "$passed" "$failed"
