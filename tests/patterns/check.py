"""Full-size patterns against outside programs. Prints `patterns: N passed, N failed`.

  check.py polygons FOLDER ROWS UNIT   each DXF is read and audited by ezdxf; its closed WOOD outlines are what shapely
                                       leaves of the timber's face when end cuts and pockets are taken out of it
  check.py rafter FOLDER ROWS MARK     the same outlines of a rafter at 9 in 12 against plain trigonometry
  check.py tiles FOLDER                printed pages at 300 dpi: crosses of neighbours, the check bars and lengths over
                                       a join are found in the picture and measured

ROWS are what pattern_rows prints (inches), UNIT mm or in.
"""
import math
import pathlib
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


def picture(svg):
    """Grey pixels of a page as rsvg-convert draws it, as rows of bytes."""
    png = subprocess.run(["rsvg-convert", "-d", str(DPI), "-p", str(DPI), "-b", "white", svg], check=True,
                         capture_output=True).stdout
    return png_rows(png)


def png_rows(png):
    import struct
    import zlib
    at, data, width, height, channels = 8, b"", 0, 0, 4
    while at < len(png):
        size, kind = struct.unpack(">I4s", png[at:at + 8])
        body = png[at + 8:at + 8 + size]
        if kind == b"IHDR":
            width, height, depth, colour = struct.unpack(">IIBB", body[:10])
            channels = {0: 1, 2: 3, 6: 4}[colour]
        elif kind == b"IDAT":
            data += body
        at += size + 12
    raw = zlib.decompress(data)
    import numpy
    stride = width * channels
    rows = numpy.zeros((height, stride), numpy.uint8)
    before = numpy.zeros(stride, numpy.uint8)
    for y in range(height):
        kind = raw[y * (stride + 1)]
        line = numpy.frombuffer(raw, numpy.uint8, stride, y * (stride + 1) + 1).copy()
        if kind == 1:
            line = line.reshape(-1, channels)
            line = (numpy.cumsum(line.astype(numpy.uint32), axis=0) & 255).astype(numpy.uint8).reshape(-1)
        elif kind == 2:
            line = line + before
        elif kind in (3, 4):
            out = numpy.zeros(stride, numpy.uint8)
            for x in range(stride):
                left = int(out[x - channels]) if x >= channels else 0
                up = int(before[x])
                if kind == 3:
                    guess = (left + up) // 2
                else:
                    corner = int(before[x - channels]) if x >= channels else 0
                    estimate = left + up - corner
                    dl, du, dc = abs(estimate - left), abs(estimate - up), abs(estimate - corner)
                    guess = left if dl <= du and dl <= dc else up if du <= dc else corner
                out[x] = (int(line[x]) + guess) & 255
            line = out
        rows[y] = line
        before = line
    return rows.reshape(height, width, channels)[:, :, :3]


def main():
    what = sys.argv[1]
    {"polygons": polygons, "rafter": rafter}[what](*sys.argv[2:])
    print(f"patterns: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
