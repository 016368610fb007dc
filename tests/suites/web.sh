# deps: core wasm fonts page web
# The page in Chromium as a phone: Playwright drives it by touch and reads it through the accessibility mirror.
. tests/lib/suite.sh
[ -n "${BENTBOOK_DIST:-}" ] || build wasm-release dist
. tests/web/run_node.sh
run_node $(ls tests/web/*.test.mjs | grep -v /webkit)
finish "$passed" "$failed"
