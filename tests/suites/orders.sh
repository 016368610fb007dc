# deps: core graphs solver
# Searched orders of random small frames with wishes (2 000 of them, under `tests/run long` 20 000), audited by code that
# shares nothing with the search (tests/orders/audit.h, tests/orders/order_audit.py): solids moved in samples, every state
# judged afresh, precedence and cycles by NetworkX, forces in some states by SciPy. Every sixth is a building without its
# roof, which stands when its pegs are driven; the others are a few timbers that nearly always fall when whole. Then the
# same orders read backward, of which most must be faulted. Last, orders of two bents against every order and every choice
# of places for temporaries; and frames as they are built, the large ones under `tests/run long`.
. tests/lib/suite.sh
build native-release orders_rows orders_tests
rows=build/native-release/tests/orders/orders_rows
share=$((long == 1 ? 10000 : 1000))
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

for half in 1 2; do
  "$rows" "$share" "$half" >"$made/rows$half" && /usr/bin/python3 tests/orders/order_audit.py <"$made/rows$half" >"$made/$half" 2>&1 &
done
wait
for half in 1 2; do
  cat "$made/$half"
  counts=$(sed -n 's/^orders: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/$half")
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
done

found_enough() {
  local found
  found=$(awk '/ orders found/ { n += $1 } END { print n + 0 }' "$made"/[12])
  echo "$found orders found"
  [ "$found" -ge $((share / 12)) ]
}
check "many buildings have an order" found_enough

backward_fails() {
  /usr/bin/python3 tests/orders/order_audit.py broken <"$made/rows1" | tail -n 1 | tee "$made/wrong"
  set -- $(sed -n 's/^orders: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$made/wrong")
  [ "$2" -gt "$1" ]
}
check "orders read backward are faulted" backward_fails

run_catch build/native-release/tests/orders/orders_tests
[ "$long" = 0 ] || run_catch build/native-release/tests/orders/orders_tests "[.long]"
finish "$passed" "$failed"
