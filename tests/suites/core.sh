# deps: core
. tests/lib/suite.sh
build native-debug core_tests
run_catch build/native-debug/tests/core_tests
finish "$passed" "$failed"
