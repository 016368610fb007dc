# deps: core solver
# Random jobs of cutting (500 of them, under `tests/run long` 6 000), each cut again by SciPy's HiGHS from a statement of
# its own (flows along a stick): plans are whole, no bound is above the least cost, what is called proven is that cost,
# and all but one in a hundred that are not proven are that cost too.
. tests/lib/suite.sh
build native-release stock_rows
rows=build/native-release/tests/stock/stock_rows
share=$((long == 1 ? 3000 : 250))
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

for half in 0 1; do
  OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 bash -c \
    "'$rows' $share $((half * share)) | /usr/bin/python3 -B tests/stock/stock_checks.py" >"$made/$half" 2>&1 &
done
wait
over=0
for half in 0 1; do
  tail -n 20 "$made/$half"
  counts=$(sed -n 's/^stock: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/$half")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
  over=$((over + $(sed -n 's/^\([0-9]*\) over$/\1/p' "$made/$half")))
done

few_over() { [ "$over" -le $((share * 2 / 100)) ]; }
check "few cost more than the least" few_over

finish "$passed" "$failed"
