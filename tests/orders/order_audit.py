"""Reads what orders_rows writes and looks at the orders with graphs of its own (NetworkX): nothing here is shared with
the search. Of a found order: every timber comes once; what bears on others comes after them, what hangs or is held by
its ends after (or with) one of them; what is set first comes after what it bears on; wishes are kept; temporaries are
put up before they are taken out; the audit of geometry and standing had no fault; and for the states that are written
out as linear programs SciPy (HiGHS) finds forces for every load case. Of a cycle: each step of it is an edge of the graph. Of the graph: a cycle is named
exactly where NetworkX finds that the pieces have no topological order.

Prints `orders: N passed, N failed` (a frame is one check).
"""
import sys

import networkx as nx
import numpy as np
import scipy.optimize
import scipy.sparse

BEARS, HANGS, BRACES, BUTTS = 0, 1, 2, 3
BEFORE, TOGETHER, DAY, START = 0, 1, 2, 3


class Program:
    """Of one state: columns are unit forces, each case wants a sum of them within their bounds."""

    def __init__(self, size, name):
        self.size, self.name, self.bounds, self.entries, self.needs = size, name, [], [], []

    def column(self, numbers):
        for body, on in ((numbers[2], numbers[4:10]), (numbers[3], numbers[10:16])):
            if body >= 0:
                self.entries += [(6 * int(body) + k, len(self.bounds), v) for k, v in enumerate(on) if v != 0]
        # 1e5 lb stands for no limit: the order check takes forces near it for light loads as good for heavy ones.
        self.bounds.append(tuple(2 * v if abs(v) >= 1e5 else v for v in numbers[:2]))

    def fails(self):
        """how many cases have no forces"""
        if not self.entries:
            return len(self.needs)
        rows, cols, values = zip(*self.entries)
        matrix = scipy.sparse.csr_matrix((values, (rows, cols)), shape=(self.size, len(self.bounds)))
        bad = 0
        for needs in self.needs:
            # The least imbalance, since the order check counts 1e-6 of the largest load as balance.
            slack = 1e-5 * max(1, np.abs(needs).max())
            run = scipy.optimize.linprog(np.zeros(len(self.bounds)), bounds=self.bounds, method="highs",
                                         A_ub=scipy.sparse.vstack([matrix, -matrix]),
                                         b_ub=np.concatenate([needs + slack, slack - needs]))
            bad += run.status != 0
        return bad


class Frame:
    def __init__(self, number):
        self.number, self.timbers, self.joints, self.wishes = number, {}, [], []
        self.assemblies, self.cycle, self.steps, self.faults = [], [], [], []
        self.result = None


def wanted(frame):
    """timber -> (all of these, one of these)"""
    need = {}
    for mark, (post, _) in frame.timbers.items():
        by = {kind: {b for a, b, k in frame.joints if a == mark and k == kind} for kind in range(4)}
        one = by[HANGS]
        if not by[BEARS] and not one and not post:
            one = by[BRACES] | by[BUTTS]
        need[mark] = (by[BEARS], one)
    return need


def timber_edges(frame):
    """(first, second, is a wish)"""
    edges = []
    for mark, (all_of, one_of) in wanted(frame).items():
        edges += [(c, mark, False) for c in all_of]
        if len(one_of) == 1:
            edges += [(c, mark, False) for c in one_of]
    for kind, number, marks, others in frame.wishes:
        if kind == BEFORE:
            edges += [(a, b, True) for a in marks for b in others]
        if kind == START:
            here = [m for m, (post, bent) in frame.timbers.items() if post and bent == number]
            there = [m for m, (post, bent) in frame.timbers.items() if post and bent != number]
            edges += [(a, b, True) for a in here for b in there]
        if kind == DAY:
            edges += [(a, b, True) for k, later, late, _ in frame.wishes if k == DAY and later > number
                      for a in marks for b in late]
    return edges


def pieces(frame):
    together = nx.Graph()
    together.add_nodes_from(frame.timbers)
    for marks in frame.assemblies + [w[2] for w in frame.wishes if w[0] == TOGETHER]:
        nx.add_path(together, marks)
    return {m: i for i, c in enumerate(nx.connected_components(together)) for m in c}


def graph(frame):
    piece = pieces(frame)
    made = nx.DiGraph()
    made.add_nodes_from(piece.values())
    for a, b, wish in timber_edges(frame):
        if piece[a] != piece[b] or wish:
            made.add_edge(piece[a], piece[b])
    return made, piece


def judge_cycle(frame, wrong):
    made, piece = graph(frame)
    try:
        nx.find_cycle(made)
    except nx.NetworkXNoCycle:
        wrong.append("a cycle is named, NetworkX finds none")
    names = [piece[m] for m in frame.cycle]
    for a, b in zip(names, names[1:] + names[:1]):
        if not made.has_edge(a, b):
            wrong.append(f"the cycle {frame.cycle} is none of the graph's")


