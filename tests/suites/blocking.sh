# deps: core fit
# What can go in, against an outside solid modeller (tests/blocking/check.mjs): the solids moved in samples along the
# said way. At least 150 cases that are free and 150 that are blocked, in random frames, and as many pairs of timbers
# along one line; swings, turned about the said pivot, and what gives way, tilted about its foot: at least 40 of either
# that are free, and swings that are stopped. Ten times as many under `tests/run long`. Then with all verdicts exchanged,
# which must fail.
. tests/lib/suite.sh
build native-release blocking_rows swing_rows
rows=build/native-release/tests/blocking/blocking_rows
swings=build/native-release/tests/blocking/swing_rows
modeller=$(bash cmake/deps.sh where modeller)
share=$((long == 1 ? 750 : 75))
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

for half in 1 2; do
  "$rows" "$share" "$half" | node tests/blocking/check.mjs "$modeller" >"$made/$half" 2>&1 &
done
"$swings" $((long == 1 ? 400 : 40)) 4 | node tests/blocking/check.mjs "$modeller" >"$made/swings" 2>&1 &
wait
for part in 1 2 swings; do
  cat "$made/$part"
  counts=$(sed -n 's/^blocking: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/$part")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
done

enough() {
  awk '/ free \(/ { f += $3; b += $(NF - 9) } END { print f " free, " b " blocked"; exit !(f >= 150 && b >= 150) }' "$made"/[12]
}
check "enough cases of either kind" enough

enough_swings() {
  sed -n 's/.* \([0-9]*\) spread, \([0-9]*\) swung), .*; \([0-9]*\) swings stopped;.*/\1 \2 \3/p' "$made/swings" |
    awk '{ print $1 " spread, " $2 " swung, " $3 " stopped"; ok = $1 >= 40 && $2 >= 80 && $3 >= 80 } END { exit !ok }'
}
check "enough swings and spreads" enough_swings

exchanged_fails() {
  "$rows" 4 3 | node tests/blocking/check.mjs "$modeller" wrong | tail -n 1 | tee "$made/wrong"
  grep -q '^blocking: 0 passed' "$made/wrong" || return
  "$swings" 4 3 | node tests/blocking/check.mjs "$modeller" wrong | tail -n 1 | tee "$made/wrong"
  grep -q '^blocking: 0 passed' "$made/wrong"
}
check "verdicts exchanged are found wrong, every one" exchanged_fails

finish "$passed" "$failed"
