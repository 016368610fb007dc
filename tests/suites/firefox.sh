# deps: core wasm fonts page firefox
# The page in Firefox (under Xvfb): drawn, computing, with no network, killed.
. tests/lib/suite.sh
[ -n "${BENTBOOK_DIST:-}" ] || build wasm-release dist
. tests/web/run_node.sh
run_node tests/web/firefox.test.mjs
finish "$passed" "$failed"