def judge_order(frame, wrong):
    made, piece = graph(frame)
    if not nx.is_directed_acyclic_graph(made):
        wrong.append("an order where NetworkX finds a cycle")
        return
    step_of, turn_of = {}, {}
    for i, (_, marks, _, _, set_first) in enumerate(frame.steps):
        for m in set_first + marks:
            if m in step_of:
                wrong.append(f"{m} comes twice")
            step_of[m] = i
            turn_of[m] = (i, set_first.index(m) if m in set_first else len(set_first))
    if frame.result == "found" and set(step_of) != set(frame.timbers):
        wrong.append("not every timber comes")
    for m, (all_of, one_of) in wanted(frame).items():
        here = step_of.get(m)
        if here is None:
            continue
        if any(step_of.get(c, 1 << 30) > here for c in all_of):
            wrong.append(f"{m} comes before what it bears on")
        if one_of and all(step_of.get(c, 1 << 30) > here for c in one_of):
            wrong.append(f"{m} comes before all that could hold it")
    for i, step in enumerate(frame.steps):
        for k, m in enumerate(step[4]):
            if any(step_of.get(c, 1 << 30) >= i and c not in step[4][:k] for c in wanted(frame)[m][0]):
                wrong.append(f"{m} is set before what it bears on")
    for a, b, wish in timber_edges(frame):
        if wish and b in step_of and turn_of.get(a, (1 << 30, 0)) >= turn_of[b]:
            wrong.append(f"the wish {a} before {b} is broken")
    for kind, number, marks, _ in frame.wishes:
        if kind == TOGETHER and len({step_of.get(m) for m in marks}) > 1:
            wrong.append(f"{marks} do not come together")
        if kind == DAY and any(m in step_of and frame.steps[step_of[m]][0] != number for m in marks):
            wrong.append(f"{marks} do not come on day {number}")


def judge_temporaries(frame, wrong):
    up = set()
    for i, (_, _, put, out, _) in enumerate(frame.steps):
        if up & set(put) or not set(out) <= up | set(put):
            wrong.append(f"step {i}: put up {put}, taken out {out}, up {sorted(up)}")
        up = (up | set(put)) - set(out)
    if frame.result == "found" and up:
        wrong.append(f"{sorted(up)} are left up")


def judge(frame):
    wrong = list(frame.faults)
    if frame.result == "cycle":
        judge_cycle(frame, wrong)
    else:
        judge_order(frame, wrong)
        judge_temporaries(frame, wrong)
    return wrong


totals = {"programs": 0}


def read(lines):
    frame = program = None
    for line in lines:
        word, *rest = line.split()
        if word == "frame":
            frame = Frame(int(rest[0]))
        elif word == "timber":
            frame.timbers[rest[0]] = (rest[1] == "1", int(rest[2]))
        elif word == "joint":
            frame.joints.append((rest[0], rest[1], int(rest[2])))
        elif word == "wish":
            frame.wishes.append([int(rest[0]), int(rest[1]), [], []])
        elif word in ("marks", "others"):
            frame.wishes[-1][2 if word == "marks" else 3] = rest
        elif word == "result":
            frame.result = rest[0]
        elif word == "assembly":
            frame.assemblies.append(rest)
        elif word == "cycle":
            frame.cycle = rest
        elif word == "step":
            frame.steps.append([int(rest[0]), [], [], [], []])
        elif word in ("comes", "put_up", "take_out", "set_first"):
            frame.steps[-1][("comes", "put_up", "take_out", "set_first").index(word) + 1] = rest
        elif word == "cost":
            if rest[2] != "1":
                frame.faults.append("the bound is above the cost")
        elif word == "program":
            program = Program(int(rest[0]), " ".join(rest[1:]))
        elif word == "column":
            program.column([float(v) for v in rest])
        elif word == "needs":
            program.needs.append(np.array([float(v) for v in rest]))
        elif word == "solve":
            totals["programs"] += len(program.needs)
            bad = program.fails()
            if bad:
                frame.faults.append(f"{program.name}: SciPy finds no forces for {bad} of {len(program.needs)} cases")
        elif word == "fault":
            frame.faults.append(" ".join(rest))
        elif word == "end":
            yield frame


def main():
    breaking = len(sys.argv) > 1 and sys.argv[1] == "broken"
    passed = failed = 0
    results = {"found": 0, "none": 0, "cycle": 0}
    temporaries = 0
    for frame in read(sys.stdin):
        if breaking:
            if frame.result != "found" or len(frame.steps) < 2 or not frame.joints:
                continue
            frame.steps.reverse()
        results[frame.result] += 1
        temporaries += sum(len(s[2]) for s in frame.steps)
        wrong = judge(frame)
        passed, failed = (passed, failed + 1) if wrong else (passed + 1, failed)
        if wrong and failed <= 12 and not breaking:
            print(f"frame {frame.number}:", *wrong[:5], sep="\n  ")
    print(f"{results['found']} orders found with {temporaries} temporaries, {results['none']} none, "
          f"{results['cycle']} cycles named; {totals['programs']} load cases to SciPy")
    print(f"orders: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
