// A timber cut again out of its blank by its steps' numbers alone, as a hand would: stations along the tape, gauges from
// the face that each names, depths under the face up, table and tilt. Nothing of features, marks or pockets is read.
import { Manifold, box, holeSolid, trim } from './solids.mjs';

const kMeets = 1e-6; // in: a shoulder's kerf ends on the cheek's gauge line
const kThrough = 1e-7; // in

// Corners of the convex room inside of planes.
function corners(planes) {
  const out = [], cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  planes.forEach((a, i) => planes.slice(0, i).forEach((b, j) => planes.slice(0, j).forEach((c) => {
    const bc = cross(b.n, c.n), det = dot(a.n, bc);
    if (Math.abs(det) < 1e-9) return;
    const ca = cross(c.n, a.n), ab = cross(a.n, b.n);
    const p = [0, 1, 2].map((k) => (a.d * bc[k] + b.d * ca[k] + c.d * ab[k]) / det);
    if (planes.every((q) => dot(q.n, p) < q.d + 1e-9)) out.push(p);
  })));
  return out;
}

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (plane) => ({ n: plane.n.map((v) => -v), d: -plane.d });

// What lies inside of all planes (normals outward) and of the blank with an inch around it.
class Bench {
  constructor(step, t, ends) {
    Object.assign(this, { step, t, ends });
  }
  has(name) {
    return this.step.numbers.some((n) => n.name === name);
  }
  number(name) {
    const found = this.step.numbers.find((n) => n.name === name);
    if (!found) throw new Error(`${this.step.id} says no ${name}`);
    return found;
  }
  value(name) {
    return this.number(name).value;
  }
  face(name) {
    const { face } = this.number(name);
    if (!face) throw new Error(`${this.step.id}: ${name} from no face`);
    return face;
  }
  up() {
    return this.value('face');
  }
  // The plane that lies so deep under a face, normal into the wood.
  under(face, depth) {
    const [yLo, yHi, zLo, zHi] = this.t.sides;
    switch (face) {
      case 1: return { n: [0, 0, -1], d: -(zHi - depth) };
      case 2: return { n: [0, 1, 0], d: yLo + depth };
      case 3: return { n: [0, 0, 1], d: zLo + depth };
      default: return { n: [0, -1, 0], d: -(yHi - depth) };
    }
  }
  gauge(name) {
    return this.under(this.face(name), this.value(name));
  }
  axis(face) {
    return face === 1 || face === 3 ? 2 : 1;
  }
  // Where a face and the one whose edge is named meet: y and z.
  edge(face, other) {
    const at = [0, 0, 0];
    for (const f of [face, other]) {
      const p = this.under(f, 0);
      at[this.axis(f)] = p.d * p.n[this.axis(f)];
    }
    return at;
  }
  // The saw's plane, normal toward end B: its line on the face up runs through the stop at the edge named, off square by
  // the table's angle; from there it goes into the wood at the tilt.
  saw() {
    const up = this.up(), across = this.axis(up) === 2 ? 1 : 2, inward = this.axis(up);
    const slope = Math.tan(this.value('table_deg') * Math.PI / 180), run = Math.tan(this.value('tilt_deg') * Math.PI / 180);
    // Where no stop is said the line begins at the end itself.
    const stop = this.has('stop_in') ? this.number('stop_in') : { value: 0 }, other = stop.face || (across === 1 ? 2 : 3);
    const at = this.edge(up, other);
    // Along the line x grows by `slope` an inch of across; into the wood, square to the line, by `run`.
    const into = this.under(up, 0).n[inward];
    const n = [1, 0, 0];
    n[across] = -slope;
    n[inward] = -into * run * Math.hypot(1, slope);
    const size = Math.hypot(...n);
    const unit = n.map((v) => v / size);
    return { n: unit, d: dot(unit, [stop.value, at[1], at[2]]) };
  }
  toward(plane) { // normal toward this step's end
    return (plane.n[0] > 0) === (this.step.end === 'b') ? plane : minus(plane);
  }
  solid(planes) {
    const [yLo, yHi, zLo, zHi] = this.t.sides, blank = [[1, this.t.length, 0], [2, yHi, yLo], [3, zHi, zLo]];
    const around = blank.flatMap(([i, hi, lo]) => [1, -1].map((s) => {
      const n = [0, 0, 0];
      n[i - 1] = s;
      return { n, d: s > 0 ? hi + 1 : 1 - lo };
    }));
    return Manifold.hull(corners([...planes, ...around]));
  }
}

