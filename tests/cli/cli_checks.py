"""Runs the command line and checks what it says. usage: cli_checks.py PROGRAM README

Beside each table its source; what has none but geometry is solved here by SciPy (a root finder on the roof's own
lines) or plain vectors, not by the program's formulas.
"""
import fcntl
import json
import math
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zlib

from scipy.optimize import brentq, fsolve

program, readme = sys.argv[1:3]
passed = failed = 0


def check(name, ok, note=""):
    global passed, failed
    if ok:
        passed += 1
    else:
        failed += 1
        print(f"FAILED {name} {note}")


def near(name, value, wanted, within):
    check(name, abs(value - wanted) <= within, f"{value} is not {wanted} within {within}")


def run(*words):
    return subprocess.run([program, *words], capture_output=True, text=True, encoding="utf-8")


def answer(*words):
    done = run(*words, "--json")
    if done.returncode != 0:
        check(" ".join(words), False, done.stderr)
        return {}
    return json.loads(done.stdout)


def rafter(span, pitch, *more, depth="7-1/2\""):
    return answer("rafter", "--span", span, "--pitch", pitch, "--depth", depth, *more)


# ---- printed tables

# NAVEDTRA 14044 ch. 2; Griffith, Carpentry (1916); Hodgson, ABC of the Steel Square.
for rise, printed in [(6, 13.42), (7, 13.89), (8, 14.42), (9, 15.00), (10, 15.62), (12, 16.97)]:
    near(f"common per foot at {rise}", rafter("20'", f"{rise}:12")["step_length_in"], printed, 0.005)
# NAVEDTRA 14044: 111.12 in, printed 9 ft 3 1/8 in.
r = rafter("16'", "7:12", "--division", "8")
near("16 ft at 7", r["line_length_in"], 111.12, 0.03)
check("16 ft at 7 as printed", r["line_length_text"] == "9' 3-1/8\"", r["line_length_text"])
# Griffith, app. IV: 17 ft 8.12 in, printed 17 ft 8 1/8 in.
r = rafter("25'", "12:12", "--division", "8")
near("25 ft at 12", r["line_length_in"], 212.12, 0.02)
check("25 ft at 12 as printed", r["line_length_text"] == "17' 8-1/8\"", r["line_length_text"])
# US Army subcourse EN0069A: 144 2/12 in by steps of 14 5/12 (exact 144.22).
r = answer("rafter", "--run", "10'", "--pitch", "8:12", "--depth", "7-1/2\"")
near("run 10 ft at 8", r["line_length_in"], 144 + 2 / 12, 0.06)
check("ten whole steps", r["steps"] == 10 and r["step_odd_in"] == 0)
# TAFE tables to AS 1684, per unit of run.
for deg, unit in [(30, 1.15470), (22, 1.07853), (40, 1.30541)]:
    r = answer("rafter", "--run", "10000", "--pitch", f"{deg}°", "--depth", "200", "--seat", "50", "--unit", "mm")
    near(f"rafter at {deg} degrees", r["line_length_in"] * 25.4 / 10000, unit, 6e-6)
# Trade geometry, the handbook's example: 10 in 12, 7 1/2 in, set to 40.
a = answer("angle", "--pitch", "10:12", "--depth", "7-1/2\"", "--scale-step", "1")
near("10 in 12", a["slope_deg"], 39.806, 0.0005)  # common practice: about 40
near("its complement", a["complement_deg"], 50.194, 0.0005)
forty = [s for s in a["settings"] if s["deg"] == 40][0]
near("arris", forty["arris_in"], 0.043, 0.0005)
near("gap", forty["gap_in"], 0.033, 0.0005)
near("gap of two", forty["gap_mated_in"], 0.066, 0.0005)
check("graduations either side", [s["deg"] for s in a["settings"]] == [39, 40])
# International yard and pound agreement, 1959.
near("an inch", answer("length", "1\"")["mm"], 25.4, 0)
l = answer("length", "12' 7-3/8 + 3 1/2")
check("a sum", l["inches"] == 154.875 and l["text"] == "12' 10-7/8\"", str(l))
check("bare mm", answer("length", "3200", "--unit", "mm")["inches"] == 125.984251969)
# NAVEDTRA 14044: half or more goes up, 0.12 in is 1/8 in.
check("0.12 in", "1/8\"" in answer("length", "0.12")["text"])

# ---- an outside solver

# Two unlike sides: the ridge stands where the two top edges, as lines, have one height.
for span, left, right, heels, plates in [(288, 12, 8, (6, 7), (0, 10)), (200, 5, 14, (4.5, 8.25), (3, -6)),
                                         (377.5, 9.5, 3, (8, 5), (0, 0))]:
    got = answer("rafter", "--span", str(span), "--pitch", f"{left}:12", "--pitch-right", f"{right}:12", "--depth",
                 "9-1/4\"", "--heel", str(heels[0]), "--heel-right", str(heels[1]), "--plate-height", str(plates[0]),
                 "--plate-height-right", str(plates[1]))
    gap = lambda x: (plates[0] + heels[0] + x * left / 12) - (plates[1] + heels[1] + (span - x) * right / 12)
    run_left = brentq(gap, 0, span, xtol=1e-12)
    near(f"ridge over {span}", got["run_in"], run_left, 1e-6)
    near(f"right run over {span}", got["right"]["run_in"], span - run_left, 1e-6)
    near(f"ridge off centre over {span}", got["ridge_off_centre_in"], run_left - span / 2, 1e-6)

