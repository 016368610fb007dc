# deps: web
# What the page keeps, without a browser: its scripts on an IndexedDB in memory, with faults, tabs and copied phones.
. tests/lib/suite.sh
. tests/web/run_node.sh
run_node tests/store/*.test.mjs
finish "$passed" "$failed"
