# deps: core wasm
# The core's tests as WebAssembly, in Node.
. tests/lib/suite.sh
build wasm-debug core_tests
run_catch node --no-experimental-fetch build/wasm-debug/tests/core_tests.js
finish "$passed" "$failed"