# The thrust of a loose pair: both halves in balance about the peak and the whole in balance upright.
for span, left, right, load in [(288, 8, 8, 30), (288, 12, 8, 55)]:
    got = answer("rafter", "--span", str(span), "--pitch", f"{left}:12", "--pitch-right", f"{right}:12", "--depth",
                 "9-1/4\"", "--load", str(load), "--spacing", "16\"")
    a_ft, b_ft = got["run_in"] / 12, (span - got["run_in"]) / 12
    w = load * 16 / 12

    def balance(x):
        h, v_left, v_right = x
        return [v_left * a_ft - h * a_ft * left / 12 - w * a_ft**2 / 2,
                v_right * b_ft - h * b_ft * right / 12 - w * b_ft**2 / 2, v_left + v_right - w * (a_ft + b_ft)]

    near(f"thrust at {left} and {right}", got["thrust_lb"], fsolve(balance, [100, 100, 100])[0], 0.01)

# A ridge beam: the seat's end lies on the bottom edge, as a line from the plate's seat end.
r = rafter("24'", "8:12", "--ridge-beam", "7-1/2\"", "--ridge-seat", "3-3/4\"", "--seat", "3-1/2\"")
x = 144 - 3.75 + 3.75
near("ridge beam top", r["ridge_beam_top_in"], brentq(lambda y: (x - 3.5) * 8 - 12 * y, 0, 200), 1e-6)
# A ridge board: the formulas of the trade, written out.
r = rafter("24'", "8:12", "--ridge", "1-1/2\"", "--overhang", "1'", "--seat", "3-1/2\"")
cos = 12 / math.hypot(12, 8)
near("line length", r["line_length_in"], 144 / cos, 1e-6)
near("deduction", r["ridge_deduction_in"], 0.75 / cos, 1e-6)
near("tip to tip", r["tip_to_tip_in"], (144 - 0.75 + 12) / cos, 1e-6)
near("heel", r["heel_height_in"], 7.5 / cos - 3.5 * 8 / 12, 1e-6)
near("plumb depth", r["plumb_depth_in"], 7.5 / cos, 1e-6)
near("bird's mouth", r["birdsmouth_depth_in"], 3.5 * 8 / math.hypot(12, 8), 1e-6)
near("peak", r["peak_height_in"], r["heel_height_in"] + 96, 1e-6)
near("board's top", r["ridge_board_top_in"], r["peak_height_in"] - 0.75 * 8 / 12, 1e-6)
marks = {m["id"]: m["from_peak_in"] for m in r["marks_top_in"]}
near("wall line mark", marks["wall_line"], r["line_length_in"] - r["ridge_deduction_in"], 1e-6)
near("tail mark", marks["tail"], r["tip_to_tip_in"], 1e-6)
check("each mark has a name", all(m["name"] for m in r["marks_top_in"] + r["marks_bottom_in"]))
check("past a quarter is said", any(c["id"] == "notch_past_quarter" for c in r["cautions"]))
# Heel given: the seat follows.
h = rafter("24'", "8:12", "--heel", "6\"")
near("seat from heel", h["seat_in"], (7.5 / cos - 6) * 12 / 8, 1e-6)

# ---- hips and valleys


def corner(*words):
    return answer("corner", *words)


# NAVEDTRA 14044; Griffith; Audel's Guide vol. 3: hip for a foot of common run, jack difference at 16 in.
near("hip per foot at 8", corner("--pitch", "8:12")["length_in"], 18.76, 0.005)
near("hip per foot at 12", corner("--pitch", "12:12")["length_in"], 20.78, 0.005)
near("jacks at 8", corner("--pitch", "8:12")["jack_difference_in"], 19.23, 0.005)
near("jacks at 10", corner("--pitch", "10:12")["jack_difference_other_in"], 20.83, 0.005)
# Hodgson: span 24 ft, end run 16 ft, rise 10 ft.
c = corner("--pitch", "10:12", "--other", "10'/16'", "--run", "12'")
near("an unequal hip's run", c["run_in"], 240, 1e-6)
near("an unequal hip's rise", c["rise_in"], 120, 1e-6)
# Published irregular-roof framing notes, recomputed: valley of 12 and 8 in 12.
for words in (["--valley"], ["--eave-angle", "270"]):
    c = corner("--pitch", "12:12", "--other", "8:12", *words)
    check("it is a valley", c["kind"] == "valley")
    for key, wanted in {"slope_deg": 29.01714, "plan_deg": 33.69007, "jack_side_deg": 46.68614, "backing_deg": 36.03989,
                        "jack_difference_in": 15.08495, "plan_other_deg": 56.30993, "jack_side_other_deg": 29.01714,
                        "backing_other_deg": 17.92021, "jack_difference_other_in": 28.84441}.items():
        near(f"valley: {key}", c[key], wanted, 1.1e-5)
    check("a valley is not lowered", c["drop_in"] == 0 and c["hip_shift_in"] == 0)
