# deps: core
# Who may include whom: DEVELOPERS.md's table, read off every #include.
. tests/lib/suite.sh
/usr/bin/python3 tests/lib/includes.py
