"""Full-size patterns against outside programs. Prints `patterns: N passed, N failed`.

  check.py polygons FOLDER ROWS UNIT   each DXF is read and audited by ezdxf; its closed WOOD outlines are what shapely
                                       leaves of the timber's face when end cuts and pockets are taken out of it,
                                       and its DRILL circles stand where the timber's holes come out of that face
  check.py rafter FOLDER ROWS MARK     the same outlines of a rafter at 9 in 12 against plain trigonometry
  check.py tiles FOLDER ROWS [SCALE]   pages.pdf (English, inches) at 300 dpi: crosses of neighbours and the check bars are
                                       found in the picture, what is cut among the strokes that poppler reads, by its
                                       width; pages laid cross on cross measure as the DXF does, within 0.2 mm over 200 mm
  check.py pdf FILE in|mm              the check bars of each page
  check.py labels FOLDER ROWS          ZBar reads each label's code

ROWS are what pattern_rows prints (inches), UNIT mm or in.
"""
import math
import pathlib
import re
import subprocess
import sys

passed = failed = 0


def check(good, what):
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print("FAILED", what)


def read_rows(path):
    patterns, timbers, timber = [], {}, None
    for line in pathlib.Path(path).read_text().splitlines():
        words = line.split()
        if words[0] == "pattern":
            patterns.append({"file": words[1], "mark": words[2], "face": int(words[3]), "zero": float(words[4]),
                             "from": float(words[5]), "to": float(words[6])})
        elif words[0] == "timber":
            n = list(map(float, words[2:]))
            timber = timbers[words[1]] = {"length": n[0], "y": n[1:3], "z": n[3:5], "cuts": [], "pockets": [], "holes": []}
        elif words[0] == "cut":
            timber["cuts"].append(list(map(float, words[1:])))
        elif words[0] == "hole":
            timber["holes"].append((words[1], *map(float, words[2:])))
        elif words[0] == "pocket":
            n = list(map(float, words[2:]))
            timber["pockets"].append((words[1], n[0], n[1], list(zip(n[2::2], n[3::2]))))
    return patterns, timbers


def face_polygon(timber, face, low, high):
    """What is left of a face between two stations: x the station, y from the edge that lies below when the face is
    looked at with end A at the left. From cut planes and pockets alone."""
    from shapely.geometry import Polygon, box
    flat = face in (1, 3)
    across, through = (timber["y"], timber["z"]) if flat else (timber["z"], timber["y"])
    at = through[1] if face in (1, 4) else through[0]
    wood = box(low, across[0], high, across[1])
    for nx, ny, nz, offset in timber["cuts"]:
        a, b, c = (nx, ny, offset - nz * at) if flat else (nx, nz, offset - ny * at)
        # Kept where a x + b w <= c: everything farther along the normal is taken off.
        far = 1e4
        foot = (a * c / (a * a + b * b), b * c / (a * a + b * b))
        along, out = (-b, a), (a, b)
        half = Polygon([(foot[0] + s * far * along[0] + t * far * out[0], foot[1] + s * far * along[1] + t * far * out[1])
                        for s, t in ((-1, 0), (1, 0), (1, 1), (-1, 1))])
        wood = wood.difference(half)
    for sweep, start, stop, outline in timber["pockets"]:
        if sweep == ("z" if flat else "y"):  # square to the face: right through or not at all
            if start <= through[0] + 1e-9 and stop >= through[1] - 1e-9:
                wood = wood.difference(Polygon(outline))
        elif sweep == "x":  # outline y, z
            n = [p[1] if flat else p[0] for p in outline]
            m = [p[0] if flat else p[1] for p in outline]
            # On the face the pocket is as wide as its outline at the face; through: it has both faces.
            cut = Polygon(outline).intersection(
                box(-1e3, at - 1e-7, 1e3, at + 1e-7) if flat else box(at - 1e-7, -1e3, at + 1e-7, 1e3))
            if cut.is_empty or min(n) > through[0] + 1e-9 or max(n) < through[1] - 1e-9:
                continue
            edge = cut.bounds[0::2] if flat else cut.bounds[1::2]
            wood = wood.difference(box(start, edge[0], stop, edge[1]))
        else:  # swept across the page: outline x and the depth
            n = [p[1] for p in outline]
            if min(n) > through[0] + 1e-9 or max(n) < through[1] - 1e-9:
                continue
            cut = Polygon(outline).intersection(box(-1e4, at - 1e-7, 1e4, at + 1e-7))
            if cut.is_empty:
                continue
            wood = wood.difference(box(cut.bounds[0], start, cut.bounds[2], stop))
    from shapely.affinity import affine_transform
    low_below = face in (1, 2)
    return affine_transform(wood, [1, 0, 0, 1, 0, -across[0]] if low_below else [1, 0, 0, -1, 0, across[1]])


