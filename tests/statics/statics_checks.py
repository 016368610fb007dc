"""Judges what tests/statics/static_rows prints with SciPy: null spaces by singular values, load factors by linprog
(HiGHS). The matrices are built here, from points, directions and centres of gravity.

Prints `statics: N passed, N failed` (sets) and how many of what kind there were; ends with 1 where there were fewer
than asked for: `statics_checks.py SETS FACTORS FALLS HUNG NOT_BORNE`.
"""
import sys

import numpy as np
import scipy.linalg
import scipy.optimize

SCALE = 48.0  # lengths in these inches, so that turns and moves weigh about alike
MOST, MOST_FORCE = 3.0, 20000.0


def matrix(bodies, rows):
    a = np.zeros((len(rows), 6 * len(bodies)))
    for i, row in enumerate(rows):
        point, direction = row[4:7], row[7:10]
        for body, sign in ((int(row[0]), 1), (int(row[1]), -1)):
            if body >= 0:
                a[i, 6 * body:6 * body + 3] += sign * direction
                a[i, 6 * body + 3:6 * body + 6] += sign * np.cross(point - bodies[body, :3], direction) / SCALE
    return a


def null_space_agrees(a, modes, count):
    n = a.shape[1]
    if a.shape[0] == 0:
        return bool(count == n)
    _, s, v = np.linalg.svd(a)
    s = np.concatenate([s, np.zeros(n - len(s))])
    free = s < 1e-8 * max(1, s[0])
    if free.sum() != count:
        return f"SciPy finds {free.sum()}, {s[-count - 2:]}"
    if count == 0:
        return True
    theirs, ours = v[free].T, np.array(modes).T
    if np.linalg.matrix_rank(ours, tol=1e-9 * np.abs(ours).max()) != count:
        return "the modes depend on each other"
    angle = scipy.linalg.subspace_angles(theirs, ours).max()
    return bool(angle < 1e-6) or f"the spaces differ by {angle}"


def forces(a, bodies, rows, case):
    """What is fixed, what the factor multiplies, and the rows' bounds."""
    kind, heavy, direction, body = (int(x) for x in case[:4])
    point, person = case[4:7], case[7]
    fixed, scaled = np.zeros(a.shape[1]), np.zeros(a.shape[1])
    for i, b in enumerate(bodies):
        fixed[6 * i + 2] = -(1.15 if heavy else 0.9) * b[3]
        if kind == 0:
            turn = direction * np.pi / 4
            scaled[6 * i:6 * i + 2] = b[4 + direction] * np.array([np.cos(turn), np.sin(turn)])
        elif i == body:
            down = np.array([0, 0, -person])
            scaled[6 * i:6 * i + 3] = down
            scaled[6 * i + 3:6 * i + 6] = np.cross(point - b[:3], down) / SCALE
    bounds = []
    for row in rows:
        limit = min(row[3], MOST_FORCE) if row[3] > 0 else MOST_FORCE
        bounds.append((-limit if row[2] else 0, limit))
    return fixed, scaled, bounds


def all_but_balanced(a, bodies, rows, case, factor):
    """Whether forces at that factor leave no more than 1e-6 of the largest load, which the order check counts as
    balance."""
    fixed, scaled, bounds = forces(a, bodies, rows, case)
    if not len(rows):
        return False
    needs = -(fixed + factor * scaled)
    slack = 1e-6 * np.abs(needs).max()
    found = scipy.optimize.linprog(np.zeros(len(rows)), A_ub=np.vstack([a.T, -a.T]), bounds=bounds, method="highs",
                                   b_ub=np.concatenate([needs + slack, slack - needs]))
    return found.status == 0


def largest(a, bodies, rows, case):
    """The largest factor, 0 where there are no forces at all."""
    fixed, scaled, bounds = forces(a, bodies, rows, case)
    bounds.append((0, MOST))
    cost = np.zeros(len(rows) + 1)
    cost[-1] = -1

    # Now and then HiGHS stops with "numerical difficulties"; without its presolve it does not.
    for presolve in (True, False):
        found = scipy.optimize.linprog(cost, A_eq=np.column_stack([a.T, scaled]), b_eq=-fixed, bounds=bounds,
                                       method="highs", options=dict(presolve=presolve, time_limit=20))
        if found.status == 2:
            return 0.0
        if found.status == 0:
            return found.x[-1]
    return None


