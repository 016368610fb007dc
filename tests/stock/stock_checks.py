"""Reads lines of stock_rows and cuts the same with HiGHS (scipy.optimize.milp), stated as flows along a stick: an arc for
each piece at each place where it can begin, as many sticks of a kind as flow reaches its end. usage: stock_checks.py < lines

A line passes where the plan is whole (no stick over its room, every piece once, no more sticks than there are), costs
what it says, its bound is no more than what HiGHS finds, and the two costs are one, or it does not call itself proven
and is no more than a hundredth dearer, or by one: those are counted as `over`.
"""
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix


def outside(kinds, rows):
    """Least cost by arc flow; None: it cannot be cut."""
    longest = max(room for room, _, _ in kinds)
    arcs, starts = set(), {0}
    # Along a stick the largest come first: fewer places at which a piece can begin.
    for i, (size, count) in enumerate(rows):
        new = set()
        for s in starts:
            p, n = s, 0
            while n < count and p + size <= longest:
                arcs.add((p, p + size, i))
                p += size
                n += 1
                new.add(p)
        starts |= new
    places = sorted({0} | {a[0] for a in arcs} | {a[1] for a in arcs})
    index = {p: n for n, p in enumerate(places)}
    arcs = sorted(arcs)
    columns = []  # (cost, from, to, row, kind)
    for a, b, i in arcs:
        columns.append((0, index[a], index[b], i, -1))
    for k, (room, cost, most) in enumerate(kinds):
        for p in places:  # a stick of that kind ends behind its last piece
            if 0 < p <= room:
                columns.append((cost, index[p], -1, -1, k))
    c = np.array([x[0] for x in columns], float)
    r, q, v = [], [], []
    flow_rows = len(places)
    for j, (_, a, b, i, k) in enumerate(columns):
        if a > 0:
            r.append(a), q.append(j), v.append(-1.0)
        if b > 0:
            r.append(b), q.append(j), v.append(1.0)
        if i >= 0:
            r.append(flow_rows + i), q.append(j), v.append(1.0)
        if k >= 0 and kinds[k][2] >= 0:
            r.append(flow_rows + len(rows) + k), q.append(j), v.append(1.0)
    n = flow_rows + len(rows) + len(kinds)
    low, high = np.zeros(n), np.zeros(n)
    for i, (_, count) in enumerate(rows):
        low[flow_rows + i] = high[flow_rows + i] = count
    for k, (_, _, most) in enumerate(kinds):
        high[flow_rows + len(rows) + k] = most if most >= 0 else np.inf
    matrix = coo_matrix((v, (r, q)), shape=(n, len(columns)))
    done = milp(c, constraints=LinearConstraint(matrix.tocsr(), low, high), integrality=np.ones(len(columns)),
                bounds=Bounds(0, np.inf), options={"time_limit": 60, "mip_rel_gap": 0})
    if done.status == 2:
        return None
    if done.status != 0:
        return "no answer"
    return round(done.fun)


def whole(kinds, rows, sticks, cost):
    """What is wrong with a plan, or None."""
    left, used, paid = [n for _, n in rows], [0] * len(kinds), 0
    for stick in sticks:
        kind, _, pieces = stick.partition(":")
        kind, taken = int(kind), 0
        for piece in pieces.split("+"):
            i, n = map(int, piece.split("*"))
            left[i] -= n
            taken += n * rows[i][0]
        if taken > kinds[kind][0]:
            return f"a stick of {kinds[kind][0]} holds {taken}"
        used[kind] += 1
        paid += kinds[kind][1]
    if any(left):
        return f"left over: {left}"
    if any(0 <= most < n for (_, _, most), n in zip(kinds, used)):
        return f"sticks used: {used}"
    return None if paid == cost else f"costs {paid}, says {cost}"


passed = failed = proven = over = 0
for line in sys.stdin:
    name, kinds, rows, *rest = [part.strip() for part in line.split("|")]
    kinds = [tuple(map(int, k.split(":"))) for k in kinds.split()]
    rows = [tuple(map(int, k.split(":"))) for k in rows.split()]
    best = outside(kinds, rows)
    if rest[0] == "none":
        trouble = None if best is None else f"none found, HiGHS has {best}"
    else:
        cost, bound = map(int, rest[0].split())
        proven += bound == cost
        trouble = whole(kinds, rows, rest[1].split(), cost)
        if trouble is None and (best is None or best == "no answer" or not bound <= best <= cost):
            trouble = f"cost {cost}, bound {bound}, HiGHS {best}"
        elif trouble is None and cost > best:
            over += 1
            if bound == cost or cost > max(best + 1, best * 1.01):
                trouble = f"cost {cost}, bound {bound}, HiGHS {best}"
    if trouble:
        print(f"FAILED {name}: {trouble}")
    passed, failed = (passed, failed + 1) if trouble else (passed + 1, failed)
print(f"{proven} proven\n{over} over")
print(f"stock: {passed} passed, {failed} failed")
