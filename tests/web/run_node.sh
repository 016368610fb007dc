# run_node FILE…: runs node:test files one after another and adds their counts to passed and failed.
run_node() {
  local out status
  out=$(mktemp)
  node --test --test-concurrency=1 --test-reporter=spec "$@" 2>&1 | tee "$out"
  status=${PIPESTATUS[0]}
  local p f
  p=$(sed -n 's/^ℹ pass //p' "$out" | tail -n 1)
  f=$(sed -n 's/^ℹ \(fail\|cancelled\) //p' "$out" | awk '{ n += $1 } END { print n + 0 }')
  # `✔ name (1234.5ms)`, at any depth that a test has
  sed -n 's/^ *[✔✖] \(.*\) (\([0-9.]*\)ms)$/\2 \1/p' "$out" | awk '{ $1 = sprintf("%.3f", $1 / 1000); print }' | tell_times
  rm -f "$out"
  if [ "$status" != 0 ] && [ "${f:-0}" = 0 ]; then f=1; fi
  passed=$((passed + ${p:-0}))
  failed=$((failed + f))
}
