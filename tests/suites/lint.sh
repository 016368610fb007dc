# deps: core lint native fonts
# Formatting and clang-tidy, which wants the generated headers.
. tests/lib/suite.sh
build native-debug generated
/usr/bin/python3 tests/lib/lint.py