def face_holes(timber, face):
    """Middles and diameters of the holes that come out of a face, as face_polygon has its corners."""
    flat = face in (1, 3)
    across, through = (timber["y"], timber["z"]) if flat else (timber["z"], timber["y"])
    at = through[1] if face in (1, 4) else through[0]
    return {(x, w - across[0] if face in (1, 2) else across[1] - w, 2 * radius)
            for sweep, start, stop, radius, x, w in timber["holes"]
            if sweep == ("z" if flat else "y") and start <= at + 1e-6 and stop >= at - 1e-6}


def beside(one, other):
    """What of one is nowhere in the other."""
    return [a for a in one if not any(max(abs(i - j) for i, j in zip(a, b)) < 1e-4 for b in other)]


def outlines_of(path, unit):
    """The closed WOOD outlines of a file, inches, as one shape: those that run clockwise are openings."""
    import ezdxf
    from shapely.geometry import Polygon
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    scale = 1 / 25.4 if unit == "mm" else 1
    shape, holes = Polygon(), []
    lines = doc.modelspace().query('POLYLINE[layer=="WOOD"]')
    for line in lines:
        points = [(v.dxf.location.x * scale, v.dxf.location.y * scale) for v in line.vertices]
        polygon = Polygon(points)
        if not line.is_closed:
            return None, audit, doc
        if polygon.exterior.is_ccw:
            shape = shape.union(polygon)
        else:
            holes.append(polygon)
    for hole in holes:
        shape = shape.difference(hole)
    return shape, audit, doc


def polygons(folder, rows, unit):
    from shapely.affinity import translate
    patterns, timbers = read_rows(rows)
    audited, drilled = set(), 0
    for p in patterns:
        path = str(pathlib.Path(folder) / p["file"])
        shape, audit, doc = outlines_of(path, unit)
        what = f"{p['file']} on {p['mark']} face {p['face']}"
        if path not in audited:
            audited.add(path)
            check(not audit.has_errors and not audit.has_fixes, f"{what}: {[e.message for e in audit.errors + audit.fixes]}")
            drill = [c for c in doc.modelspace().query('CIRCLE[layer=="DRILL"]')]
            check(len({(round(c.dxf.center.x, 3), round(c.dxf.center.y, 3)) for c in drill}) == len(drill), f"{what}: a hole twice")
            unit_said = any(t.dxf.text.endswith(f"= 1 {unit}") for t in doc.modelspace().query("TEXT"))
            check(unit_said, f"{what}: says its unit")
        scale = 1 / 25.4 if unit == "mm" else 1
        drill = [(c.dxf.center.x * scale + p["zero"], c.dxf.center.y * scale, 2 * c.dxf.radius * scale)
                 for c in doc.modelspace().query('CIRCLE[layer=="DRILL"]')]
        holes = face_holes(timbers[p["mark"]], p["face"])
        off = beside(drill, holes)
        check(not off, f"{what}: drilled where no hole is: {off[:2]}")
        # A hole just outside of the stretch is another pattern's.
        within = [h for h in holes if p["zero"] + p["from"] < h[0] - h[2] / 2 and h[0] + h[2] / 2 < p["zero"] + p["to"]]
        off = beside(within, drill)
        check(not off, f"{what}: holes that are not drilled: {off[:2]}")
        drilled += len(drill)
        want = translate(face_polygon(timbers[p["mark"]], p["face"], p["zero"] + p["from"], p["zero"] + p["to"]),
                         -p["zero"], 0)
        if shape is None:
            check(False, f"{what}: an open outline")
            continue
        off = shape.symmetric_difference(want).area
        check(off < 1e-4 and want.area > 0, f"{what}: {off:.6f} in² of {want.area:.3f} differ")
        p["shape"] = shape
    print(f"{len(audited)} files, {len(patterns)} places, {drilled} holes")


