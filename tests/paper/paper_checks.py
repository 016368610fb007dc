"""Prints books and reads the files back. usage: paper_checks.py PROGRAM STRINGS

What stands on a page is read by Poppler's pdftotext and drawn by its pdftoppm; QPDF says whether a file is well formed;
fontTools whether its fonts have the letters.
Lengths are rounded and written here by themselves, with exact fractions, not by the program.
"""
import base64
import html
import io
import json
import os
import re
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

from fontTools.ttLib import TTFont

program, strings = sys.argv[1], Path(sys.argv[2])
passed = failed = 0


def check(name, ok, note=""):
    global passed, failed
    if ok:
        passed += 1
    else:
        failed += 1
        print(f"FAILED {name} {note}")


def run(*words, **more):
    return subprocess.run([str(w) for w in words], capture_output=True, **more)


def answer(*words):
    done = run(program, *words, "--json")
    assert done.returncode == 0, (words, done.stderr)
    return json.loads(done.stdout)


def paper(book, *words):
    done = run(program, "paper", book, *words, "--day", "2026-11-28")
    assert done.returncode == 0, (words, done.stderr)
    return done.stdout


# ── What a length is called ──────────────────────────────────────────────────────────────────────────────────────────
def in_inches(value, parts):
    """Both neighbours where the value lies between two marks."""
    exact = Fraction(round(value * 10**6), 10**6) * parts
    floor = exact.numerator // exact.denominator
    rest = exact - floor
    counts = {floor} if rest < Fraction(499, 1000) else {floor + 1} if rest > Fraction(501, 1000) else {floor, floor + 1}
    out = []
    for count in counts:
        inches, part = divmod(abs(count), parts)
        fraction = Fraction(part, parts)
        small = f"{fraction.numerator}\u2044{fraction.denominator}" if part else ""
        feet, inches = divmod(inches, 12)
        words = [str(inches)] if inches or feet or not small else []
        said = " ".join(words + ([small] if small else [])) + "\u2033"
        out.append((f"{feet}\u2032 {said}" if feet else said))
    return out


def in_mm(value):
    exact = Fraction(round(value * 10**6), 10**6) * Fraction(254, 10)
    return list({f"{float(exact + d):.1f}".removesuffix(".0") for d in (-Fraction(1, 10**6), 0, Fraction(1, 10**6))})


def stands(page, wanted):
    """As a number of its own."""
    return any(re.search(r"(?<![\d\u2032\u2044.])(?<!\u2032 )" + re.escape(w) + r"(?![\d\u2044])", page) for w in wanted)


def marked(page, mark):
    """As a mark of its own, not inside a longer one: P-A1 does not stand in P-A1.1."""
    return re.search(rf"(?<![\w.-]){re.escape(mark)}(?![\w-]|\.\d)", page) is not None


def between(page, begins, ends=None):
    """What stands behind one heading and before the next."""
    _, found, rest = page.partition(begins)
    if not found:
        return ""
    before, found, _ = rest.partition(ends) if ends else (rest, True, "")
    return before if found else ""


class Printed:
    def __init__(self, data, folder):
        self.file = Path(folder, "pages.pdf")
        self.file.write_bytes(data)
        text = run("pdftotext", "-layout", self.file, "-").stdout.decode()
        self.text = re.sub(r"\s+", " ", text)

    def as_written(self):
        """In the order in which it was put on paper: lines of one phrase behind each other, whatever stands beside."""
        return re.sub(r"\s+", " ", run("pdftotext", "-raw", self.file, "-").stdout.decode())

    def pages(self):
        info = run("pdfinfo", self.file).stdout.decode()
        return int(re.search(r"Pages: +(\d+)", info)[1])


TOOL = {"fence_in", "far_in", "width_in", "across_in", "shim_in", "jig_in", "diameter_in", "drawbore_in", "off_in",
        "fall_in", "wedge_in", "depth_in", "reach_in", "begins_in", "ends_in", "start_in"}