# Published hip-drop example: 8 in 12, 1 1/2 in: about 3/8.
near("drop", corner("--pitch", "8:12")["drop_in"], 0.3536, 1e-4)
# Any two roofs by their heights over the plan alone: a hip's end lies where both stand as high as the ridge.
for eave, own, other in [(90, 8, 8), (120, 6, 9), (75, 12, 5), (135, 10, 7.5)]:
    c = corner("--eave-angle", str(eave), "--pitch", f"{own}:12", "--other", f"{other}:12", "--run", "10'")
    w = math.radians(eave)
    x, y = fsolve(lambda p: [own / 12 * p[1] - own * 10,
                             other / 12 * (p[0] * math.sin(w) - p[1] * math.cos(w)) - own * 10], [100, 100])
    near(f"hip at {eave}: plan", c["plan_deg"], math.degrees(math.atan2(y, x)), 1e-6)
    near(f"hip at {eave}: length", c["length_in"], math.sqrt(x * x + y * y + (own * 10) ** 2), 1e-5)
    # The jack a spacing from the corner climbs to the hip.
    near(f"hip at {eave}: first jack", c["jacks"][0]["line_in"], math.hypot(1, own / 12) * 16 * y / x, 1e-5)

# ---- refusals


def refused(name, wanted, *words):
    done = run(*words)
    check(name, done.returncode == 2 and done.stdout == "" and wanted in done.stderr,
          f"status {done.returncode}: {done.stdout}{done.stderr}")


base = ["rafter", "--span", "24'", "--pitch", "8:12", "--depth", "7-1/2\""]
refused("parallel eaves", "179", "corner", "--pitch", "8:12", "--eave-angle", "180")
refused("a level roof", "more than zero", "corner", "--pitch", "8:12", "--other", "0:12")
refused("a wall", "less than 90", "corner", "--pitch", "90°")
refused("no pitch of the first roof", "--pitch", "corner", "--other", "8:12")
refused("a seat that leaves no hip", "at most", "corner", "--pitch", "8:12", "--seat", "3'")
refused("no pitch", "--pitch", "rafter", "--span", "24'", "--depth", "7")
refused("seat too long", "1' 1-1/2\" at most", *base, "--seat", "20")
refused("seat too long in Spanish", "como máximo", *base, "--seat", "20", "--lang", "es")
refused("seat and heel", "--heel", *base, "--seat", "3", "--heel", "6")
refused("unknown option", "--colour", *base, "--colour", "red")
refused("option without its value", "--ridge", *base, "--ridge")
refused("option twice", "--span", *base, "--span", "25'")
refused("steep", "90", "angle", "--pitch", "95°")
refused("nonsense with its spot", "     ^", "length", "12 ab")
refused("division by zero", "zero", "length", "7/0")
refused("a word that is no command", "usage", "frobnicate")
refused("the ridge cannot be held with all", "ridge", *base, "--run", "11'", "--pitch-right", "7")
check("help", run("--help").returncode == 0 and "usage" in run("--help").stdout)
check("text without --json", "Line length: 14' 5-1/16\"" in run(*base).stdout)
check("Spanish text", "Largo de línea" in run(*base, "--lang", "es").stdout)

# ---- the crew's logs

shop = tempfile.mkdtemp()


def shop_file(name, text=None):
    path = os.path.join(shop, name)
    if text is not None:
        with open(path, "w", encoding="utf-8", newline="") as f:
            f.write(text)
    return path


def crc_line(*fields):
    """CRC-32 by Python's zlib (RFC 1950's library), not by the program."""
    line = "\t".join(fields)
    return f"{line}\t{zlib.crc32(line.encode()):08x}\n"


def log_text(book, events):
    body = f"bentbook log 1\t{book}\n" + "".join(events)
    return body + f"end\t{len(events)}\t{zlib.crc32(body.encode()):08x}\n"


def done_event(device, sequence, logical, timber, step, value=""):
    return crc_line("e", f"{device:016x}", str(sequence), str(logical), "1764000000000", "done", "Íñigo", timber, step,
                    value, "")


first = [done_event(1, 1, 1, "G-A1.1", "layout"), done_event(1, 2, 3, "G-A1.1", "end_cut/a", "table_deg=12.5000")]
second = [done_event(1, 1, 1, "G-A1.1", "layout"), done_event(2, 1, 2, "G-A1.1", "layout")]
shop_file("a.log", log_text("b1", first))
shop_file("b.log", log_text("b1", second))
shop_file("other.log", log_text("b2", []))
done = run("log", "merge", shop_file("a.log"), shop_file("b.log"), "-o", shop_file("c.log"))
check("merge", done.returncode == 0 and "3 events" in done.stdout, done.stdout + done.stderr)
run("log", "merge", shop_file("b.log"), shop_file("a.log"), "-o", shop_file("d.log"))
union = log_text("b1", [first[0], second[1], first[1]])
for name in ("c.log", "d.log"):
    with open(shop_file(name), encoding="utf-8", newline="") as f:
        check(f"{name} is the union", f.read() == union)
