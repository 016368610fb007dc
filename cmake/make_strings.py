#!/usr/bin/env python3
"""Makes the string table's C++, and the words of the page, from assets/strings.

languages.tsv has a line a language: `tag<TAB>own name<TAB>counts that take the singular`. Each has a folder named by
its tag. The first is the reference: every other folder has the same files, each with the same ids and slots.
A row is `id<TAB>text`; lines that start with # and empty lines are skipped. Slots are {name} or {0}.
A message that depends on a count has two rows, `id#one` and `id#other`; its count is the slot {n}.
page.tsv holds the words of the page itself: they go to page_words.json, not into the app.
Wrong tables stop the build: a duplicate id, a missing translation, slots that differ between the languages.

usage: make_strings.py OUT_DIR STRINGS_DIR    writes OUT_DIR/strings.gen.h, strings.gen.cpp (the first language's texts),
    all_texts.gen.cpp (those of all), texts_TAG.txt (those of another, for the page) and page_words.json
"""
import json
import re
import sys
from pathlib import Path

TAG = re.compile(r"[a-z]{2,3}(-[A-Z][a-z]{3})?(-[A-Z]{2})?\Z")
ID = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*(#(one|other))?\Z")
SLOT = re.compile(r"\{([a-z0-9_]+)\}")
PAGE = "page.tsv"


def lines_of(path):
    """(where, cells) of every row."""
    for number, line in enumerate(path.read_text(encoding="utf-8").split("\n"), 1):
        line = line.rstrip("\r")
        if line.strip() and not line.startswith("#"):
            yield f"{path.parent.name}/{path.name}:{number}", line.split("\t")


def read_languages(folder, errors):
    """[(tag, own name, {counts that take the singular})]"""
    languages = []
    for where, cells in lines_of(folder / "languages.tsv"):
        if len(cells) != 3 or not TAG.match(cells[0]) or not cells[1].strip():
            errors.append(f"{where}: wants a BCP 47 tag, the language's own name, and the counts of its singular")
        elif not all(n.isdigit() and int(n) < 64 for n in cells[2].split()):
            errors.append(f"{where}: counts that take the singular are whole numbers below 64")
        elif cells[0] in [tag for tag, *_ in languages]:
            errors.append(f"{where}: '{cells[0]}' stands there twice")
        else:
            languages.append((cells[0], cells[1], {int(n) for n in cells[2].split()}))
    if not languages:
        errors.append("no language in languages.tsv")
    return languages


def slots(text, where, errors):
    rest = SLOT.sub("", text)
    if "{" in rest or "}" in rest:
        errors.append(f"{where}: a brace that is no slot in: {text}")
    return set(SLOT.findall(text))


def read_folder(folder, errors):
    """{id: (text, slots, file, where)} of one language."""
    rows = {}
    for path in sorted(folder.glob("*.tsv")):
        for where, cells in lines_of(path):
            name = cells[0]
            if not ID.match(name):
                errors.append(f"{where}: '{name}' is no id (lower case words joined by _)")
            elif name in rows:
                errors.append(f"{where}: id '{name}' stands already at {rows[name][3]}")
            elif len(cells) != 2 or not cells[1].strip():
                errors.append(f"{where}: '{name}' wants one text")
                rows[name] = ("", None, path.name, where)
            else:
                if cells[1] != cells[1].strip(" "):
                    errors.append(f"{where}: '{name}' has blanks at an end")
                rows[name] = (cells[1], slots(cells[1], where, errors), path.name, where)
    return rows


def compare(tag, rows, reference_tag, reference, errors):
    for name, (_, used, file, where) in rows.items():
        if name not in reference or reference[name][2] != file:
            errors.append(f"{where}: '{name}' is not in {reference_tag}/{file}")
        elif used is not None and reference[name][1] is not None and used != reference[name][1]:
            odd = ", ".join("{%s}" % slot for slot in sorted(used ^ reference[name][1]))
            errors.append(f"{where}: '{name}' has {odd} in one of {reference_tag}, {tag} only")
    for name, (_, _, file, _) in reference.items():
        if name not in rows:
            errors.append(f"{tag}/{file}: '{name}' is missing")


def check_counts(rows, errors):
    for name, (_, used, _, where) in rows.items():
        base, _, form = name.partition("#")
        if not form:
            continue
        partner = rows.get(base + ("#other" if form == "one" else "#one"))
        if partner is None or base in rows:
            errors.append(f"{where}: '{base}' wants both #one and #other, and no plain row")
        elif form == "one" and None not in (used, partner[1]) and used | {"n"} != partner[1] | {"n"}:
            errors.append(f"{where}: '{base}' has other slots in #one than in #other")


def read_strings(folder):
    """Returns (languages, [rows of each language], errors)."""
    errors = []
    languages = read_languages(folder, errors)
    tables = [read_folder(folder / tag, errors) for tag, *_ in languages]
    for (tag, *_), rows in zip(languages[1:], tables[1:]):
        compare(tag, rows, languages[0][0], tables[0], errors)
    if tables:
        check_counts(tables[0], errors)
        if not tables[0]:
            errors.append("no message in any table")
    return languages, tables, errors


def constant(name):
    return "k" + "".join(word.capitalize() for word in re.split("[_-]", name))


def literal(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


HEADER = """#pragma once
// Made by cmake/make_strings.py from assets/strings.
#include <cstddef>
#include <cstdint>

namespace bentbook {{

enum class Language : std::uint8_t {{ {languages} }};
inline constexpr std::size_t kLanguageCount = {count};

enum class Msg : std::uint16_t {{
{ids}
}};

}}  // namespace bentbook
"""

SOURCE = """// Made by cmake/make_strings.py from assets/strings.
#include "words/strings_table.h"

// A language's texts are one literal, longer than a compiler need take; ours do.
#pragma GCC diagnostic ignored "-Woverlength-strings"

namespace bentbook::strings {{

constexpr LanguageLine kLanguages[kLanguageCount] = {{
{languages}
}};

const LanguageLine* languages() {{ return kLanguages; }}

// Each text ends with a zero byte.
const char kIds[] =
{ids};

{first}
constexpr std::uint16_t kCounted[] = {{{counted}}};
const std::uint16_t* counted() {{ return kCounted; }}
std::size_t counted_count() {{ return {counted_count}; }}
std::size_t row_count() {{ return {row_count}; }}

}}  // namespace bentbook::strings
"""

ALL_TEXTS = """// Made by cmake/make_strings.py from assets/strings.
#include "words/strings_table.h"

// A language's texts are one literal, longer than a compiler need take; ours do.
#pragma GCC diagnostic ignored "-Woverlength-strings"

namespace bentbook::strings {{
namespace {{

{blobs}
constexpr Texts kTexts[kLanguageCount] = {{
{texts}
}};

}}  // namespace

const Texts* texts() {{ return kTexts; }}

}}  // namespace bentbook::strings
"""


def write_if_changed(path, text):
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")


def header(languages, names):
    return HEADER.format(languages=", ".join(constant(tag) for tag, *_ in languages), count=len(languages),
                         ids="\n".join(f"  {constant(name)}," for name in names))


def blob(texts):
    return "\n".join("    " + literal(text)[:-1] + '\\0"' for text in texts) or '    ""'


def counted(names, rows):
    """Places of the messages that have plural forms."""
    return [i for i, name in enumerate(names) if name not in rows]


def texts_of(rows, names):
    """(each message, for many where it is counted; the singulars of those that are counted)"""
    return ([rows[name if name in rows else name + "#other"][0] for name in names],
            [rows[names[i] + "#one"][0] for i in counted(names, rows)])


def arrays(base, rows, names):
    every, ones = texts_of(rows, names)
    return f"const char {base}Texts[] =\n{blob(every)};\nconst char {base}Ones[] =\n{blob(ones)};\n"


def source(languages, tables, names):
    lines = [f"    {{{literal(tag)}, {literal(own)}, 0x{sum(1 << n for n in singular):x}}},"
             for tag, own, singular in languages]
    places = counted(names, tables[0])
    return SOURCE.format(languages="\n".join(lines), ids=blob(names), first=arrays("kFirst", tables[0], names),
                         counted=", ".join(map(str, places)) or "0", counted_count=len(places), row_count=len(names))


def all_texts(languages, tables, names):
    bases = [constant(tag) for tag, *_ in languages[1:]]
    return ALL_TEXTS.format(blobs="\n".join(arrays(base, rows, names) for base, rows in zip(bases, tables[1:])),
                            texts="\n".join(f"    {{{base}Texts, {base}Ones}}," for base in ["kFirst", *bases]))


def texts_file(rows, names):
    """As the arrays hold them: each text ended by a zero byte."""
    every, ones = texts_of(rows, names)
    return "".join(text + "\0" for text in every + ones)


def page_words(languages, tables):
    """[{tag, words: {id: text}}] in the order of the languages."""
    return json.dumps([{"tag": tag, "words": {name: row[0] for name, row in rows.items() if row[2] == PAGE}}
                       for (tag, *_), rows in zip(languages, tables)], ensure_ascii=False, indent=1)


def main():
    out = Path(sys.argv[1])
    languages, tables, errors = read_strings(Path(sys.argv[2]))
    names = sorted({name.partition("#")[0] for name, row in tables[0].items() if row[2] != PAGE}) if tables else []
    constants = {}
    for name in names:
        if constants.setdefault(constant(name), name) != name:
            errors.append(f"'{name}' and '{constants[constant(name)]}' give one constant")
    if errors:
        for error in errors:
            print(f"strings: {error}", file=sys.stderr)
        return 1
    out.mkdir(parents=True, exist_ok=True)
    write_if_changed(out / "strings.gen.h", header(languages, names))
    write_if_changed(out / "strings.gen.cpp", source(languages, tables, names))
    write_if_changed(out / "all_texts.gen.cpp", all_texts(languages, tables, names))
    for (tag, *_), rows in zip(languages[1:], tables[1:]):
        write_if_changed(out / f"texts_{tag}.txt", texts_file(rows, names))
    write_if_changed(out / "page_words.json", page_words(languages, tables))
    return 0


if __name__ == "__main__":
    sys.exit(main())