def sheet_checks(book, mark, weight_lb, folder, unit):
    words = ["--unit", unit] if unit else []
    said = (lambda v, parts=16: in_mm(v)) if unit == "mm" else (lambda v, parts=16: in_inches(v, parts))
    sheet, work = answer("book", "sheet", book, mark), answer("steps", book, mark)
    page = Printed(paper(book, "--what", "sheets", "--mark", mark, *words), folder)
    written = page.as_written()
    name = f"{book.name} {mark} {unit}"
    lacking = []

    def wanted(what, value, parts=(16,)):
        # Read across the columns; or as it was written, where the narrow blank before a fraction is none.
        texts = {text for p in parts for text in said(value, p)}
        if not stands(page.text, texts) and not stands(written, [re.sub(r" (?=\d+\u2044)", "", t) for t in texts]):
            lacking.append((what, value, said(value)))

    wanted("overall", sheet["check"]["overall_in"])
    for value in sheet["check"]["arrises_in"]:
        wanted("arris", value)
    for key in ("rising_in", "falling_in"):
        for value in sheet["check"][key][:2]:
            wanted(key, value)
    for cut in sheet["cuts"]:
        for line in cut["lines"]:
            for end in ("from_in", "to_in"):
                # A line that runs out past the tip is drawn to the tip.
                if 0 <= line[end][0] <= sheet["length_in"]:
                    wanted("cut line", line[end][0])
    for recess in sheet["recesses"]:
        for line in recess.get("lines", []):
            if abs(abs(line["off_square_deg"]) - 90) > 0.05:
                for end in ("from_in", "to_in"):
                    wanted("recess line", line[end][0])
    for step in work["steps"]:
        for number in step["numbers"]:
            if number["name"].endswith("_deg"):
                value = abs(number["value"])
                if value >= 0.05:
                    texts = [f"{value:.1f}\u00b0"] + ([f"{round(value)}\u00b0"] if abs(value - round(value)) < 0.05 else [])
                    if not any(t in page.text for t in texts):
                        lacking.append((step["id"], number["name"], value))
            elif number["name"] != "face":
                # What a tool is set to is said to 1/64.
                wanted(step["id"] + " " + number["name"], number["value"], (16, 64) if number["name"] in TOOL else (16,))
    weight = weight_lb * (0.45359237 if unit == "mm" else 1)
    if not re.search(rf"\b({round(weight - 0.01)}|{round(weight + 0.01)}) {'kg' if unit == 'mm' else 'lb'}\b", page.text):
        lacking.append(("weight", weight))
    check(f"every number of the sheet is on paper: {name}", not lacking, lacking[:6])
    check(f"marks are on paper: {name}", all(marked(page.text, m) for m in [mark] + sheet["alike"]))
    boxes = sum(len(step["text"]) > 0 for step in work["steps"])
    lines = re.search(r"(?<!\S)0\u2033? \u2013 0\u2033?(?!\S)", written)
    check(f"what lands covers more than a line: {name}", not lines)
    askew = any(0.05 < abs(line["off_square_deg"]) < 89.95 for cut in sheet["cuts"] for line in cut["lines"])
    check(f"an end that is not square is enlarged, its scale beside it: {name}",
          not askew or re.search(r"\u00b7 1:(2|4|5|10)(?!\d)", page.text))
    check(f"every step is on paper: {name}", all(re.search(rf"(?<!\S){n}\. ", page.text) for n in range(1, boxes + 1)))


# ── What holds of any file ───────────────────────────────────────────────────────────────────────────────────────────
def faces_of(file):
    """The embedded fonts by their names, as fontTools reads them."""
    done = run("qpdf", "--json=2", "--json-key=qpdf", "--json-stream-data=inline", "--decode-level=generalized", file)
    objects = json.loads(done.stdout)["qpdf"][1]
    faces = {}
    for thing in objects.values():
        about = thing.get("value", {})
        if isinstance(about, dict) and "/FontFile2" in about:
            bytes_of = base64.b64decode(objects["obj:" + about["/FontFile2"]]["stream"]["data"])
            faces[about["/FontName"][1:]] = TTFont(io.BytesIO(bytes_of))
    return faces