const end = (bench) => bench.toward(bench.saw());

// Walls of a recess at the depth where it begins, leaning as they go in; a side of which nothing is said is open.
function recess(bench) {
  const face = bench.up(), inward = bench.axis(face), across = inward === 2 ? 1 : 2;
  const start = bench.has('start_in') ? bench.value('start_in') : 0;
  const top = bench.under(face, start), into = top.n[inward];
  const planes = [bench.under(face, bench.value('depth_in'))];
  if (start > 0) planes.push(minus(top));
  const wall = (axis, at, lean, out) => { // `out`: +1 where the waste lies toward smaller coordinates
    const n = [0, 0, 0];
    n[axis] = out, n[inward] = -out * Math.tan(lean * Math.PI / 180) * into;
    const size = Math.hypot(...n);
    const p = [0, 0, 0];
    p[axis] = at, p[inward] = top.d * into;
    const unit = n.map((v) => v / size);
    planes.push({ n: unit, d: dot(unit, p) });
  };
  const lean = (name) => (bench.has(name) ? bench.value(name) : 0);
  if (bench.has('from_in')) wall(0, bench.value('from_in'), lean('lean_from_deg'), -1);
  if (bench.has('to_in')) wall(0, bench.value('to_in'), lean('lean_to_deg'), 1);
  for (const [name, leans, sign] of [['fence_in', 'lean_near_deg', -1], ['far_in', 'lean_far_deg', 1]]) {
    if (!bench.has(name)) continue;
    const g = bench.gauge(name);
    if (bench.axis(bench.face(name)) !== across) throw new Error(`${bench.step.id}: ${name} from a face that it is not gauged from`);
    wall(across, g.d * g.n[across], lean(leans) * g.n[across], sign * g.n[across]);
  }
  if (bench.has('width_in') && Math.abs(bench.value('far_in') - bench.value('fence_in') - bench.value('width_in')) > kMeets)
    throw new Error(`${bench.step.id}: width is not what lies between the gauges`);
  return [bench.solid(planes)];
}

// Between two gauge lines, and between two of the other sides where the slot does not run through.
function between(bench, near, far) {
  const planes = [];
  if (bench.has(near)) planes.push(minus(bench.gauge(near)));
  if (bench.has(far)) planes.push(bench.gauge(far));
  return planes;
}

function moved(plane, along) {
  return { n: plane.n, d: plane.d + plane.n[0] * along };
}

function endPlane(bench) {
  const found = bench.ends[bench.step.end];
  if (!found || found.length === 0) throw new Error(`${bench.step.id}: its end is not cut`);
  return found[found.length - 1];
}

function shimAndJig(bench) {
  const middle = (bench.value('fence_in') + bench.value('far_in')) / 2;
  const face = bench.face('fence_in');
  if (bench.has('shim_in')) {
    const planned = bench.axis(face) === 1 ? bench.t.planned[0] : bench.t.planned[1];
    if (bench.face('shim_in') !== face || Math.abs(planned / 2 - bench.value('shim_in') - middle) > kMeets)
      throw new Error(`${bench.step.id}: the shim makes another slot than the fence`);
  } else {
    const planned = bench.axis(face) === 1 ? bench.t.planned[0] : bench.t.planned[1];
    if (Math.abs(planned / 2 - middle) > 1 / 128) throw new Error(`${bench.step.id}: wants a shim and says none`);
  }
}

