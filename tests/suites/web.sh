# deps: core wasm fonts page web
# The page in Chromium as a phone: Playwright drives it by touch and reads it through the accessibility mirror.
. tests/lib/suite.sh
[ -n "${BENTBOOK_DIST:-}" ] || build wasm-release dist
BENTBOOK_NPM=$(bash cmake/deps.sh where npm)
export BENTBOOK_NPM
. tests/web/run_node.sh
run_node tests/web/*.test.mjs
finish "$passed" "$failed"
