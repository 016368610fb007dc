"""Reads every #include of the project's own code against the table of who may lean on what.

A file fails with each include that the table does not list. Prints `includes: N passed, N failed` (files).
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

# folder of core/ -> folders of core/ that it may include (itself always)
BELOW = {}
CHAIN = ["numeric", "measure", "geometry", "draw", "cut", "roof", "frame", ("shop", "raising", "stock"), "book",
         "model"]
lower = []
for step in CHAIN:
    names = step if isinstance(step, tuple) else (step,)
    for name in names:
        BELOW[name] = set(lower)
    lower += names
BELOW["book"] -= {"draw"}
BELOW["paper"] = {"numeric", "measure", "geometry", "draw"}
BELOW["answers"] = set(lower) | {"paper"}
BELOW["render"] = {"numeric", "geometry", "draw"}
BELOW["screens"] = set(lower) | {"answers", "paper", "render"}

UI = {"render", "screens"}
# what is not of our own -> who may include it ("core/x", "native-app", "wasm-app", "wasm-app/worker", "tests")
OUTSIDE = [
    (r"imgui.*|imstb_.*", {"core/render", "core/screens", "native-app", "wasm-app"}),
    (r"SDL.*", {"native-app", "wasm-app"}),
    (r"(GLES\d?|EGL|GL)/.*", {"core/render", "native-app", "wasm-app"}),
    (r"emscripten.*", {"wasm-app", "wasm-app/worker"}),
    (r"rapidjson/.*|nlohmann/.*|yyjson.*", {"core/book", "core/answers", "tests"}),
    (r"bentbook_libm\.h", {"core/numeric", "tests"}),
    (r"catch_amalgamated\.hpp", {"tests"}),
    (r"qrcodegen\.h", {"core/paper"}),
    (r"Eigen/.*|lp_lib\.h", {"core/raising"}),
    (r"tl/.*", {"core/numeric"}),
]
# Nothing in core asks for a clock, a random number, a file, the network, a thread or the locale; mathematics comes from
# numeric/libm.h alone; sstream and regex are dear to download.
NEVER_IN_CORE = set("""chrono ctime time.h random locale clocale locale.h fstream filesystem iostream istream ostream
  sstream regex iomanip thread mutex condition_variable future atomic cmath math.h tgmath.h complex valarray format
  source_location unistd.h sys/time.h sys/socket.h execution codecvt""".split())
# strtod, for the one double that a file may hold: never under another locale, since nothing here sets one.
EXCEPT = {("core/book/json_text.cpp", "cstdlib")}
NEVER_BELOW_SCREENS = {"cstdio", "stdio.h", "cstdlib", "stdlib.h", "exception", "stdexcept", "typeinfo"}

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)


def home(path):
    """The table's name for the place where a file lives. The bench measures an empty page of the same stack."""
    parts = path.relative_to(ROOT).parts
    if parts[0] == "core":
        return "core/" + parts[1]
    if parts[:2] == ("wasm-app", "worker"):
        return "wasm-app/worker"
    if parts[:2] == ("tests", "bench"):
        return "wasm-app"
    return parts[0]


def core_target(name):
    first = name.split("/")[0]
    return first if "/" in name and first in BELOW else None


def wrong(path, where, quote, name):
    """Why `path` may not include `name`, or None."""
    if ".." in name.split("/"):
        return "includes are written from core/ down"
    if quote == '"' and (path.parent / name).is_file() and "/" not in name:
        return "includes are written from core/ down" if where.startswith("core/") else None
    target = core_target(name)
    if target:
        if where == "wasm-app/worker":
            return f"the Worker's build has no {target}" if target in UI else None
        if not where.startswith("core/"):
            return None
        own = where[5:]
        return None if target == own or target in BELOW[own] else f"{own}/ does not lean on {target}/"
    for pattern, allowed in OUTSIDE:
        if re.fullmatch(pattern, name):
            return None if where in allowed else f"{where}/ does not see {name}"
    for shell, other in (("native-app", "wasm-app"), ("wasm-app", "native-app")):
        if where.startswith(shell) and name.startswith(other):
            return "the shells never include each other"
    if (path.relative_to(ROOT).as_posix(), name) in EXCEPT:
        return None
    if where.startswith("core/"):
        if name.startswith(("native-app", "wasm-app", "tests")):
            return "core stands below the shells and the tests"
        if name in NEVER_IN_CORE or (where[5:] not in UI and name in NEVER_BELOW_SCREENS):
            return "not in core"
        if quote == '"' and not name.startswith("screens/imgui_config"):
            return "no such folder in the table"
    return None


def check(path):
    where = home(path)
    if where.startswith("core/") and where[5:] not in BELOW:
        return [f"{path.relative_to(ROOT)}: the folder {where} is not in the table"]
    text = path.read_text(encoding="utf-8")
    found = []
    for match in INCLUDE.finditer(text):
        reason = wrong(path, where, match[1], match[2])
        if reason:
            line = text.count("\n", 0, match.start(2)) + 1
            found.append(f"{path.relative_to(ROOT)}:{line}: {match[2]}: {reason}")
    return found


def self_test():
    """The table must be able to fail: each of these has to be refused."""
    bad = [("core/measure/x.cpp", '"', "cut/saw.h"), ("core/cut/x.cpp", '"', "book/kit.h"),
           ("core/shop/x.cpp", '"', "stock/order.h"), ("core/screens/x.cpp", "<", "SDL.h"),
           ("core/screens/x.cpp", "<", "rapidjson/document.h"), ("core/roof/x.cpp", "<", "imgui.h"),
           ("core/roof/x.cpp", "<", "cmath"), ("core/answers/x.cpp", "<", "chrono"),
           ("core/render/x.cpp", "<", "emscripten.h"), ("native-app/x.cpp", '"', "wasm-app/page.h"),
           ("core/frame/x.cpp", "<", "Eigen/Dense"),
           ("wasm-app/worker/x.cpp", '"', "screens/app.h"), ("core/paper/x.cpp", '"', "answers/words.h")]
    good = [("core/roof/x.cpp", '"', "draw/drawing.h"), ("core/screens/x.cpp", "<", "imgui.h"),
            ("core/book/x.cpp", "<", "rapidjson/reader.h"), ("wasm-app/x.cpp", "<", "SDL.h"),
            ("core/answers/x.cpp", '"', "paper/svg.h"), ("core/measure/x.cpp", "<", "string_view")]
    result = []
    for file, quote, name in bad + good:
        path = ROOT / file
        refused = wrong(path, home(path), quote, name) is not None
        if refused != ((file, quote, name) in bad):
            result.append(f"the table {'refuses' if refused else 'lets pass'} {name} in {file}")
    return result


def main():
    files = [p for top in ("core", "native-app", "wasm-app", "tests") for p in sorted((ROOT / top).rglob("*"))
             if p.suffix in (".h", ".cpp", ".hpp", ".c") and "node_modules" not in p.parts]
    passed = failed = 0
    for problems in [self_test()] + [check(p) for p in files]:
        for problem in problems:
            print(problem)
        passed, failed = (passed, failed + 1) if problems else (passed + 1, failed)
    print(f"includes: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