shown = answer("log", "show", shop_file("c.log"))
check("events shown", [e["logical"] for e in shown["events"]] == [1, 2, 3] and shown["events"][0]["who"] == "Íñigo")
check("conflict shown", [c["kind"] for c in shown["conflicts"]] == ["finished_twice"])
check("verify", run("log", "verify", shop_file("c.log")).returncode == 0)
shop_file("bad.log", union.replace("end_cut", "end_cot"))
done = run("log", "verify", shop_file("bad.log"), "--json")
check("damaged lines in JSON", done.returncode == 2 and json.loads(done.stdout)["troubles"][0]["line"] == 4, done.stdout)
refused("damaged line", "Line 4 is damaged", "log", "verify", shop_file("bad.log"))
refused("a damaged log is not merged", "Line 4 is damaged", "log", "merge", shop_file("bad.log"), shop_file("a.log"), "-o",
        shop_file("e.log"))
check("nothing written", not os.path.exists(shop_file("e.log")))
refused("two books", "two books", "log", "merge", shop_file("a.log"), shop_file("other.log"), "-o", shop_file("e.log"))
refused("no log", "This is no log", "log", "show", program)
run("book", "new", shop_file("demo.book"), "--demo")
plain = answer("steps", shop_file("demo.book"), "G-A1.1")
check("steps", plain["next"] == "layout" and not any(s["done"] for s in plain["steps"]))
worked = answer("steps", shop_file("demo.book"), "G-A1.1", "--log", shop_file("c.log"))
check("steps done", [s["id"] for s in worked["steps"] if s["done"]] == ["layout", "end_cut/a"] and
      worked["next"] == "end_cut/b")
flag = worked["flags"][0]
check("the plan's change told", flag["number"] == "table_deg" and flag["was"] == 12.5 and flag["now"] == 0, str(flag))
# What a sheet names: its reference faces, each recess's mate, the lines of a mortise on a housing's floor.
for mark in ("P-A1", "P-A2"):
    sheet = answer("book", "sheet", shop_file("demo.book"), mark)
    check(f"{mark}: reference faces", sheet["reference_faces"] == [1, 2])
    for recess in sheet["recesses"]:
        check(f"{mark}: a {recess['feature']} has a mate and depths", recess["mate"] and recess["depths"], str(recess))
        check(f"{mark}: a {recess['feature']} has lines", recess["lines"] or "diameter_in" in recess or
              recess["depths"][0]["through"], str(recess))
    for tool in sheet["tools"]:
        if tool["setting"] in ("fence", "shim_to_centre", "jig_offset"):
            check(f"{mark}: {tool['setting']} from a reference face", tool["face"] in (1, 2), str(tool))
# The outer side of girt and post is face 1, the reference: a 1 1/2 in mortise in the middle of a 6 in girt is 2 1/4 in from
# it, (6 - 1 1/2) / 2, and 4 1/4 in from the inner side of an 8 in post.
run("book", "new", shop_file("barn.book"), "--span", "24'", "--length", "36'", "--height", "10'", "--pitch", "9:12")
for mark in ("P-A1", "P-A2"):
    girts = [s for s in answer("steps", shop_file("barn.book"), mark)["steps"] if s["id"].startswith("mortise/G-")]
    for step in girts:
        fence = [n for n in step["numbers"] if n["name"] == "fence_in"]
        check(f"{mark} {step['id']}: fence", [(n["value"], n["face"], n["text"]) for n in fence] == [(2.25, 1, '2-1/4"')],
              str(fence))
    check(f"{mark} has girts", girts)
brace = answer("steps", shop_file("barn.book"), "B-A1.1")["steps"]
check("a tenon's settings", [(s["id"], s["part"], s["face_up"]) for s in brace if s.get("of") == "tenon/a"] ==
      [("tenon/a.1", "shoulder", 2), ("tenon/a.2", "shoulder", 4), ("tenon/a.3", "nose", 3), ("tenon/a.4", "cheeks", 1)],
      str(brace))
said = run("steps", shop_file("barn.book"), "B-A1.1").stdout
check("settings are told apart in words", "shoulder, face 2 up" in said and "shoulder, face 4 up" in said, said)
check("gauges name their face", "Near side, from face 2" in said, said)
refused("no such timber", "Z-9", "steps", shop_file("demo.book"), "Z-9")

# ---- raising

# Two posts of our own, each on a list of timbers. Green Douglas-fir: G .45 at 35.33 % (USDA FIA REF_SPECIES), 62.4 lb/ft³
# of water, 15 % for wet wood (trade.md).
run("book", "new", shop_file("posts.book"), "--list")
shop_file("posts.csv", "mark,kind,breadth,depth,length,species,x,y,z,rise\n"
          "X-1,post,8,8,96,Douglas-fir,0,0,0,90\nX-2,post,8,8,96,Douglas-fir,120,0,0,90\n")
