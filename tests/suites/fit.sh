# deps: core fit
# Random frame plans, every timber built again by an outside solid modeller from its sheet alone, placed and
# intersected (tests/fit/check.mjs): 520 plans, under `tests/run long` 5 200. A plan is one check. Then the same with
# every end B cut 1/32 in too long, which must fail.
. tests/lib/suite.sh
build native-release fit_rows
rows=build/native-release/tests/fit/fit_rows
modeller=$(bash cmake/deps.sh where modeller)
share=$((long == 1 ? 2600 : 260))
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

check_rows() { "$rows" "$@" | node tests/fit/check.mjs "$modeller"; }

for half in 1 2; do
  check_rows "$share" "$half" >"$out/$half" 2>&1 &
done
wait
for half in 1 2; do
  cat "$out/$half"
  counts=$(sed -n 's/^fit: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$out/$half")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
done

solved=$(sed -n 's/^\([0-9]*\) plans solved, [0-9]* refused, \([0-9]*\) without a clash.*/\1 \2/p' "$out"/[12] |
  awk '{ s += $1; c += $2 } END { print s, c }')
enough() { echo "$1 plans solved, $2 of them without a clash"; [ "$1" -ge 500 ] && [ "$2" -ge $(($1 * 3 / 4)) ]; }
check "at least 500 plans, three quarters without a clash" enough $solved

too_long_fails() {
  check_rows 12 3 0.03125 >"$out/wrong"
  local status=$?
  tail -n 2 "$out/wrong"
  [ "$status" != 0 ] && grep -q '^fit: 0 passed, 12 failed$' "$out/wrong"
}
check "ends 1/32 in too long are found in every plan" too_long_fails

finish "$passed" "$failed"
