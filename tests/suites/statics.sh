# deps: core solver
# What stands, judged from outside: random partial frames, their null spaces (dimension and space) by SciPy's singular
# values, their load factors by SciPy's linprog; a set is one check. Among them sets without a mechanism that fall, since
# their joints hold one way only. Then sixty with one timber's joints left out: it can move
# then, so nearly all must fail (not those in which nothing was held).
. tests/lib/suite.sh
build native-release static_rows
rows=build/native-release/tests/statics/static_rows
share=$((long == 1 ? 9000 : 1000))
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

for half in 1 2; do
  OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 bash -c \
    "'$rows' $share $half | /usr/bin/python3 -B tests/statics/statics_checks.py $share 120 40 60 60" >"$made/$half" 2>&1 &
done
wait
for half in 1 2; do
  tail -n 20 "$made/$half"
  counts=$(sed -n 's/^statics: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/$half")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
done

left_out_is_found() {
  "$rows" 60 3 wrong | /usr/bin/python3 -B tests/statics/statics_checks.py 60 1 0 0 0 >"$made/wrong"
  tail -n 1 "$made/wrong"
  counts=$(sed -n 's/^statics: \([0-9]*\) passed, \([0-9]*\) failed$/\2/p' "$made/wrong")
  [ "${counts:-0}" -ge 50 ]
}
check "joints left out are found" left_out_is_found

finish "$passed" "$failed"
