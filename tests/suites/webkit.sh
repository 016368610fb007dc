# deps: core wasm fonts page webkit
# The page in WebKit (MiniBrowser under Xvfb).
. tests/lib/suite.sh
[ -n "${BENTBOOK_DIST:-}" ] || build wasm-release dist
. tests/web/run_node.sh
run_node tests/web/webkit.test.mjs
finish "$passed" "$failed"