def rafter(folder, rows, mark):
    """9 in 12: off square by atan(9/12); over a depth d a plumb cut runs back by 3/4 d and is 5/4 d long. The bird's
    mouth of seat s has a plumb side of 3/4 s, and stands s · 9/15 deep square to the rafter (similar triangles)."""
    patterns, timbers = read_rows(rows)
    depth = timbers[mark]["z"][1] - timbers[mark]["z"][0]
    seen = set()
    for p in patterns:
        if p["mark"] != mark:
            continue
        shape, _, _ = outlines_of(str(pathlib.Path(folder) / p["file"]), "in")
        corners = [tuple(c) for c in list(shape.exterior.coords)[:-1]]
        sides = [(a, b, math.dist(a, b)) for a, b in zip(corners, corners[1:] + corners[:1])]
        askew = [s for s in sides if abs(s[0][0] - s[1][0]) > 1e-4 and abs(s[0][1] - s[1][1]) > 1e-4]
        if len(askew) == 1:  # an end
            (a, b, length), = askew
            check(abs(abs(a[0] - b[0]) - 0.75 * depth) < 1e-6, f"{p['file']}: runs back {abs(a[0] - b[0])}")
            check(abs(length - 1.25 * depth) < 1e-6, f"{p['file']}: plumb cut {length}")
            seen.add("end")
        elif len(askew) == 2:
            seat, plumb = sorted((s[2] for s in askew), reverse=True)
            top = {c for s in askew for c in s[:2]}
            deep = max(c[1] for c in top) - min(c[1] for c in top)
            check(abs(plumb - 0.75 * seat) < 1e-6, f"{p['file']}: seat {seat}, plumb {plumb}")
            check(abs(deep - 0.6 * seat) < 1e-6, f"{p['file']}: seat {seat}, deep {deep}")
            seen.add("mouth")
    check(seen == {"end", "mouth"}, f"{mark}: only {seen}")


# ---- pictures

DPI = 300
MM = DPI / 25.4  # px


def pictures(path):
    """Each page as poppler draws it: what is dark, by row and column."""
    import numpy
    ppm = subprocess.run(["pdftoppm", "-r", str(DPI), path], check=True, capture_output=True).stdout
    at = 0
    while at < len(ppm):
        size = re.compile(rb"P6\s+(\d+)\s+(\d+)\s+255\s").match(ppm, at)
        width, height = int(size[1]), int(size[2])
        at = size.end() + width * height * 3
        yield numpy.frombuffer(ppm, numpy.uint8, width * height * 3, size.end()).reshape(height, width, 3).max(axis=2) < 150


CUT_WIDTH = 0.5  # mm: of no other stroke


def cut_strokes(path, page):
    """The straight strokes of a page that are as wide as what is cut, as poppler reads them: px, as in the picture."""
    svg = subprocess.run(["pdftocairo", "-svg", "-f", str(page), "-l", str(page), path, "-"], check=True,
                         capture_output=True, text=True).stdout
    point, out = 72 / 25.4, []
    for tag in re.findall(r"<path [^>]*>", svg):
        wide = re.search(r'stroke-width[:=]"?([\d.]+)', tag)
        straight = re.search(r' d="M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+) ?"', tag)
        if not wide or not straight or abs(float(wide[1]) / point - CUT_WIDTH) > 0.01:
            continue
        turn = re.search(r'transform="matrix\(([^)]*)\)"', tag)
        a, b, c, d, e, f = map(float, re.split(r"[ ,]+", turn[1])) if turn else (1, 0, 0, 1, 0, 0)
        n = list(map(float, straight.groups()))
        out += [((a * x + c * y + e) * DPI / 72, (b * x + d * y + f) * DPI / 72) for x, y in (n[:2], n[2:])]
    return out


