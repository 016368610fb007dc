# deps: core lint native fonts
# Formatting and clang-tidy. Everything native is built first: clang-tidy wants the generated headers.
. tests/lib/suite.sh
build native-debug everything
/usr/bin/python3 tests/lib/lint.py