done = run("book", "import", shop_file("posts.book"), shop_file("posts.csv"))
check("posts imported", done.returncode == 0, done.stderr)
# A crane for them, and a crew that carries next to nothing by hand.
posts = json.load(open(shop_file("posts.book"), encoding="utf-8"))
posts["raising"] = {"crane": {"present": True, "chart": [{"radius": 100 * 12 * 203_200_000, "capacity": 9000 * 45_359_237}]},
                    "crew": {"people": 2, "each": 45_359_237}}
json.dump(posts, open(shop_file("posts.book"), "w", encoding="utf-8"))
# Alone they fall when all temporaries are out: no order can end, and that is told before any search.
done = run("raise", shop_file("posts.book"))
check("a whole that falls is told", done.returncode == 2 and "does not stand" in done.stderr + done.stdout and
      "X-1" in done.stderr + done.stdout, done.stdout + done.stderr)
shop_file("braced.csv", "step,mark\n1,X-1\n2,X-2\n")
lifted = json.loads(run("raise", "check", shop_file("posts.book"), shop_file("braced.csv"), "--json").stdout)
post_lb = 8 * 8 * 96 / 1728 * 62.4 * 0.45 * 1.3533 * 1.15
for step in lifted["steps"]:
    check("weight with wet wood, in whole pounds upward", step["weight_lb"] == math.ceil(post_lb), str(step["weight_lb"]))
    near("middle of the post", step["cg"][2], 48, 1e-3)
    check("comes from above", step["from_direction"] == [0, 0, 1], str(step["from_direction"]))
    check("by crane, as its chart says", step["by"] == "crane" and step["rated"] and step["lifts"], str(step)[:300])
    near("one leg carries the post", sum(leg["tension_lb"] for leg in step["slings"]), step["weight_lb"], 0.01)

# A shed that a new book makes: an order with few temporaries, all out at the end.
run("book", "new", shop_file("small.book"), "--span", "12'", "--length", "16'", "--height", "8'", "--pitch", "8:12")
searched = answer("raise", shop_file("small.book"))
check("an order is found", searched["found"] and searched["good"] and searched["cost"]["temporaries"] <= 4,
      str(searched)[:300])
brought = [m for s in searched["steps"] for m in [p["timber"] for p in s["set_first"]] + s["timbers"]]
check("each timber once", len(brought) == len(set(brought)) and not searched["left_out"], str(brought))
up = set()
for step in searched["steps"]:
    check(f"step {step['step']} stands", step["stands"] and step["mechanisms"] == 0, str(step)[:300])
    up = (up | set(step["temporary_braces"])) - set(step["take_out"])
check("all temporaries are out at the end", not up, str(up))
check("the same again", answer("raise", shop_file("small.book"), "--seed", "1") == searched)
shop_file("order.csv", "step,mark\n1,X-1\n2,X-2\n")
done = run("raise", "check", shop_file("posts.book"), shop_file("order.csv"), "--json")
judged = json.loads(done.stdout)
# A post held at its foot alone can lean both ways: the point takes three motions, anchors its turning on the spot, and
# two of six are left.
check("posts without braces are told to fall", done.returncode == 2 and judged["first_unstable"] == 1 and
      judged["steps"][0]["mechanisms"] == 2 and not judged["steps"][0]["stands"], done.stdout[:300])
shop_file("half.csv", "step,mark\n1,X-1\n2,X-1+X-9\n")
done = run("raise", "check", shop_file("posts.book"), shop_file("half.csv"), "--json")
half = json.loads(done.stdout)
check("a bad order is told", done.returncode == 2 and not half["good"] and half["left_out"] == ["X-2"] and
      half["first_bad"] == 1 and any("X-9" in fault["text"] for fault in half["steps"][1]["faults"]), done.stdout)
shop_file("bad.csv", "step,mark\n1,X-1\nx,X-2\n")
refused("a bad line is told", "line 3, step", "raise", "check", shop_file("posts.book"), shop_file("bad.csv"))
done = run("raise", shop_file("small.book"))
check("an order as text", done.returncode == 0 and "No collapse found, as assumed" in done.stdout and
      "competent person" in done.stdout and max(map(len, done.stdout.splitlines())) <= 80, done.stdout)
check("never called safe", not re.search(r"\bsafe", done.stdout))
check("Spanish order", "Sin colapso hallado" in run("raise", shop_file("small.book"), "--lang", "es").stdout)
refused("seconds are a number", "cannot be read", "raise", shop_file("posts.book"), "--seconds", "soon")
shutil.rmtree(shop)

# ---- picks
site = tempfile.mkdtemp()


def site_file(name):
    return os.path.join(site, name)


# A bent by crane: its chart read by hand at the next longer radius, block and rigging off (trade.md, rigging practice).
run("book", "new", site_file("shed.book"), "--span", "12'", "--length", "10'", "--height", "8'", "--pitch", "8:12")
raised = json.load(open(site_file("shed.book"), encoding="utf-8"))
inch, pound = 203_200_000, 45_359_237
raised["raising"] = {
    "crane": {"present": True, "x": 240 * inch, "y": 0, "hook_block": 200 * pound, "rigging": 100 * pound,
              "chart": [{"radius": 20 * 12 * inch, "capacity": 4000 * pound},
                        {"radius": 60 * 12 * inch, "capacity": 1500 * pound}]},
    "stack_x": -240 * inch, "stack_y": 0, "crew": {"people": 2, "each": pound},
    "gear": [{"name": "red", "kind": "sling", "length": 96 * inch, "rated": 3000 * pound, "choked": 2000 * pound,
              "count": 2}]}
