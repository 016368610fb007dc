"""Reads every #include of the project's own code against the table of who may lean on what, and every source that core
cites against core/SOURCES.md.

A file fails with each include that the table does not list. Prints `includes: N passed, N failed` (files).
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

# room of core/ -> rooms that it may include (itself always). A room inside a room stands for itself: "frame" is not
# "frame/sheet".
BELOW = {}


def room(names, below):
    for name in names.split():
        BELOW[name] = set(below.split()) | {n for n in names.split() if n != name}


room("numeric", "")
room("text", "numeric")
room("measure", "numeric text")
room("geometry", "numeric")
room("draw", "numeric measure geometry")
CUT = "numeric text measure geometry draw"
room("cut", CUT)
room("roof roof/corner", CUT + " cut")
room("roof/plan", CUT + " cut roof")
# Plan, joints, placing and roofs are one solver in four rooms that see each other; that no header includes itself
# through others is checked below.
ROOF = CUT + " cut roof roof/corner roof/plan"
room("frame frame/joints frame/placing frame/roofs", ROOF)
FRAME = ROOF + " frame frame/joints frame/placing frame/roofs"
room("frame/sheet frame/list frame/drawings", FRAME)
FRAME += " frame/sheet frame/list frame/drawings"
room("shop shop/log", FRAME)
room("stock", FRAME)
RAISING = "raising raising/insertion raising/stability raising/lifting raising/search raising/drawings"
room(RAISING, FRAME)
WORK = FRAME + " shop shop/log stock " + RAISING
room("book", WORK)
BELOW["book"] -= {"draw"}
room("book/backup", WORK + " book")
room("model", WORK + " book")
MODEL = WORK + " book book/backup model"
room("paper", "numeric measure text geometry draw")
room("words words/aloud words/roofs words/steps", MODEL)
room("printed printed/pages", MODEL + " words words/roofs words/steps paper")
room("tasks", MODEL + " words paper")
room("command command/json command/roofs command/stock", MODEL + " words words/roofs words/steps paper printed printed/pages tasks")
room("render", "numeric geometry draw")
room("ui ui/keypad ui/drawing", CUT + " cut words render")
room("screens/desks screens/app screens/form screens/angles screens/rafter screens/frame screens/shop screens/shop/stock screens/raising screens/raising/yard screens/raising/given screens/roofs "
     "screens/books screens/settings screens/timber screens/printing", MODEL + " words words/aloud words/roofs words/steps paper printed printed/pages tasks render ui ui/keypad ui/drawing")

UI = {name for name in BELOW if name.split("/")[0] in ("render", "ui", "screens")}
MOST_FILES = 26  # in a room: more, and a stranger is lost
# what is not of our own -> who may include it ("core/x", "native-app", "wasm-app", "wasm-app/worker", "tests")
OUTSIDE = [
    (r"imgui.*|imstb_.*", {"core/render", "core/ui", "core/screens", "native-app", "wasm-app", "tests"}),
    (r"SDL.*", {"native-app", "wasm-app"}),
    (r"png\.h", {"native-app"}),
    (r"(GLES\d?|EGL|GL)/.*", {"core/render", "native-app", "wasm-app"}),
    (r"emscripten.*", {"wasm-app", "wasm-app/worker"}),
    (r"rapidjson/(stringbuffer|writer)\.h", {"core/text", "core/book", "tests"}),  # others write through text/json_writer.h
    (r"rapidjson/.*|nlohmann/.*|yyjson.*", {"core/book", "core/tasks", "tests"}),
    (r"bentbook_libm\.h", {"core/numeric", "tests"}),
    (r"catch_amalgamated\.hpp", {"tests"}),
    (r"qrcodegen\.h|hpdf.*\.h", {"core/paper"}),
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

# Rooms in which every source has a header of its own name, where its declarations stand. Others join as they get there.
OWN_HEADERS = set("""numeric text measure geometry draw cut roof roof/corner roof/plan frame frame/joints frame/placing frame/roofs frame/sheet frame/list
  frame/drawings shop shop/log stock book book/backup model paper printed printed/pages words words/aloud words/roofs words/steps tasks command command/json command/roofs command/stock render
  screens/desks screens/form screens/angles screens/rafter screens/frame screens/shop screens/raising screens/raising/yard
  screens/raising/given screens/roofs screens/shop/stock
  screens/books screens/settings screens/timber screens/printing""".split())

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)


def home(path):
    """The table's name for the place where a file lives. The bench measures an empty page of the same stack."""
    parts = path.relative_to(ROOT).parts
    if parts[0] == "core":
        return "/".join(parts[:-1])
    if parts[:2] == ("wasm-app", "worker"):
        return "wasm-app/worker"
    if parts[:2] == ("tests", "bench"):
        return "wasm-app"
    return parts[0]


