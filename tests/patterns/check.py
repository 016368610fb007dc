"""Full-size patterns against outside programs. Prints `patterns: N passed, N failed`.

  check.py polygons FOLDER ROWS UNIT   each DXF is read and audited by ezdxf; its closed WOOD outlines are what shapely
                                       leaves of the timber's face when end cuts and pockets are taken out of it
  check.py rafter FOLDER ROWS MARK     the same outlines of a rafter at 9 in 12 against plain trigonometry
  check.py tiles FOLDER ROWS [SCALE]   printed pages at 300 dpi (English, inches): crosses of neighbours, the check bars
                                       and what is cut are found in the picture; pages laid cross on cross measure as the
                                       DXF does, within 0.2 mm over 200 mm
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
            timber = timbers[words[1]] = {"length": n[0], "y": n[1:3], "z": n[3:5], "cuts": [], "pockets": []}
        elif words[0] == "cut":
            timber["cuts"].append(list(map(float, words[1:])))
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
    audited = set()
    for p in patterns:
        path = str(pathlib.Path(folder) / p["file"])
        shape, audit, doc = outlines_of(path, unit)
        what = f"{p['file']} on {p['mark']} face {p['face']}"
        if path not in audited:
            audited.add(path)
            check(not audit.has_errors and not audit.has_fixes, f"{what}: {[e.message for e in audit.errors + audit.fixes]}")
            circles = [(round(c.dxf.center.x, 4), round(c.dxf.center.y, 4)) for c in doc.modelspace().query("CIRCLE")]
            drill = [c for c in doc.modelspace().query('CIRCLE[layer=="DRILL"]')]
            check(len({(round(c.dxf.center.x, 3), round(c.dxf.center.y, 3)) for c in drill}) == len(drill), f"{what}: a hole twice")
            unit_said = any(t.dxf.text.endswith(f"= 1 {unit}") for t in doc.modelspace().query("TEXT"))
            check(unit_said and len(circles) >= len(drill), f"{what}: says its unit")
        want = translate(face_polygon(timbers[p["mark"]], p["face"], p["zero"] + p["from"], p["zero"] + p["to"]),
                         -p["zero"], 0)
        if shape is None:
            check(False, f"{what}: an open outline")
            continue
        off = shape.symmetric_difference(want).area
        check(off < 1e-4 and want.area > 0, f"{what}: {off:.6f} in² of {want.area:.3f} differ")
        p["shape"] = shape
    print(f"{len(audited)} files, {len(patterns)} places")


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


def picture(svg):
    """The page as librsvg and poppler draw it: red, green, blue by row and column."""
    import numpy
    pdf = subprocess.run(["rsvg-convert", "-f", "pdf", svg], check=True, capture_output=True).stdout
    ppm = subprocess.run(["pdftoppm", "-r", str(DPI), "-"], input=pdf, check=True, capture_output=True).stdout
    size = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", ppm)
    width, height = int(size[1]), int(size[2])
    return numpy.frombuffer(ppm, numpy.uint8, width * height * 3, size.end()).reshape(height, width, 3)


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
    """How wide and high what is cut is in the file, with the strokes' own width on paper: mm, the lesser first."""
    import ezdxf
    half = 0.5 / 2
    model = ezdxf.readfile(path).modelspace()
    points = []
    for line in model.query('LINE[layer=="CUT"]'):
        (ax, ay), (bx, by) = [(25.4 * scale * p.x, 25.4 * scale * p.y) for p in (line.dxf.start, line.dxf.end)]
        long = math.dist((ax, ay), (bx, by))
        nx, ny = -(by - ay) / long * half, (bx - ax) / long * half
        points += [(x + i * nx, y + i * ny) for x, y in ((ax, ay), (bx, by)) for i in (1, -1)]
    return sorted(max(p[i] for p in points) - min(p[i] for p in points) for i in (0, 1))


def sheets(folder):
    """Pages, pattern by pattern: a list of (column, row, file) each."""
    out = []
    for svg in sorted(pathlib.Path(folder).glob("page-*.svg")):
        words = re.sub("<[^>]*>", "", svg.read_text())
        named = re.search(r"Sheet ([A-Z]+)(\d+), the last is", words)
        column, row = (ord(named[1]) - ord("A"), int(named[2]) - 1) if named else (0, 0)
        if (column, row) == (0, 0):
            out.append([])
        out[-1].append((column, row, str(svg)))
    return out