json.dump(raised, open(site_file("shed.book"), "w", encoding="utf-8"))
with open(site_file("order.csv"), "w", encoding="utf-8") as order:
    order.write("step,mark\n1,P-A1+P-E1+T-1+B-A1.1+B-E1.1\n2,L-A1\n3,P-Z9\n")
done = run("raise", "check", site_file("shed.book"), site_file("order.csv"), "--json")
check("a bad order ends with 2", done.returncode == 2 and "NOT GOOD" in done.stderr, done.stderr)
lifted = json.loads(done.stdout)
check("…and is told", not lifted["good"] and lifted["first_bad"] == 1 and
      any("P-Z9" in f["text"] for f in lifted["steps"][2]["faults"]), str(lifted["faults"]))
for step in lifted["steps"][:2]:
    near(f"radius at the stack, step {step['step']}", step["crane"]["radius_stack_in"], 480, 1e-3)
    near(f"radius in place, step {step['step']}", step["crane"]["radius_place_in"],
         math.hypot(step["cg"][0] - 240, step["cg"][1]), 2e-4)
    near(f"chart, step {step['step']}", step["crane"]["net_lb"], 1500 - 300, 1e-3)
    near(f"margin, step {step['step']}", step["crane"]["margin_lb"], 1200 - step["weight_lb"], 2e-3)
    # The hook plumb over the centre of gravity; forces along the legs add up to the weight (statics of a point).
    x, y, _ = step["cg"]
    legs, hooks, total = step["slings"], [], [0, 0, 0]
    check(f"two legs, step {step['step']}", len(legs) == 2, str(legs))
    for leg in legs:
        px, py, pz = leg["at"]
        level = math.hypot(px - x, py - y)
        up = math.sqrt(leg["leg_in"] ** 2 - level ** 2)
        hooks.append(pz + up)
        near("angle from level", leg["from_level_deg"], math.degrees(math.atan2(up, level)), 0.01)
        for i, d in enumerate((x - px, y - py, up)):
            total[i] += leg["tension_lb"] * d / leg["leg_in"]
    near(f"one hook, step {step['step']}", hooks[0], hooks[1], 0.01)
    for i, wanted in enumerate((0, 0, step["weight_lb"])):
        near(f"balance {'xyz'[i]}, step {step['step']}", total[i], wanted, 0.01 * step["weight_lb"] / 10)

with open(site_file("broken.csv"), "w", encoding="utf-8") as order:
    order.write("step,mark\n1,\"T-1\n")
check("a broken list is told by its line", "line 2" in run("raise", "check", site_file("shed.book"),
                                                           site_file("broken.csv")).stderr)
shutil.rmtree(site)

# ---- everything in one file

house = tempfile.mkdtemp()
folders = {name: os.path.join(house, name) for name in ("old", "fresh")}


def at(name, *words):
    return subprocess.run([program, *words], capture_output=True, text=True, encoding="utf-8",
                          env={**os.environ, "XDG_DATA_HOME": folders[name]})


def stored(name, file, text=None):
    path = os.path.join(folders[name], "bentbook", file)
    if text is not None:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "w", encoding="utf-8", newline="") as f:
            f.write(text)
    with open(path, encoding="utf-8", newline="") as f:
        return f.read()


def house_file(name):
    return os.path.join(house, name)


def parts_of(name):
    with open(house_file(name), encoding="utf-8") as f:
        whole = json.load(f)
    return [(b["title"], b["identity"], b["bytes"]) for b in whole["books"]], whole["logs"]


run("book", "new", house_file("barn.book"), "--title", "Barn")
with open(house_file("barn.book"), encoding="utf-8") as f:
    barn = json.dumps({**json.load(f), "identity": "barn1"}, separators=(",", ":"), ensure_ascii=False)
stored("old", "book1.json", barn)
stored("old", "book2.json", '{"file":"book","version":2,"identity":"later1","stories":3}')
stored("old", "shelf.json", json.dumps({"file": "shelf", "version": 1, "books": [
    {"name": "book1", "title": "Barn", "changed_at": 1764288000000, "deleted_at": 0, "identity": "barn1",
     "days_seen": 0},
    {"name": "book2", "title": "Later", "changed_at": 1764288000000, "deleted_at": 0, "identity": "later1",
     "days_seen": 0}], "open": "book1", "next": 3, "day": 0}))
stored("old", "kit.json", '{"file":"kit","version":1,"saws":[],"settings":{"glove":true,"caution_seen":true}}')
stored("old", "device.json", "00000000000000a7")
ticked = [done_event(1, 1, 1, "G-A1.1", "layout"), done_event(2, 1, 2, "G-A1.1", "end_cut/a")]
stored("old", "barn1.log", "".join(f"{line.split(chr(9))[1]} {line.split(chr(9))[2]} {line.rstrip(chr(10))}\n"
                                   for line in ticked))
