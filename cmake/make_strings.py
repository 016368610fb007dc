#!/usr/bin/env python3
"""Makes the string table's C++ from assets/strings/*.tsv.

A row is `id<TAB>English<TAB>Spanish`; lines that start with # and empty lines are skipped. Slots are {name} or {0}.
A message that depends on a count has two rows, `id#one` and `id#other`; its count is the slot {n}.
Wrong tables stop the build: a duplicate id, a missing translation, slots that differ between the languages.

usage: make_strings.py OUT_DIR TABLE…    writes OUT_DIR/strings.gen.h and OUT_DIR/strings.gen.cpp
"""
import re
import sys
from pathlib import Path

LANGUAGES = ["en", "es"]
ID = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*(#(one|other))?\Z")
SLOT = re.compile(r"\{([a-z0-9_]+)\}")


def slots(text, where, errors):
    rest = SLOT.sub("", text)
    if "{" in rest or "}" in rest:
        errors.append(f"{where}: a brace that is no slot in: {text}")
    return set(SLOT.findall(text))


def read_tables(paths):
    """Returns ({id: {form: [text per language]}}, errors); form is 'one' or 'other'."""
    messages, errors, seen = {}, [], {}
    for path in paths:
        for number, line in enumerate(Path(path).read_text(encoding="utf-8").split("\n"), 1):
            where = f"{Path(path).name}:{number}"
            line = line.rstrip("\r")
            if not line.strip() or line.startswith("#"):
                continue
            cells = line.split("\t")
            if not ID.match(cells[0]):
                errors.append(f"{where}: '{cells[0]}' is no id (lower case words joined by _)")
                continue
            if cells[0] in seen:
                errors.append(f"{where}: id '{cells[0]}' stands already at {seen[cells[0]]}")
                continue
            seen[cells[0]] = where
            texts = cells[1:]
            if len(texts) != len(LANGUAGES) or any(not t.strip() for t in texts):
                errors.append(f"{where}: '{cells[0]}' wants {len(LANGUAGES)} texts ({', '.join(LANGUAGES)})")
                continue
            if any(t != t.strip() for t in texts):
                errors.append(f"{where}: '{cells[0]}' has blanks at an end")
            used = [slots(t, where, errors) for t in texts]
            for language, s in zip(LANGUAGES[1:], used[1:]):
                if s != used[0]:
                    odd = ", ".join("{%s}" % x for x in sorted(s ^ used[0]))
                    errors.append(f"{where}: '{cells[0]}' has {odd} in one of {LANGUAGES[0]}, {language} only")
            name, _, form = cells[0].partition("#")
            messages.setdefault(name, {})[form or "other"] = (texts, used[0], where, bool(form))
    for name, forms in messages.items():
        counted = any(f[3] for f in forms.values())
        if counted and (set(forms) != {"one", "other"} or not all(f[3] for f in forms.values())):
            errors.append(f"{forms[next(iter(forms))][2]}: '{name}' wants both #one and #other, and no plain row")
        elif counted and forms["one"][1] | {"n"} != forms["other"][1] | {"n"}:
            errors.append(f"{forms['one'][2]}: '{name}' has other slots in #one than in #other")
    return messages, errors


def constant(name):
    return "k" + "".join(word.capitalize() for word in name.split("_"))


def literal(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


HEADER = """#pragma once
// Made by cmake/make_strings.py from assets/strings/*.tsv.
#include <cstdint>

namespace bentbook {{

enum class Msg : std::uint16_t {{
{ids}
}};

}}  // namespace bentbook
"""

SOURCE = """// Made by cmake/make_strings.py from assets/strings/*.tsv.
#include "words/strings_table.h"

namespace bentbook::strings {{

constexpr Row kTable[] = {{
{rows}
}};

const Row* rows() {{ return kTable; }}
std::size_t row_count() {{ return sizeof kTable / sizeof kTable[0]; }}

}}  // namespace bentbook::strings
"""


def write_if_changed(path, text):
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")


def main():
    out = Path(sys.argv[1])
    messages, errors = read_tables(sorted(sys.argv[2:]))
    if not messages:
        errors.append("no message in any table")
    constants = {}
    for name in messages:
        if constants.setdefault(constant(name), name) != name:
            errors.append(f"'{name}' and '{constants[constant(name)]}' give one constant")
    if errors:
        for error in errors:
            print(f"strings: {error}", file=sys.stderr)
        return 1
    names = sorted(messages)
    rows = []
    for name in names:
        forms = messages[name]
        one = forms.get("one", forms["other"])[0]
        other = forms["other"][0]
        cells = ", ".join("{%s, %s}" % (literal(a), literal(b)) for a, b in zip(one, other))
        rows.append(f"    {{{literal(name)}, {{{cells}}}}},")
    out.mkdir(parents=True, exist_ok=True)
    write_if_changed(out / "strings.gen.h", HEADER.format(ids="\n".join(f"  {constant(n)}," for n in names)))
    write_if_changed(out / "strings.gen.cpp", SOURCE.format(rows="\n".join(rows)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