def letters_lacking(file):
    """Letters that stand on a page in a face whose own table does not have them, or has them without strokes: what the
    reader is told about a letter is its number, whether it can be drawn or not."""
    faces = faces_of(file)
    maps = {name: (face.getBestCmap(), face["glyf"]) for name, face in faces.items()}
    out = run("pdftohtml", "-xml", "-i", "-stdout", "-fontfullname", file).stdout.decode()
    fonts, shown = {}, {}
    for found in re.finditer(r'<fontspec id="(\d+)"[^>]* family="([^"]*)"|<text [^>]*font="(\d+)"[^>]*>(.*?)</text>', out):
        if found[1]:
            fonts[found[1]] = found[2]
        else:
            shown.setdefault(fonts[found[3]], set()).update(html.unescape(re.sub("<[^>]*>", "", found[4])))
    lacking = []
    for family, letters in shown.items():
        table, strokes = maps[family]
        for letter in sorted(letters):
            glyph = table.get(ord(letter))
            if not letter.isspace() and (glyph is None or strokes[glyph].numberOfContours == 0):
                lacking.append((family, letter))
    return lacking if shown else ["no letters at all"]


DARK = bytes(v < 128 for v in range(256))


def file_checks(name, data, folder, again):
    printed = Printed(data, folder)
    qpdf = run("qpdf", "--check", printed.file)
    check(f"well formed: {name}", qpdf.returncode == 0, qpdf.stdout + qpdf.stderr)
    noise = run("pdftotext", printed.file, "-").stderr
    check(f"readers have nothing to say: {name}", noise == b"", noise[:200])
    check(f"the same bytes again: {name}", data == again)
    check(f"no date of its own: {name}", b"CreationDate" not in data)
    fonts = run("pdffonts", printed.file).stdout.decode().splitlines()[2:]
    check(f"letters are embedded: {name}", fonts and all(re.search(r"yes yes yes +\d+ +0$", f) for f in fonts), fonts)
    lacking = letters_lacking(printed.file)
    check(f"no letter is missing: {name}", not lacking, lacking)
    pages = printed.pages()
    for n in {1, pages}:
        check(f"page {n} says so: {name}", f"{n} / {pages}" in printed.text)
    drawn = run("pdftoppm", "-r", "30", "-gray", printed.file).stdout
    seen = 0
    while drawn:
        head, size, top, drawn = drawn.split(b"\n", 3)
        width, height = map(int, size.split())
        ink = drawn[: width * height].translate(DARK).count(1)
        seen += ink > width * height / 1000
        drawn = drawn[width * height:]
    check(f"no page is blank: {name}", seen == pages, f"{seen} of {pages}")
    words_checks(name, printed)


def words_checks(name, printed):
    """As the reader places them: on the page, and none on another."""
    page, words, bad, off = 0, [], [], []
    out = run("pdftotext", "-bbox", printed.file, "-").stdout.decode()
    for line in out.splitlines():
        if size := re.search(r'<page width="([\d.]+)" height="([\d.]+)"', line):
            page, words, width, height = page + 1, [], float(size[1]), float(size[2])
        found = re.search(r'<word xMin="(.+)" yMin="(.+)" xMax="(.+)" yMax="(.+)">(.*)</word>', line)
        if not found:
            continue
        left, top, right, bottom = map(float, found.groups()[:4])
        if left < 14 or right > width - 14 or top < 10 or bottom > height - 10:
            off.append((page, found[5]))
        # A line of these letters is 1.36 em high, capitals half of that.
        high = bottom - top
        box = (left + 0.2, top + 0.3 * high, right - 0.2, bottom - 0.25 * high, found[5])
        bad += [(page, box[4], o[4]) for o in words if box[0] < o[2] and o[0] < box[2] and box[1] < o[3] and o[1] < box[3]]
        words.append(box)
    check(f"no word leaves its page: {name}", not off, off[:5])
    check(f"no word stands on another: {name}", not bad, bad[:5])


