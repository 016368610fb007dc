# deps: core
# The core's tests, under AddressSanitizer and UndefinedBehaviorSanitizer: one build that serves both.
. tests/lib/suite.sh
build native-asan core_tests
export ASAN_OPTIONS=detect_stack_use_after_return=1:strict_string_checks=1 UBSAN_OPTIONS=print_stacktrace=1
run_catch build/native-asan/tests/core_tests
finish "$passed" "$failed"
