# deps: core wasm fonts page web paper
# The page in Chromium as a phone: Playwright drives it by touch and reads it through the accessibility mirror.
. tests/lib/suite.sh
[ -n "${BENTBOOK_DIST:-}" ] || build wasm-release dist
. tests/web/run_node.sh
# The kill test waits for its browsers most of the time: it goes beside the others.
kills=$(mktemp)
(
  passed=0 failed=0
  run_node tests/web/shop_kill.test.mjs
  echo "lane: $passed $failed"
) >"$kills" 2>&1 &
build native-debug hostile_logs
run_node $(ls tests/web/*.test.mjs | grep -v -e /webkit -e /firefox -e /shop_kill)
wait
cat "$kills"
set -- $(sed -n 's/^lane: //p' "$kills")
rm -f "$kills"
finish "$((passed + ${1:-0}))" "$((failed + ${2:-1}))"