# ── Lists and the raising ────────────────────────────────────────────────────────────────────────────────────────────
def list_checks(book, folder):
    members = answer("book", "members", book)["members"]
    page = Printed(paper(book, "--what", "lists", "--list", "cut"), folder).text
    check("every mark is on the cut list", all(marked(page, m["mark"]) for m in members))
    check("every length is on the cut list", all(stands(page, in_inches(m["length_in"], 16)) for m in members))
    check("as many timbers as there are", f"{len(members)} timbers" in page)
    csv = paper(book, "--what", "lists", "--list", "cut", "--format", "csv").decode().splitlines()
    counts = [int(re.findall(r'(?:"(?:[^"]|"")*"|[^,]*)(?:,|$)', line)[6].strip(",")) for line in csv[1:]]
    check("the cut list as CSV counts each timber once", sum(counts) == len(members), counts)
    stock = answer("stock", book)
    page = Printed(paper(book, "--what", "lists", "--list", "order"), folder).text
    # A row begins with its count and has its length in feet: no sums are taken over from the program.
    rows = {}
    for row in stock["order"]:
        rows[row["length_in"]] = rows.get(row["length_in"], 0) + row["count"]
    check("every length that is bought is on the order", all(stands(page, in_inches(v, 16)) for v in rows))
    check("as many sticks as are bought", f"{sum(rows.values())} sticks to order" in page)
    page = Printed(paper(book, "--what", "lists", "--list", "plan"), folder).text
    # "Stick 7", or alike ones together: "Sticks 3\u20136, 9: 5 alike".
    numbers = [int(n) for n in re.findall(r"Stick (\d+) ", page)]
    for said, count in re.findall(r"Sticks ([\d\u2013, ]+): (\d+) alike", page):
        together = [n for part in said.split(", ") for ends in [part.split("\u2013")]
                    for n in range(int(ends[0]), int(ends[-1]) + 1)]
        check(f"as many sticks are alike as are named: {said}", len(together) == int(count), count)
        numbers += together
    check("every stick has its number, once", sorted(numbers) == sorted(s["stick"] for s in stock["plan"]), numbers)
    check("every piece is in its stick", all(marked(page, p["mark"]) for s in stock["plan"] for p in s["pieces"]))
    page = Printed(paper(book, "--what", "lists", "--list", "settings"), folder).text
    for mark in [m["mark"] for m in members][::5]:
        check(f"{mark} has its boxes among the settings", marked(page, mark))


def raising_checks(book, raised, folder):
    assert run(program, "raise", book, "--tries", "1", "--out", raised).returncode == 0
    order = run(program, "raise", "order", raised).stdout.decode().splitlines()
    page = Printed(paper(raised, "--what", "raising"), folder).text
    check("the raising says how it was judged", told("en", "raise_good") in page or told("en", "raise_whole_bad") in page)
    check("the raising says who decides", told("en", "raising_caution") in page)
    last = max(int(line.split(",")[order[0].split(",").index("step")]) for line in order[1:])
    # Steps that are alike stand in one row: "3\u20136 1 Common rafter".
    rows = re.findall(r"(?<!\S)(\d+)(?:\u2013(\d+))? 1 ", page)
    stepped = {n for first, end in rows for n in range(int(first), int(end or first) + 1)}
    check("every step of the raising is on paper", stepped >= set(range(1, last + 1)), sorted(stepped))
    members = answer("book", "members", raised)["members"]
    trucks, stacks = told("en", "raise_loads"), told("en", "raise_stacks")
    check("every timber is on a truck", all(marked(between(page, trucks, stacks), m["mark"]) for m in members))
    check("every timber lies in a stack", all(marked(between(page, stacks), m["mark"]) for m in members))


