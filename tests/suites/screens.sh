# deps: core native fonts
. tests/lib/suite.sh
build native-debug screens_tests
run_catch build/native-debug/tests/screens/screens_tests
finish "$passed" "$failed"
