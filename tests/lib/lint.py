"""clang-format over every source file of our own, clang-tidy over every unit of native-debug's build: batches of sources
(cmake/batches.cmake), and sources that are compiled alone.

A clang-tidy result is remembered by the content of the file, of every header of ours that it reads, and of the
configuration, so that a second run looks only at what changed. Prints `lint: N passed, N failed` (files).
"""
import concurrent.futures
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = ROOT / "build/native-debug"
REMEMBERED = pathlib.Path(os.environ.get("XDG_CACHE_HOME", pathlib.Path.home() / ".cache")) / "bentbook/tidy"
INCLUDED_FROM = [ROOT / "core", ROOT / "tests/shared", BUILD / "generated", ROOT / "wasm-app"]
INCLUDE = re.compile(r'^\s*#\s*include\s*"([^"]+)"', re.M)


def own_files():
    listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard", "*.cpp", "*.h"], cwd=ROOT, text=True,
                            capture_output=True, check=True).stdout.split("\n")
    return [ROOT / name for name in sorted(set(listed)) if name and (ROOT / name).is_file()]


def format_problems(files):
    def one(path):
        run = subprocess.run(["clang-format", "--dry-run", "-Werror", str(path)], cwd=ROOT, text=True,
                             capture_output=True)
        return run.stderr if run.returncode else ""
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        return list(pool.map(one, files))


def read_by(path, seen):
    """Adds to `seen` the file and every file of ours that it includes, however deep."""
    if path in seen or not path.is_file():
        return
    seen.add(path)
    for name in INCLUDE.findall(path.read_text(encoding="utf-8")):
        for folder in (path.parent, ROOT, *INCLUDED_FROM):
            if (folder / name).is_file():
                read_by((folder / name).resolve(), seen)
                break


def digest(command, sources):
    sha = hashlib.sha256()
    sha.update(subprocess.run(["clang-tidy", "--version"], capture_output=True).stdout)
    for path in [ROOT / ".clang-tidy", ROOT / "tests/.clang-tidy"] + sorted(sources):
        sha.update(str(path.relative_to(ROOT)).encode() + b"\0" + path.read_bytes() + b"\0")
    sha.update(command.replace(str(ROOT), "").encode())
    return sha.hexdigest()


def tidy_problems():
    work = []
    for entry in json.loads((BUILD / "compile_commands.json").read_text()):
        path = pathlib.Path(entry["file"])
        batch = path.parent == BUILD / "batches"  # its sources are looked at once, and their headers with them
        if path.suffix != ".cpp" or not batch and (ROOT not in path.parents or BUILD in path.parents):
            continue
        own = set()
        read_by(path, own)
        work.append((path, REMEMBERED / digest(entry["command"], own)))

    def one(item):
        path, mark = item
        if mark.exists():
            return path, ""
        # -Wno-…: about RapidJSON, as in cmake/dependencies.cmake; the commands are gcc's
        run = subprocess.run(["clang-tidy", "--quiet", "--warnings-as-errors=*",
                              "--extra-arg=-Wno-ambiguous-reversed-operator",
                              "--extra-arg=-Wno-unknown-warning-option", "-p", str(BUILD), str(path)], cwd=ROOT,
                             text=True, capture_output=True)
        if run.returncode:
            return path, run.stdout or run.stderr
        mark.touch()
        return path, ""
    REMEMBERED.mkdir(parents=True, exist_ok=True)
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        return list(pool.map(one, work))


def main():
    files = own_files()
    results = [(path, problem) for path, problem in zip(files, format_problems(files))]
    results += tidy_problems()
    failures = [problem for _, problem in results if problem]
    for problem in failures:
        print(problem.replace(str(ROOT) + "/", ""))
    print(f"lint: {len(results) - len(failures)} passed, {len(failures)} failed")
    sys.exit(1 if failures else 0)


main()