done = at("old", "backup", house_file("a.json"))
check("backup", done.returncode == 0 and "2 books" in done.stdout and "2 entries" in done.stdout,
      done.stdout + done.stderr)
check("no number of a phone goes along", "a7" not in json.dumps(parts_of("a.json")))
check("a backup is whole but for the newer book", at("old", "verify", house_file("a.json")).stderr.count("\n") == 1)
done = at("fresh", "restore", house_file("a.json"))
check("restore", done.returncode == 0 and "Barn: new" in done.stdout and "2 new entries" in done.stdout,
      done.stdout + done.stderr)
check("the newer book is told", "not read by this version" in done.stdout, done.stdout)
at("fresh", "backup", house_file("b.json"))
check("the same books and logs came", parts_of("a.json") == parts_of("b.json"))
check("settings came", '"glove":true' in stored("fresh", "kit.json"))
before = {name: stored("fresh", name) for name in os.listdir(os.path.join(folders["fresh"], "bentbook"))}
replies = [json.loads(at("fresh", "restore", house_file("a.json"), "--json").stdout)]
check("a second time nothing comes", [b["coming"] for b in replies[0]["books"]] == ["same", "same"] and
      before == {name: stored("fresh", name) for name in before}, str(replies))
stored("fresh", "book1.json", barn.replace('"notes":""', '"notes":"mine"'))
done = at("fresh", "restore", house_file("a.json"))
check("one that differs comes beside", "Barn: differs: comes beside yours" in done.stdout, done.stdout)
check("…with the day in its title", re.search(r'"title":"Barn \(\d+ \w+\)"', stored("fresh", "shelf.json")),
      stored("fresh", "shelf.json"))
check("…and the one here stays", '"notes":"mine"' in stored("fresh", "book1.json"))
check("its bytes are the file's", stored("fresh", "book3.json") == barn)
check("saws and settings asked for", "Saws and settings" not in done.stdout, done.stdout)
stored("fresh", "kit.json", '{"file":"kit","version":1,"saws":[],"settings":{"keep_awake":true}}')
check("own settings stay", "--kit" in at("fresh", "restore", house_file("a.json")).stdout and
      '"keep_awake":true' in stored("fresh", "kit.json"))
at("fresh", "restore", house_file("a.json"), "--kit")
check("…unless they are asked for", '"glove":true' in stored("fresh", "kit.json"), stored("fresh", "kit.json"))
with open(os.path.join(folders["fresh"], "bentbook", "lock"), "w", encoding="utf-8") as lock:
    fcntl.flock(lock, fcntl.LOCK_EX)
    done = at("fresh", "restore", house_file("a.json"))
    check("refused while a window writes", done.returncode == 2 and "window" in done.stderr, done.stderr)
with open(house_file("a.json"), encoding="utf-8") as f:
    text = f.read()
with open(house_file("bad.json"), "w", encoding="utf-8") as f:
    f.write(text.replace("species", "spezies", 1))