function slot(bench, all) {
  const e = endPlane(bench), sign = bench.step.end === 'b' ? -1 : 1;
  if (Math.abs(bench.value('far_in') - bench.value('fence_in') - bench.value('width_in')) > kMeets)
    throw new Error(`${bench.step.id}: width is not what lies between the gauges`);
  if (bench.t.joined) shimAndJig(bench);
  bench.t.slots[bench.step.end] = bench;
  return [bench.solid([...between(bench, 'fence_in', 'far_in'), ...between(bench, 'begins_in', 'ends_in'), minus(moved(e, sign * bench.value('depth_in')))])];
}

// The slot's mouth: both its edges off at 45°, or a wider, shallower rebate.
function relief(bench) {
  const e = endPlane(bench), sign = bench.step.end === 'b' ? -1 : 1, depth = bench.value('depth_in');
  const floor = minus(moved(e, sign * depth)), sides = between(bench, 'begins_in', 'ends_in');
  if (!bench.has('tilt_deg')) return [bench.solid([...between(bench, 'fence_in', 'far_in'), ...sides, floor])];
  const mouth = bench.t.slots[bench.step.end];
  const turn = Math.tan(bench.value('tilt_deg') * Math.PI / 180);
  return [minus(mouth.gauge('fence_in')), mouth.gauge('far_in')].map((wall) => {
    // `wall` points out of the slot; the chamfer leaves it where the depth ends and runs out at the tilt.
    const out = wall.n, n = out.map((v, i) => v + turn * floor.n[i]), size = Math.hypot(...n);
    // A point on both the wall and the floor.
    const p = wall.n.map((v, i) => v * wall.d + floor.n[i] * floor.d);
    const unit = n.map((v) => v / size);
    return bench.solid([{ n: unit, d: dot(unit, p) }, minus(wall), ...sides]);
  });
}

// A recess in an end: gauged across, and along the end from the edge of the face named.
function inEnd(bench) {
  const e = endPlane(bench), floor = { n: e.n.map((v) => -v), d: -(e.d - bench.value('depth_in')) };
  const planes = [...between(bench, 'fence_in', 'far_in'), floor];
  for (const [name, sign] of [['begins_in', -1], ['ends_in', 1]]) {
    if (!bench.has(name)) continue;
    const g = bench.under(bench.face(name), 0), k = dot(g.n, e.n);
    const n = g.n.map((v, i) => v - k * e.n[i]), size = Math.hypot(...n), unit = n.map((v) => v / size);
    // The edge: where the end and the face meet.
    const a = (e.d - k * g.d) / (1 - k * k), b = (g.d - k * e.d) / (1 - k * k);
    const at = dot(unit, e.n.map((v, i) => a * v + b * g.n[i])) + bench.value(name);
    planes.push({ n: unit.map((v) => sign * v), d: sign * at });
  }
  return [bench.solid(planes)];
}

function fork(bench) {
  return [bench.solid([...between(bench, 'fence_in', 'far_in'), minus(end(bench))])];
}

function bores(bench) {
  const face = bench.up(), inward = bench.axis(face), across = inward === 2 ? 1 : 2, top = bench.under(face, 0);
  const out = [], at = bench.step.numbers.filter((n) => n.name === 'at_in'), off = bench.step.numbers.filter((n) => n.name === 'off_in');
  if (at.length === 0 || at.length !== off.length) throw new Error(`${bench.step.id}: bores without a place`);
  const [yLo, yHi, zLo, zHi] = bench.t.sides, thick = inward === 2 ? zHi - zLo : yHi - yLo;
  const depth = bench.value('depth_in'), surface = top.d * top.n[inward], into = top.n[inward];
  const deep = depth > thick - kThrough ? thick + 1 : depth;
  const ends = [surface - into, surface + into * deep].sort((a, b) => a - b);
  at.forEach((station, i) => {
    const g = bench.under(off[i].face, off[i].value);
    if (bench.axis(off[i].face) !== across) throw new Error(`${bench.step.id}: a bore's offset from a face that it is not gauged from`);
    out.push(holeSolid({ sweep: inward === 2 ? 'z' : 'y', from: ends[0], to: ends[1], radius: bench.value('diameter_in') / 2, points: [[station.value, g.d * g.n[across]]] }));
  });
  return out;
}