def crosses(dark):
    """Middles of the rings (2 mm in radius) with a cross in them: px, x and y."""
    import numpy
    radius, turns = 2 * MM, 48
    height, width = dark.shape
    edge = int(radius) + 2
    score = numpy.zeros((height - 2 * edge, width - 2 * edge), numpy.float32)
    for i in range(turns):
        dx, dy = round(radius * math.cos(2 * math.pi * i / turns)), round(radius * math.sin(2 * math.pi * i / turns))
        score += dark[edge + dy:height - edge + dy, edge + dx:width - edge + dx]
    score /= turns
    found = []
    for y, x in zip(*numpy.nonzero(score > 0.75)):
        found.append((x + edge, y + edge, score[y, x]))
    out = []
    while found:  # one for each cluster, by its weight
        x0, y0, _ = found[0]
        near = [f for f in found if abs(f[0] - x0) < radius and abs(f[1] - y0) < radius]
        found = [f for f in found if f not in near]
        weight = sum(f[2] for f in near)
        out.append((sum(f[0] * f[2] for f in near) / weight, sum(f[1] * f[2] for f in near) / weight))
    return out


def longest_run(line):
    """Start and length of the longest row of dark px."""
    import numpy
    edges = numpy.flatnonzero(numpy.diff(numpy.concatenate(([0], line.astype(numpy.int8), [0]))))
    runs = list(zip(edges[0::2], edges[1::2]))
    return max(((b - a, a) for a, b in runs), default=(0, 0))


def bar(rows, aside, want):
    """How far off a check bar is, mm: the longest stroke in `rows`, measured between the middles of the strokes across
    its ends, which are met `aside` px beside it."""
    import numpy
    (length, start), y = max((longest_run(row), i) for i, row in enumerate(rows))
    line = rows[y + aside, max(start - 2, 0):start + length + 2]
    edges = numpy.flatnonzero(numpy.diff(numpy.concatenate(([0], line.astype(numpy.int8), [0]))))
    middles = [(a + b) / 2 for a, b in zip(edges[0::2], edges[1::2])]
    return abs((max(middles) - min(middles)) / MM - want) if middles else want


def bars(dark, want):
    height, width = dark.shape
    return [bar(dark[int(height - 25 * MM):int(height - 11 * MM)], -int(MM), want),
            bar(dark[:, int(11 * MM):int(22 * MM)].T, int(MM), want)]


def cut_extents(path, scale):
    """How wide and high what is cut is in the file: mm, the lesser first; None where nothing is."""
    import ezdxf
    lines = ezdxf.readfile(path).modelspace().query('LINE[layer=="CUT"]')
    points = [(25.4 * scale * p.x, 25.4 * scale * p.y) for line in lines for p in (line.dxf.start, line.dxf.end)]
    return sorted(max(p[i] for p in points) - min(p[i] for p in points) for i in (0, 1)) if points else None


def sheets(path):
    """Pages, pattern by pattern: a list of (column, row, number, picture) each."""
    out = []
    for number, dark in enumerate(pictures(path), 1):
        words = subprocess.run(["pdftotext", "-f", str(number), "-l", str(number), path, "-"], check=True,
                               capture_output=True, text=True).stdout
        named = re.search(r"Sheet ([A-Z]+)(\d+), the last is", words)
        column, row = (ord(named[1]) - ord("A"), int(named[2]) - 1) if named else (0, 0)
        if (column, row) == (0, 0):
            out.append([])
        out[-1].append((column, row, number, dark))
    return out


