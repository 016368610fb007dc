# deps: core
# Numbers that both core and the page's scripts have, and the page's tasks with a Worker that breaks (tests/bridge).
. tests/lib/suite.sh
check "the scripts' numbers are the headers'" /usr/bin/python3 tests/lib/bridge.py
. tests/web/run_node.sh
run_node tests/bridge/*.test.mjs
finish "$passed" "$failed"