// A notch: what lies between the two saw cuts, and above the gauged floor where there is one.
function notch(benches) {
  const cuts = benches.filter((b) => b.has('table_deg')), floors = benches.filter((b) => !b.has('table_deg'));
  // One that runs out at an end has one side.
  if (cuts.length === 1 && cuts[0].step.end) return [cuts[0].solid([minus(cuts[0].toward(cuts[0].saw()))])];
  if (cuts.length !== 2) throw new Error(`${benches[0].step.id}: a notch wants two saw cuts, it has ${cuts.length}`);
  const planes = cuts.map((b) => b.saw());
  // Which comes first: where they meet the face that the notch is open to.
  const open = cuts[0].face('depth_in'), g = cuts[0].under(open, 0), axis = cuts[0].axis(open);
  const at = (p) => {
    const middle = [0, 0, 0], [yLo, yHi, zLo, zHi] = cuts[0].t.sides;
    middle[1] = (yLo + yHi) / 2, middle[2] = (zLo + zHi) / 2, middle[axis] = g.d * g.n[axis];
    return (p.d - p.n[1] * middle[1] - p.n[2] * middle[2]) / p.n[0];
  };
  planes.sort((a, b) => at(a) - at(b));
  const kept = [minus(planes[0]), planes[1]];
  for (const b of floors) {
    const name = b.has('fence_in') ? 'fence_in' : 'far_in', f = b.gauge(name), deep = cuts[0].under(open, cuts[0].value('depth_in'));
    if (b.axis(b.face(name)) !== axis || Math.abs(f.d * f.n[axis] - deep.d * deep.n[axis]) > kMeets)
      throw new Error(`${b.step.id}: the floor's gauge line is not where the cuts end`);
  }
  if (floors.length > 0) kept.push(cuts[0].under(open, cuts[0].value('depth_in')));
  return [cuts[0].solid(kept)];
}

// The wood past a shoulder that its kerfs free: each from one face, down to a gauge line or to the nose's cut.
function past(benches) {
  const shoulders = benches.filter((b) => b.step.part === 'shoulder'), noses = benches.filter((b) => b.step.part === 'nose');
  const lines = []; // normals out of the tenon
  for (const b of benches.filter((l) => l.has('fence_in') || l.has('far_in'))) {
    for (const [name, sign] of [['fence_in', -1], ['far_in', 1]]) {
      if (!b.has(name)) continue;
      const g = b.gauge(name), axis = b.axis(b.face(name));
      let line = sign < 0 ? minus(g) : g;
      if (b.has('fall_in') && b.number('fall_in').face) {
        // Falls toward the face named, from the shoulder to the tip.
        const toward = b.under(b.face('fall_in'), 0).n.map((v) => -v);
        if (dot(toward, line.n) > 0.5) {
          const shoulder = toEnd(shoulders[0]), x = shoulder.d / shoulder.n[0], tip = b.step.end === 'b' ? b.t.length : 0;
          const n = [...line.n];
          n[0] = -b.value('fall_in') / (tip - x);
          const size = Math.hypot(...n), unit = n.map((v) => v / size), p = [x, 0, 0];
          p[axis] = g.d * g.n[axis];
          line = { n: unit, d: dot(unit, p) };
        }
      }
      lines.push(line);
    }
    if (b.has('across_in') && Math.abs(b.value('far_in') - b.value('fence_in') - b.value('across_in')) > kMeets)
      throw new Error(`${b.step.id}: thickness is not what lies between the gauges`);
  }
  for (const b of noses) lines.push(toEnd(b));
  const out = [];
  if (shoulders.length === 0) throw new Error(`${benches[0].step.id}: no shoulder`);
  const first = toEnd(shoulders[0]);
  for (const b of shoulders) {
    const shoulder = toEnd(b);
    if (Math.abs(shoulder.d - first.d) > kMeets || Math.hypot(...shoulder.n.map((v, i) => v - first.n[i])) > 1e-7)
      throw new Error(`${b.step.id}: not in one plane with the other shoulders`);
    const face = b.face('depth_in'), g = b.under(face, b.value('depth_in')), inward = b.axis(face);
    const p = [0, 0, 0];
    p[inward] = g.d * g.n[inward];
    p[0] = (shoulder.d - dot(shoulder.n, p)) / shoulder.n[0];
    const line = lines.find((l) => Math.abs(dot(l.n, p) - l.d) < kMeets && dot(l.n, g.n) < 0);
    if (!line) throw new Error(`${b.step.id}: its kerf ends on no gauge line`);
    out.push(b.solid([minus(shoulder), minus(line)]));
  }
  for (const b of noses) out.push(b.solid([minus(first), minus(toEnd(b))]));
  return out;
}
const toEnd = (bench) => bench.toward(bench.saw());

