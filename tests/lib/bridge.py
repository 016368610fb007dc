"""Reads the enumerations that core and the page's scripts both number: headers against wasm-app/web/*.js.

Fails where a name or its number differs. Prints `bridge: N passed, N failed` (enumerations).
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

# enumeration, its header, the constant in a script, the script
SAME = [("Role", "core/ui/registry.h", "Role", "wasm-app/web/bridge.js"),
        ("Touch", "core/ui/registry.h", "Touch", "wasm-app/web/bridge.js"),
        ("Kind", "core/ui/registry.h", "Act", "wasm-app/web/bridge.js"),
        ("EventKind", "core/ui/platform.h", "Event", "wasm-app/web/bridge.js"),
        ("Hindrance", "core/ui/platform.h", "Hindrance", "wasm-app/web/bridge.js"),
        ("Key", "core/ui/input.h", "keys", "wasm-app/web/keys.js")]


def of_header(text, name):
    """Enumerators by number, `kSetText` as `setText`."""
    body = re.search(r"enum class %s\b[^{]*\{(.*?)\}" % name, text, re.S)[1]
    words = re.sub(r"//.*", "", body).replace("\n", " ").split(",")
    return {w.strip()[1].lower() + w.strip()[2:]: n for n, w in enumerate(w for w in words if w.strip())}


def of_script(text, name):
    """The same of a script's constant. A browser says ArrowLeft for the key that core calls kLeft."""
    body = re.search(r"const %s = \{(.*?)\};" % name, text, re.S)[1]
    found = {}
    for key, number in re.findall(r"(\w+): (\d+)", body):
        key = key.removeprefix("Arrow")
        found[key[0].lower() + key[1:]] = int(number)
    return found


def main():
    failed = 0
    for enum, header, constant, script in SAME:
        there = of_header((ROOT / header).read_text(encoding="utf-8"), enum)
        here = of_script((ROOT / script).read_text(encoding="utf-8"), constant)
        if here != there:
            failed += 1
            print(f"{script}: {constant} is not {enum} of {header}: {sorted(set(here.items()) ^ set(there.items()))}")
    print(f"bridge: {len(SAME) - failed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