done = at("fresh", "verify", house_file("bad.json"))
check("damage is told by name", done.returncode == 1 and "Barn: damaged" in done.stderr, done.stderr)
with open(house_file("half.json"), "w", encoding="utf-8") as f:
    f.write(text[:len(text) // 2])
done = at("fresh", "verify", house_file("half.json"))
check("half a file is told", done.returncode == 1 and "damaged at byte" in done.stderr, done.stderr)
check("half a file is not taken", at("fresh", "restore", house_file("half.json")).returncode == 2)
replies.append(json.loads(at("old", "backup", house_file("c.json"), "--json").stdout))
replies.append(json.loads(at("old", "verify", house_file("bad.json"), "--json").stdout))
done = at("old", "backup", "-")
check("to standard output", done.stdout.startswith('{"file":"backup"'))
for file, kind in {house_file("barn.book"): "Book: whole", os.path.join(folders["old"], "bentbook", "kit.json"):
                   "Saws and settings: whole"}.items():
    check(kind, at("old", "verify", file).stdout.startswith(kind))
check("no file of Bentbook", at("old", "verify", program).returncode == 1)
shutil.rmtree(house)

# ---- the README's keys, and the keys that are answered


def keys_of(value, found):
    if isinstance(value, dict):
        for key, inner in value.items():
            found.add(key)
            keys_of(inner, found)
    if isinstance(value, list):
        for inner in value:
            keys_of(inner, found)
    return found


def documented(command):
    part = re.search(rf"^## bentbook {command}$(.*?)(^## |\Z)", open(readme, encoding="utf-8").read(), re.M | re.S)[1]
    found = set()
    for row in re.findall(r"^\| `.*$", part, re.M):
        first, rest = row.split("|")[1:3]
        for key in re.findall(r"`([a-z0-9_]+)`", first) + re.findall(r"`([a-z0-9_]+)`", rest):
            found.add(key)
    values = {"one", "two", "by_hand", "cannot", "rafter"}
    if command == "corner":  # what `kind`, `roof`, `face` and `id` may say
        values |= {"hip", "valley", "first", "other", "top", "side", "bottom", "far_side", "peak_cheek", "foot_cheek",
                   "jack", "purlin_square", "purlin_plumb", "fascia_square", "fascia_plumb", "boards", "rises_away",
                   "hip_shallow", "hip_high", "notch_past_quarter"}
    return found - values


found = set()
for reply in replies:
    keys_of(reply, found)
check("backup, restore, verify: each key documented", found <= documented("backup, restore, verify"),
      str(sorted(found - documented("backup, restore, verify"))))
for command, replies in {"log": [shown], "steps": [plain, worked], "raise": [lifted, searched, judged, half]}.items():
    found = set()
    for reply in replies:
        keys_of(reply, found)
    listed = documented(command) | documented("log")
    check(f"{command}: each key documented", found <= listed, str(sorted(found - listed)))

unlike = ["--pitch-right", "7:12", "--load", "30"]
samples = {
    "angle": [["--pitch", "10:12", "--run", "8'", "--depth", "7.5", "--breadth", "5.5", "--reach", "5"]],
    "rafter": [["--span", "24'", "--pitch", "8:12", "--depth", "7.5", "--ridge", "1.5", *unlike],
               ["--span", "24'", "--pitch", "8:12", "--depth", "7.5", "--ridge-beam", "7.5", *unlike]],
    "corner": [["--pitch", "12:12", "--other", "8:12", "--run", "12'"],
               ["--pitch", "2:12", "--other", "12:12", "--eave-angle", "150", "--depth", "2"]],
    "length": [["7"]],
    "mitre": [["--between", "90", "--depth-a", "6"]],
    "flip": [["--gap", "1/16", "--depth", "6"]],
}
for command, runs in samples.items():
    found = set()
    for words in runs:
        keys_of(answer(command, *words), found)
    twins = {k for k in found if k.endswith("_text") and k[:-5] + "_in" in found}
    listed = documented(command)
    check(f"{command}: each key documented", found - twins <= listed, str(sorted(found - twins - listed)))
    check(f"{command}: each documented key answered", listed <= found, str(sorted(listed - found)))
    lengths = {k for k in found if k.endswith("_in") and k not in
               {"arris_in", "gap_in", "gap_mated_in", "marks_top_in", "marks_bottom_in"}}
    check(f"{command}: each length has its twin", {k[:-3] + "_text" for k in lengths} == twins)

# ---- stock

with tempfile.TemporaryDirectory() as folder:
    pieces, book = os.path.join(folder, "pieces.csv"), os.path.join(folder, "book.json")
    # GLPK, examples/bpp.mod: 50 60 30 70 50 40 in bins of 100 are 3.
    open(pieces, "w").write("length\n50\n60\n30\n70\n50\n40\n")
    bins = ["stock", "--pieces", pieces, "--lengths", "100", "--kerf", "0", "--trim", "0"]
    s = answer(*bins)
    check("three bins", s["sticks"] == s["bound"] == 3 and s["proven"] and s["waste_in"] == 0, str(s))
    # The thirteen widths of the encyclopaedia's article on cutting stock: 73 rolls of 5600 mm.
    widths = {1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14,
              2140: 16, 2150: 18, 2200: 20}
    open(pieces, "w").write("length;count\n" + "".join(f"{w};{n}\n" for w, n in widths.items()))
    s = answer("stock", "--pieces", pieces, "--lengths", "5600", "--kerf", "0", "--trim", "0", "--unit", "mm")
    check("73 rolls", s["sticks"] == s["bound"] == 73 and s["proven"], str(s["sticks"]))
    cut = sorted(round(p["length_in"] * 25.4) for stick in s["plan"] for p in stick["pieces"])
    check("each width as often as asked", cut == sorted(w for w, n in widths.items() for _ in range(n)))
    check("no roll cut too far", all(sum(p["length_in"] for p in stick["pieces"]) <= 5600 / 25.4 + 1e-6
                                     for stick in s["plan"]))
    open(pieces, "w").write("length,breadth,depth\n13',8,8\n7',8,8\n")
    priced = ["stock", "--pieces", pieces, "--lengths", "8',16'", "--objective", "cost"]
    check("cost by hand", answer(*priced, "--prices", "30,59.5")["cost"] == 89.5)
    for words, named in [(priced, "Price"), ([*bins[:4], "8'", "--json"], "long"), ([*bins, "--kerf=-1"], "kerf"),
                         ([*bins[:5], "--kerf", "-1"], "Kerf"), (["stock", book], book)]:
        done = run(*words)
        check(f"refused, with its reason: {named}", done.returncode == 2 and named in done.stderr and not done.stdout,
              done.stderr)
    run("book", "new", book, "--demo")
    s = answer("stock", book)
    members = answer("book", "members", book)["members"]
    check("every timber in one stick", sorted(p["mark"] for stick in s["plan"] for p in stick["pieces"]) ==
          sorted(m["mark"] for m in members))
    check("as text and lists", all(run("stock", book, *more).returncode == 0
                                   for more in ([], ["--csv", "order"], ["--csv", "plan"], ["--lang", "es"])))
    found = set()
    keys_of(s, found)
    check("stock: each key documented", found <= documented("stock"), str(sorted(found - documented("stock"))))

print(f"cli checks: {passed} passed, {failed} failed")