const kEnds = new Set(['end_cut', 'peak', 'tail']);
const kPast = new Set(['tenon', 'tongue', 'scarf']);
const kBores = new Set(['hole', 'peg_hole', 'drill_through']);

function waste(benches) {
  const { work, end: at } = benches[0].step;
  if (kPast.has(work) || (work === 'lap' && at)) return past(benches);
  if (work === 'lap' || work === 'birds_mouth') return notch(benches);
  return benches.flatMap((b) => {
    if (kEnds.has(work)) return [];
    if (kBores.has(work)) return bores(b);
    if (work === 'slot' && at) return slot(b);
    if (work === 'relief') return relief(b);
    if (work === 'fork') return fork(b);
    if (work === 'let_in' && at) return inEnd(b);
    if (['mortise', 'housing', 'let_in', 'slot'].includes(work)) return recess(b);
    return [];
  });
}

// `t`: length, sides, planned section, steps {id, of, work, part, end, numbers}. Throws where the numbers do not do.
export function rebuild(t) {
  const ends = { a: [], b: [] };
  const made = { length: t.steps.find((s) => s.work === 'layout').numbers[0].value, sides: t.sides, planned: t.planned, joined: t.joined, slots: {} };
  let body = box([0, t.sides[0], t.sides[2]], [made.length, t.sides[1], t.sides[3]]);
  const groups = new Map();
  for (const step of t.steps) {
    const bench = new Bench(step, made, ends);
    if (kEnds.has(step.work)) {
      if (step.numbers.length === 0) continue;
      const plane = end(bench);
      ends[step.end].push(plane);
      body = trim(body, plane.n, plane.d);
    } else if (step.work === 'jig' && step.numbers.some((n) => n.name === 'jig_in')) {
      const slotted = made.slots[step.end], middle = (slotted.value('fence_in') + slotted.value('far_in')) / 2;
      if (bench.face('jig_in') !== slotted.face('fence_in') || Math.abs(bench.value('jig_in') - middle) > kMeets)
        throw new Error(`${step.id}: the jig's line is not the slot's middle`);
    } else if (step.numbers.length > 0) {
      const known = groups.get(step.of);
      if (known) known.push(bench);
      else groups.set(step.of, [bench]);
    }
    if (step.work === 'slot' && step.end) made.slots[step.end] = bench;
  }
  const tools = [...groups.values()].flatMap(waste);
  if (tools.length === 0) return body;
  const solid = Manifold.difference([body, ...tools]);
  for (const s of [body, ...tools]) s.delete();
  return solid;
}

// What lies in one of two solids alone, in³.
export function difference(a, b) {
  const both = a.intersect(b), volume = a.volume() + b.volume() - 2 * both.volume();
  both.delete();
  return Math.abs(volume);
}