def bears(a, bodies, rows, hung, scale, share_off=1e-6):
    """Whether there are forces for the weights that hang, times `scale`, with the own weight light and heavy, when no
    more than `share_off` of the largest load counts as balance."""
    if not len(rows):
        return False
    bounds = forces(a, bodies, rows, [0, 0, 0, -1, 0, 0, 0, 0])[2]
    for share in (0.9, 1.15):
        load = np.zeros(a.shape[1])
        load[2::6] = -share * bodies[:, 3]
        for body, *point, pounds in hung:
            i, down = int(body), np.array([0, 0, -pounds * scale])
            load[6 * i:6 * i + 3] += down
            load[6 * i + 3:6 * i + 6] += np.cross(np.array(point) - bodies[i, :3], down) / SCALE
        slack = share_off * np.abs(load).max()
        found = scipy.optimize.linprog(np.zeros(len(rows)), A_ub=np.vstack([a.T, -a.T]), bounds=bounds, method="highs",
                                       b_ub=np.concatenate([slack - load, slack + load]))
        if found.status != 0:
            return False
    return True


def judge(number, count, stands, factor, bodies, rows, modes, cases, hangs, counts):
    bodies, rows = np.array(bodies), np.array(rows).reshape(-1, 10)
    a = matrix(bodies, rows)
    flat = [np.array([[*m[:3], *(SCALE * np.array(m[3:]))] for m in mode]).ravel() for mode in modes]
    agrees = null_space_agrees(a, flat, count)
    problems = [] if agrees is True else [f"{count} mechanisms: {agrees or 'SciPy finds others'}"]
    counts["sets"] += 1
    counts["mechanisms"] += count > 0
    for k, case in enumerate(cases):
        theirs = largest(a, bodies, rows, case)
        ours = case[8]
        counts["cases"] += 1
        # Forces reach 20 000 lb where the factor is about 1, and the simplex may stop 1e-4 short of the largest.
        if theirs is not None and theirs < ours and all_but_balanced(a, bodies, rows, case, ours):
            theirs = ours
        # Ours is rounded down to thousandths where it is the worst case.
        if theirs is None or not -1e-4 <= theirs - ours <= 1.1e-3:
            problems.append(f"case {k}: factor {ours}, linprog {theirs}")
        if theirs is not None and theirs < factor - 1e-4:
            problems.append(f"case {k} is worse than the worst: {theirs} < {factor}")
    for k, (ours, hung) in enumerate(hangs):
        counts["hung" if ours else "not_borne"] += 1
        # Where the two differ it has to be on the edge: of the weights, or of what counts as balance (a post all but
        # balanced that a large weight stands on).
        edge = ((1, 1e-6), (0.998, 1e-6), (1.002, 1e-6), (1, 1e-8))
        if bears(a, bodies, rows, hung, 1) != ours and len({bears(a, bodies, rows, hung, *e) for e in edge}) == 1:
            problems.append(f"weights {k}: {'borne' if ours else 'not borne'}, SciPy says otherwise")
    if count == 0:
        if stands != (factor >= 1) and abs(factor - 1) > 2e-3:
            problems.append(f"said to {'stand' if stands else 'fall'} with factor {factor}")
        counts["factors"] += 1
        counts["falls"] += factor < 1
        counts["stands"] += factor >= 1
    elif stands:
        problems.append("said to stand with a mechanism")
    for problem in problems:
        print(f"set {number}: {problem}")
    return not problems


def main():
    wanted = [int(x) for x in sys.argv[1:6]]
    counts = dict(sets=0, mechanisms=0, factors=0, cases=0, falls=0, stands=0, hung=0, not_borne=0)
    passed = failed = 0
    for line in sys.stdin:
        word, *values = line.split()
        if word == "set":
            number, count, stands, factor = int(values[0]), int(values[1]), values[2] == "1", float(values[3])
            bodies, rows, modes, cases, hangs = [], [], [], [], []
        elif word == "mode":
            modes.append([])
        elif word == "end":
            if judge(number, count, stands, factor, bodies, rows, modes, cases, hangs, counts):
                passed += 1
            else:
                failed += 1
        elif word == "hung":
            numbers = [float(x) for x in values[1:]]
            hangs.append((values[0] == "1", [numbers[i:i + 5] for i in range(0, len(numbers), 5)]))
        elif word in ("body", "row", "case"):
            {"body": bodies, "row": rows, "case": cases}[word].append(np.array([float(x) for x in values]))
        else:
            modes[-1].append([float(x) for x in (word, *values)])
    print(", ".join(f"{n} {name}" for name, n in counts.items()))
    few = [name for name, n in zip(("sets", "factors", "falls", "hung", "not_borne"), wanted) if counts[name] < n]
    for name in few:
        print(f"fewer {name} than wanted")
    print(f"statics: {passed} passed, {failed + len(few)} failed")
    sys.exit(1 if failed or few else 0)


main()