def core_target(name):
    folder = name.rpartition("/")[0]
    return folder if folder in BELOW else None


def sees(where, allowed):
    """Whether `where` or a room around it is among those who may."""
    parts = where.split("/")
    return any("/".join(parts[:i]) in allowed for i in range(1, len(parts) + 1))


def wrong(path, where, quote, name):
    """Why `path` may not include `name`, or None."""
    if ".." in name.split("/"):
        return "includes are written from core/ down"
    if quote == '"' and (path.parent / name).is_file() and "/" not in name:
        return "includes are written from core/ down" if where.startswith("core/") else None
    target = core_target(name)
    if target:
        if where == "wasm-app/worker":
            letters = name == "ui/fonts.gen.h"  # bytes, no screen
            return f"the Worker's build has no {target}" if target in UI and not letters else None
        if not where.startswith("core/"):
            return None
        own = where[5:]
        return None if target == own or target in BELOW[own] else f"{own}/ does not lean on {target}/"
    for pattern, allowed in OUTSIDE:
        if re.fullmatch(pattern, name):
            return None if sees(where, allowed) else f"{where}/ does not see {name}"
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
        if quote == '"' and not name.startswith("ui/imgui_config"):
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


def crowded():
    """Rooms with more files than a stranger can take in."""
    found = []
    for name in sorted(BELOW):
        folder = ROOT / "core" / name
        count = len([p for p in folder.glob("*") if p.is_file()]) if folder.is_dir() else 0
        if count > MOST_FILES:
            found.append(f"core/{name}: {count} files, at most {MOST_FILES}")
    return found


def without_header():
    """Sources whose declarations stand in another file's header."""
    return [f"{path.relative_to(ROOT)}: no header of its own name" for name in sorted(OWN_HEADERS)
            for path in sorted((ROOT / "core" / name).glob("*.cpp")) if not path.with_suffix(".h").is_file()]


def loops():
    """Headers that include themselves through others, which #pragma once would hide."""
    reads = {}
    for path in (ROOT / "core").rglob("*.h"):
        name = path.relative_to(ROOT / "core").as_posix()
        reads[name] = [m[2] for m in INCLUDE.finditer(path.read_text(encoding="utf-8")) if m[1] == '"']
    done, found = set(), []

    def walk(name, trail):
        if name in trail:
            found.append(" -> ".join(trail[trail.index(name):] + [name]))
        elif name in reads and name not in done:
            for other in reads[name]:
                walk(other, trail + [name])
            done.add(name)
    for name in sorted(reads):
        walk(name, [])
    return found


SOURCES = ROOT / "core" / "SOURCES.md"
CITED = re.compile(r'SOURCES\.md((?:, "[^"]+")+)')


def prose(text):
    """A file's text with its comments' line ends taken out, so that a name may run over two lines."""
    return re.sub(r"\s+", " ", re.sub(r"\n\s*//[/!]?<?", " ", text))