def tiles(folder, rows, scale="1"):
    """With a scale other than 1 what is wanted is so much larger: then all must fail."""
    path = str(pathlib.Path(folder) / "pages.pdf")
    patterns, _ = read_rows(rows)
    files = list(dict.fromkeys(p["file"] for p in patterns))
    groups = sheets(path)
    check(len(groups) == len(files), f"{len(groups)} patterns on pages, {len(files)} files")
    joined = measured = 0
    for file, group in zip(files, groups):
        at = {}
        cut = []
        for column, row, number, dark in group:
            page = f"page {number}"
            for off in bars(dark, 101.6 * float(scale)):
                check(off < 0.2, f"{page}: a bar is {off:.2f} mm off")
            marks = crosses(dark)
            check(len(group) == 1 or len(marks) >= 2, f"{page}: {len(marks)} crosses")
            # Where this page lies against the first: by the crosses that it shares with a neighbour already laid.
            if (column, row) == (0, 0):
                at[0, 0] = ((0, 0), marks)
            else:
                beside = (column - 1, row) if column else (column, row - 1)
                base, theirs = at[beside]
                offsets = []
                for tx, ty in theirs:
                    for mx, my in marks:
                        dx, dy = tx - mx, ty - my
                        along, across = (dx, dy) if column else (dy, dx)
                        if abs(across) < 0.3 * MM and along > 50 * MM:
                            offsets.append((dx, dy))
                check(len(offsets) >= 2, f"{page}: shares {len(offsets)} crosses with its neighbour")
                if not offsets:
                    continue
                spread = max(math.dist(a, b) for a in offsets for b in offsets) / MM
                check(spread < 0.2, f"{page}: its crosses are {spread:.2f} mm apart when laid on the neighbour's")
                step = [sum(o[i] for o in offsets) / len(offsets) for i in (0, 1)]
                at[column, row] = ((base[0] + step[0], base[1] + step[1]), marks)
                joined += 1
            (x0, y0), _ = at[column, row]
            cut += [(x + x0, y + y0) for x, y in cut_strokes(path, number)]
        want = cut_extents(str(pathlib.Path(folder) / file), float(scale))
        check(bool(cut) == (want is not None), f"{file}: what is cut is not on its pages")
        if not cut or want is None:
            continue
        measured += 1
        got = sorted((max(p[i] for p in cut) - min(p[i] for p in cut)) / MM for i in (0, 1))
        for g, w in zip(got, want):
            off = abs(g - w)
            check(off < max(0.2, 0.2 * w / 200), f"{file}: {g:.2f} mm on {len(group)} pages, {w:.2f} wanted")
            print(f"{file}: {len(group)} pages, {w:.2f} mm in the file, {g:.2f} on paper")
    check(joined > 0 and measured > 1, f"{joined} joins, {measured} patterns with cuts")
    print(f"{joined} joins")


def pdf(path, inches):
    """A printed file's pages at 300 dpi: its check bars, 4 in or 100 mm."""
    want = 101.6 if inches == "in" else 100
    pages = 0
    for dark in pictures(path):
        pages += 1
        for off in bars(dark, want):
            check(off < 0.2, f"{path}, page {pages}: a bar is {off:.2f} mm off")
    check(pages > 0, f"{path}: no pages")
    print(f"{pages} pages")


def labels(folder, rows):
    """The code of each label, cut out of its page alone, reads its text; the first page of each sheet."""
    read = 0
    for line in pathlib.Path(rows).read_text().splitlines():
        _, page, left, top, width, height, text = line.split(" ", 6)
        if page != "1":
            continue
        left, top, width, height = (round(float(n) * MM) for n in (left, top, width, height))
        png = pathlib.Path(folder) / "label.png"
        subprocess.run(["pdftoppm", "-r", str(DPI), "-f", page, "-l", page, "-x", str(left), "-y", str(top), "-W", str(width),
                        "-H", str(height), "-png", "-singlefile", pathlib.Path(folder) / "pages.pdf",
                        png.with_suffix("")], check=True)
        got = subprocess.run(["zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", str(png)],
                             capture_output=True, text=True).stdout.strip()
        check(got == text, f"label {text}: reads {got!r}")
        read += 1
    check(read >= 8, f"{read} labels")


def main():
    what = sys.argv[1]
    {"polygons": polygons, "rafter": rafter, "tiles": tiles, "pdf": pdf, "labels": labels}[what](*sys.argv[2:])
    print(f"patterns: {passed} passed, {failed} failed")
    sys.exit(0 if passed and not failed else 1)


main()
