# deps: core
# Properties over many random cases with fixed seeds: 10^5, under `tests/run long` 10^6.
. tests/lib/suite.sh
build native-release property_tests
run_catch build/native-release/tests/property_tests
finish "$passed" "$failed"