def sources():
    """Every `Source:` names an entry of core/SOURCES.md, every entry is named, every limit has one, and nothing is
    cited that a stranger does not have."""
    entries = {m[1] for m in re.finditer(r"^\| ([^|]+?) \|[^|]*\|[^|]*\|[^|]*\|$", SOURCES.read_text("utf-8"), re.M)}
    entries -= {"name"}
    cited, found = set(), []
    for path in sorted((ROOT / "core").rglob("*")):
        if path.suffix not in (".h", ".cpp"):
            continue
        name, text = path.relative_to(ROOT).as_posix(), prose(path.read_text(encoding="utf-8"))
        for banned in ("from memory", "trade.md", "design notes"):
            if banned in text:
                found.append(f"{name}: cites {banned}")
        for match in re.finditer(r'\bSources?: (?!SOURCES\.md, ")(.{0,40})', text):
            found.append(f"{name}: Source: {match[1]}…: not an entry of core/SOURCES.md")
        for match in CITED.finditer(text):
            names = set(re.findall(r'"([^"]+)"', match[1]))
            cited |= names
            found += [f"{name}: {n}: core/SOURCES.md has no such entry" for n in sorted(names - entries)]
    for path in sorted((ROOT / "core").rglob("limits.h")):
        blocks = re.findall(r"((?:^ *///.*\n)*)^inline constexpr [^;]*?(k\w+)", path.read_text("utf-8"), re.M)
        found += [f"{path.relative_to(ROOT)}: {k} has no source" for words, k in blocks if "Source:" not in words]
    found += [f"core/SOURCES.md: nothing cites {name}" for name in sorted(entries - cited)]
    return found


def self_test():
    """The table must be able to fail: each of these has to be refused."""
    bad = [("core/measure/x.cpp", '"', "cut/saw.h"), ("core/cut/x.cpp", '"', "book/kit.h"),
           ("core/shop/x.cpp", '"', "stock/order.h"), ("core/screens/app/x.cpp", "<", "SDL.h"),
           ("core/screens/frame/x.cpp", "<", "rapidjson/document.h"), ("core/roof/x.cpp", "<", "imgui.h"),
           ("core/command/json/x.cpp", "<", "rapidjson/writer.h"), ("core/text/x.cpp", "<", "rapidjson/document.h"),
           ("core/roof/x.cpp", "<", "cmath"), ("core/words/x.cpp", "<", "chrono"),
           ("core/render/x.cpp", "<", "emscripten.h"), ("native-app/x.cpp", '"', "wasm-app/page.h"),
           ("core/frame/x.cpp", "<", "Eigen/Dense"), ("core/frame/joints/x.cpp", '"', "frame/sheet/sheet.h"),
           ("core/ui/x.cpp", '"', "screens/app/context.h"), ("core/words/x.cpp", '"', "command/args.h"),
           ("core/screens/shop/x.cpp", '"', "command/command.h"),
           ("wasm-app/worker/x.cpp", '"', "screens/app/app.h"), ("core/paper/x.cpp", '"', "words/words.h")]
    good = [("core/roof/x.cpp", '"', "draw/drawing.h"), ("core/screens/frame/x.cpp", "<", "imgui.h"),
            ("core/book/x.cpp", "<", "rapidjson/reader.h"),
            ("core/text/x.cpp", "<", "rapidjson/writer.h"), ("wasm-app/x.cpp", "<", "SDL.h"),
            ("core/raising/stability/x.cpp", "<", "Eigen/Dense"), ("core/ui/keypad/x.cpp", '"', "ui/theme.h"),
            ("core/command/x.cpp", '"', "paper/svg.h"), ("core/measure/x.cpp", "<", "string_view")]
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
    for problems in [self_test(), crowded(), without_header(), loops(), sources()] + [check(p) for p in files]:
        for problem in problems:
            print(problem)
        passed, failed = (passed, failed + 1) if problems else (passed + 1, failed)
    print(f"includes: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