def tiles(folder, rows, scale="1"):
    """With a scale other than 1 what is wanted is so much larger: then all must fail."""
    import numpy
    patterns, _ = read_rows(rows)
    files = list(dict.fromkeys(p["file"] for p in patterns))
    groups = sheets(folder)
    check(len(groups) == len(files), f"{len(groups)} patterns on pages, {len(files)} files")
    joined = 0
    for file, group in zip(files, groups):
        at = {}
        reds = []
        for column, row, svg in group:
            image = picture(svg).astype(numpy.int16)
            dark = image.max(axis=2) < 150
            red = (image[:, :, 0] - image[:, :, 2] > 60)
            for off in bars(dark, 101.6 * float(scale)):
                check(off < 0.2, f"{svg}: a bar is {off:.2f} mm off")
            marks = crosses(dark)
            check(len(group) == 1 or len(marks) >= 2, f"{svg}: {len(marks)} crosses")
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
                check(len(offsets) >= 2, f"{svg}: shares {len(offsets)} crosses with its neighbour")
                if not offsets:
                    continue
                spread = max(math.dist(a, b) for a in offsets for b in offsets) / MM
                check(spread < 0.2, f"{svg}: its crosses are {spread:.2f} mm apart when laid on the neighbour's")
                step = [sum(o[i] for o in offsets) / len(offsets) for i in (0, 1)]
                at[column, row] = ((base[0] + step[0], base[1] + step[1]), marks)
                joined += 1
            (x0, y0), _ = at[column, row]
            ys, xs = numpy.nonzero(red)
            if len(xs):
                reds.append((xs.min() + x0, xs.max() + 1 + x0, ys.min() + y0, ys.max() + 1 + y0))
        if not reds:
            continue
        got = sorted(((max(r[1] for r in reds) - min(r[0] for r in reds)) / MM,
                      (max(r[3] for r in reds) - min(r[2] for r in reds)) / MM))
        want = cut_extents(str(pathlib.Path(folder) / file), float(scale))
        for g, w in zip(got, want):
            off = abs(g - w)
            check(off < max(0.2, 0.2 * w / 200), f"{file}: {g:.2f} mm on {len(group)} pages, {w:.2f} wanted")
            print(f"{file}: {len(group)} pages, {w:.2f} mm in the file, {g:.2f} on paper")
    print(f"{joined} joins")


def pdf(path, inches):
    """A printed file's pages at 300 dpi: its check bars, 4 in or 100 mm."""
    import numpy
    want = 101.6 if inches == "in" else 100
    ppm = subprocess.run(["pdftoppm", "-r", str(DPI), path], check=True, capture_output=True).stdout
    at = pages = 0
    while at < len(ppm):
        size = re.compile(rb"P6\s+(\d+)\s+(\d+)\s+255\s").match(ppm, at)
        width, height = int(size[1]), int(size[2])
        dark = numpy.frombuffer(ppm, numpy.uint8, width * height * 3, size.end()).reshape(height, width, 3).max(axis=2) < 150
        at = size.end() + width * height * 3
        pages += 1
        for off in bars(dark, want):
            check(off < 0.2, f"{path}, page {pages}: a bar is {off:.2f} mm off")
    print(f"{pages} pages")


def labels(folder, rows):
    """The code of each label, cut out of its page alone, reads its text; the first page of each sheet."""
    read = 0
    for line in pathlib.Path(rows).read_text().splitlines():
        _, page, left, top, width, height, text = line.split(" ", 6)
        if page != "1":
            continue
        svg = (pathlib.Path(folder) / f"page-{int(page):03d}.svg").read_text()
        one = re.sub(r'width="[^"]*" height="[^"]*" viewBox="[^"]*"',
                     f'width="{width}mm" height="{height}mm" viewBox="{left} {top} {width} {height}"', svg, count=1)
        png = subprocess.run(["rsvg-convert", "-d", str(DPI), "-p", str(DPI), "-b", "white"], input=one.encode(),
                             check=True, capture_output=True).stdout
        path = pathlib.Path(folder) / "label.png"
        path.write_bytes(png)
        got = subprocess.run(["zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", str(path)],
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