def told(language, key):
    for table in sorted((strings / language).glob("*.tsv")):
        for row in table.read_text("utf-8").splitlines():
            if row.startswith(key + "\t"):
                return re.sub(r"\s+", " ", row.split("\t", 1)[1])
    raise KeyError(key)


def main():
    with tempfile.TemporaryDirectory() as work:
        books = {"demo": ["--demo"], "barn": ["--span", "24'", "--length", "36'", "--pitch", "9:12"],
                 "shed": ["--span", "12'", "--length", "16'", "--pitch", "10:12"]}
        for name, words in books.items():
            file = Path(work, name)
            assert run(program, "book", "new", file, *words).returncode == 0
        roof = Path(work, "roof")
        assert run(program, "roof", "new", roof, "--shape", "l").returncode == 0
        for name, one_of, unit in (("demo", 1, ""), ("shed", 3, "mm"), ("roof", 4, "")):
            file, done = Path(work, name), set()
            for member in answer("book", "members", file)["members"]:
                if member["mark"] in done:
                    continue
                done.update(answer("book", "sheet", file, member["mark"])["alike"])
                if len(done) % one_of == 0:
                    sheet_checks(file, member["mark"], member["weight_lb"], work, unit)
                done.add(member["mark"])
        list_checks(Path(work, "demo"), work)
        raising_checks(Path(work, "demo"), Path(work, "raised"), work)
        kinds = [("sheets", "demo", "letter", "en"), ("sheets", "shed", "a4", "es"), ("sheets", "roof", "a4", "fr-CA")]
        for what, name, page, language in kinds + OTHERS:
            words = ["--what", what, "--page", page, "--lang", language]
            data = paper(Path(work, name), *words)
            file_checks(" ".join([name] + words), data, work, paper(Path(work, name), *words))
        for language in ("es", "fr-CA"):
            text = Printed(paper(Path(work, "demo"), "--what", "sheets", "--mark", "P-A1", "--lang", language), work).as_written()
            for key in ("face_reference_up", "finding_not_engineered", "sheet_checks"):
                check(f"accents stand as they are written: {language} {key}", told(language, key) in text)
        refused = run(program, "paper", Path(work, "demo"), "--what", "sheets", "--mark", "Z-9")
        check("a mark that is not there is refused by its name", refused.returncode == 2 and b"Z-9" in refused.stderr)
        for what, option, value in (("lists", "--mark", "P-A1"), ("raising", "--mark", "P-A1"), ("sheets", "--list", "cut"),
                                    ("labels", "--list", "cut"), ("patterns", "--labels", "2x4")):
            refused = run(program, "paper", Path(work, "demo"), "--what", what, option, value)
            check(f"{option} is refused with {what}", refused.returncode == 2 and option.encode() in refused.stderr, refused)
        # Noto Sans has no U+2300.
        assert run(program, "book", "new", Path(work, "lacking"), "--title", "\u00d8 \u2300").returncode == 0
        Path(work, "p.pdf").write_bytes(paper(Path(work, "lacking"), "--what", "lists", "--list", "cut"))
        lacking = letters_lacking(Path(work, "p.pdf"))
        check("a letter that the face lacks is found", [letter for _, letter in lacking] == ["\u2300"], lacking)
        for page, size in (("a4", "595"), ("letter", "612 x 792")):
            Path(work, "p.pdf").write_bytes(paper(Path(work, "demo"), "--what", "sheets", "--mark", "P-A1", "--page", page))
            check(f"paper is {page}", "Page size: " in (info := run("pdfinfo", Path(work, "p.pdf")).stdout.decode())
                  and size in info, info)
    print(f"paper checks: {passed} passed, {failed} failed")


OTHERS = [("lists", "demo", "letter", "es"), ("lists", "barn", "a4", "en"), ("raising", "demo", "a4", "fr-CA"),
          ("raising", "raised", "letter", "en")]
os.environ["LC_ALL"] = "C.UTF-8"
main()
