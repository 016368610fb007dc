// Reads what fit_rows writes, builds every timber with an outside solid modeller from nothing but its sheet (blank,
// end cuts, pockets, holes), places it, and compares: volume and centre of gravity, room taken twice, faces that touch.
//   node check.mjs MODELLER-FOLDER [steps] < rows
// Each timber is also cut again by its steps' numbers alone (rebuild.mjs) and must be the same solid; with `steps` that is
// all that is looked at.
// A clash that the frame itself finds must be as large as it says, and no other may be.
// Prints `fit: N passed, N failed` (a plan is one check) and the first faults of each plan that fails.
import { createInterface } from 'node:readline';
import { difference, rebuild } from './rebuild.mjs';
import { Manifold, TimberReader, build, holeSolid, pocketSolid } from './solids.mjs';

const kVolume = 1e-6; // relative
const kCentre = 1e-3; // in; the modeller hands out its mesh in single precision
const kOverlap = 0.01; // in³
const kGap = 1 / 128; // in
const kRim = 1 / 32; // in, left out around a patch
const kTouch = 0.9999; // share of a patch that must be wood within the gap, on either side
const kUnsaid = 0.01; // in²: less than this taken from where a timber bears, its sheet says nothing
const kUnlike = 1e-3; // in³ between a timber and the same cut by its steps' numbers
const kHair = 1e-5; // in: blanks that are parted or share no more than this are not intersected

function centreOf(solid) {
  const mesh = solid.getMesh();
  const at = (i) => mesh.vertProperties.subarray(i * mesh.numProp, i * mesh.numProp + 3);
  let volume = 0;
  const moment = [0, 0, 0];
  for (let i = 0; i < mesh.triVerts.length; i += 3) {
    const [a, b, c] = [at(mesh.triVerts[i]), at(mesh.triVerts[i + 1]), at(mesh.triVerts[i + 2])];
    const v = (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
    volume += v;
    for (let k = 0; k < 3; ++k) moment[k] += v * (a[k] + b[k] + c[k]) / 4;
  }
  return moment.map((m) => m / volume);
}

// What a hand makes of the steps' numbers against the timber's solid; nothing where they are one.
function unlikeSteps(t, solid) {
  totals.rebuilt += 1, totals.steps += t.steps.length, totals.handed += t.handed ? 1 : 0;
  let made;
  try {
    made = rebuild(t);
  } catch (error) {
    return error.message;
  }
  const volume = difference(solid, made);
  made.delete();
  totals.worst = Math.max(totals.worst, volume);
  return volume < kUnlike ? '' : `cut by its steps it differs by ${volume.toFixed(4)} in³`;
}

const stepsOnly = process.argv[3] === 'steps';
const built = new Map(); // timbers cut alike are built once

function solidOf(t) {
  const key = t.sheet + (t.set ?? '');
  let solid = built.get(key);
  if (!solid) {
    if (built.size > 400) {
      for (const s of built.values()) s.solid.delete();
      built.clear();
    }
    const shape = build(t);
    solid = { solid: shape, volume: shape.volume(), centre: centreOf(shape), unlike: t.steps ? unlikeSteps(t, shape) : '' };
    built.set(key, solid);
  }
  return solid;
}

function apart(a, b) {
  for (let k = 0; k < 3; ++k) if (a.min[k] > b.max[k] || b.min[k] > a.max[k]) return true;
  return false;
}

// Two turned blanks share no room where some axis parts them (separating axis theorem).
function parted(a, b) {
  const axesOf = (p) => [p.t.x, p.t.y, p.t.z];
  const dot = (u, v) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  const half = (p) => [p.t.length / 2, (p.t.sides[1] - p.t.sides[0]) / 2, (p.t.sides[3] - p.t.sides[2]) / 2];
  const middle = (p) => [0, 1, 2].map((k) => p.t.origin[k] + p.t.x[k] * p.t.length / 2 +
    p.t.y[k] * (p.t.sides[0] + p.t.sides[1]) / 2 + p.t.z[k] * (p.t.sides[2] + p.t.sides[3]) / 2);
  const ua = axesOf(a), ub = axesOf(b), ha = half(a), hb = half(b), ca = middle(a), cb = middle(b);
  const between = cb.map((v, k) => v - ca[k]);
  const crossed = ua.flatMap((u) => ub.map((v) => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]));
  for (const axis of [...ua, ...ub, ...crossed]) {
    const size = Math.hypot(...axis);
    if (size < 1e-6) continue;
    const reach = ua.reduce((sum, u, k) => sum + ha[k] * Math.abs(dot(u, axis)), 0) + ub.reduce((sum, u, k) => sum + hb[k] * Math.abs(dot(u, axis)), 0);
    if (Math.abs(dot(between, axis)) > reach - kHair * size) return true;
  }
  return false;
}

// Faces that lie on each other leave the modeller undecided now and then: what is no overlap after a nudge of a
// millionth of an inch, or with the two exchanged, is none.
function overlap(a, b) {
  const volume = common(a, b);
  if (!(volume > kOverlap)) return volume;
  let least = Math.min(volume, common(b, a));
  for (const nudge of [[1e-6, 1e-6, 1e-6], [-1e-6, -1e-6, -1e-6], [1e-6, -1e-6, 0]]) {
    const moved = b.translate(nudge);
    least = Math.min(least, common(a, moved), common(moved, a));
    moved.delete();
  }
  return least;
}

// A clash is told with pegs and pins in their holes.
function overlapFilled(a, b) {
  const [one, two] = [a, b].map((p) => {
    const solid = build({ ...p.t, pockets: p.t.pockets.filter((pocket) => pocket.radius === 0) });
    const moved = solid.transform(p.matrix);
    solid.delete();
    return moved;
  });
  const volume = common(one, two);
  one.delete(), two.delete();
  return volume;
}

function common(a, b) {
  const both = a.intersect(b);
  const volume = both.volume();
  both.delete();
  return volume;
}

// The patch without a rim, so that a slab behind it meets only the faces in question.
function inset(patch, normal) {
  let kept = patch;
  for (let i = 0; i < patch.length; ++i) {
    const a = patch[i], b = patch[(i + 1) % patch.length];
    const d = b.map((v, k) => v - a[k]);
    const length = Math.hypot(...d);
    if (length < 1e-6) continue;
    const inward = [normal[1] * d[2] - normal[2] * d[1], normal[2] * d[0] - normal[0] * d[2], normal[0] * d[1] - normal[1] * d[0]].map((v) => v / length);
    const height = kept.map((p) => p.reduce((sum, v, k) => sum + (v - a[k]) * inward[k], 0) - kRim);
    const next = [];
    kept.forEach((p, j) => {
      const q = kept[(j + 1) % kept.length], h = height[j], g = height[(j + 1) % kept.length];
      if (h >= 0) next.push(p);
      if ((h >= 0) !== (g >= 0)) next.push(p.map((v, k) => v + (h / (h - g)) * (q[k] - v)));
    });
    kept = next;
    if (kept.length < 3) return [];
  }
  return kept;
}

// A thin slab behind a patch; round holes of either timber are clearances and taken out first, and so is what another
// joint takes there where the timber's sheet warns of it.
function slabOf(patch, normal, side, holes) {
  const slab = Manifold.hull([...patch, ...patch.map((p) => p.map((v, k) => v + side * kGap * normal[k]))]);
  if (holes.length === 0) return slab;
  const left = Manifold.difference([slab, ...holes]);
  slab.delete();
  return left;
}

function woodIn(slab, solid) {
  const common = slab.intersect(solid);
  const volume = common.volume();
  common.delete();
  return volume;
}

// What may be missing of a slab: a hair, or as much as goes unsaid.
const leave = (volume) => Math.max((1 - kTouch) * volume, kUnsaid * kGap);

// All slabs of one timber at once; one by one only where something is missing.
function checkSlabs(placed, slabs, faults) {
  if (slabs.length === 0) return;
  const all = Manifold.compose(slabs.map((s) => s.slab));
  const whole = all.volume();
  const common = all.intersect(placed.solid);
  const missing = whole - common.volume();
  const least = slabs.reduce((sum, s) => Math.min(sum, s.slab.volume()), Infinity);
  all.delete(), common.delete();
  if (missing > leave(least))
    for (const s of slabs) {
      const volume = s.slab.volume(), wood = woodIn(s.slab, placed.solid);
      if (volume - wood > leave(volume)) faults.push(`${s.name}: ${(wood / volume).toFixed(4)} of it is wood of ${placed.t.mark}`);
    }
  for (const s of slabs) s.slab.delete();
}

function holesOf(placed) {
  placed.holes ??= placed.t.pockets.filter((p) => p.radius > 0).map((p) => {
    const hole = holeSolid(p), moved = hole.transform(placed.matrix);
    hole.delete();
    return { solid: moved, bounds: moved.boundingBox() };
  });
  return placed.holes;
}

function boundsOf(points) {
  const axis = [0, 1, 2];
  return { min: axis.map((k) => Math.min(...points.map((p) => p[k])) - 0.01), max: axis.map((k) => Math.max(...points.map((p) => p[k])) + 0.01) };
}

function areaOf(p) {
  const twice = [0, 0, 0];
  for (let i = 2; i < p.length; ++i) {
    const a = p[i - 1].map((v, k) => v - p[0][k]), b = p[i].map((v, k) => v - p[0][k]);
    twice[0] += a[1] * b[2] - a[2] * b[1];
    twice[1] += a[2] * b[0] - a[0] * b[2];
    twice[2] += a[0] * b[1] - a[1] * b[0];
  }
  return Math.hypot(...twice) / 2;
}

const totals = { rebuilt: 0, steps: 0, handed: 0, worst: 0, plans: 0, others: 0, timbers: 0, pairs: 0, contacts: 0, cut: 0, clashes: 0, passed: 0, failed: 0 };

function place(plan, faults) {
  return plan.timbers.map((t) => {
    const { solid, volume, centre, unlike } = solidOf(t);
    ++totals.timbers;
    if (unlike) faults.push(`${t.mark}: ${unlike}`);
    if (!(Math.abs(volume - t.volume) <= kVolume * volume)) faults.push(`${t.mark}: volume ${t.volume}, modeller ${volume}`);
    if (!centre.every((v, k) => Math.abs(v - t.cg[k]) < kCentre)) faults.push(`${t.mark}: centre ${t.cg}, modeller ${centre}`);
    const matrix = [...t.x, 0, ...t.y, 0, ...t.z, 0, ...t.origin, 1];
    const moved = solid.transform(matrix);
    return { solid: moved, bounds: moved.boundingBox(), matrix, t };
  });
}

function checkOverlaps(plan, placed, faults) {
  for (let i = 0; i < placed.length; ++i)
    for (let j = i + 1; j < placed.length; ++j) {
      const a = placed[i], b = placed[j];
      if (apart(a.bounds, b.bounds) || parted(a, b)) continue;
      ++totals.pairs;
      const said = plan.clashes.get(`${a.t.mark} ${b.t.mark}`) ?? 0;
      if (said > 0) ++totals.clashes;
      const volume = said > 0 ? overlapFilled(a, b) : overlap(a.solid, b.solid);
      if (Math.abs(volume - said) > kOverlap) faults.push(`${a.t.mark} and ${b.t.mark} overlap by ${volume.toFixed(3)}, said: ${said.toFixed(3)}`);
    }
}

function slabsOfContact(plan, placed, c) {
  ++totals.contacts;
  const patch = inset(c.points, c.normal);
  if (patch.length < 3) return;
  const bounds = boundsOf(patch);
  const cut = [...c.cutInto].map(([timber, pocket]) => {
    const solid = pocketSolid(plan.timbers[timber].pockets[pocket]), moved = solid.transform(placed[timber].matrix);
    solid.delete();
    return moved;
  });
  if (cut.length > 0) ++totals.cut;
  const holes = [...holesOf(placed[c.member]), ...holesOf(placed[c.receiver])].filter((h) => !apart(h.bounds, bounds)).map((h) => h.solid);
  const name = `contact ${c.meeting} of ${plan.timbers[c.member].mark} on ${plan.timbers[c.receiver].mark} ` +
    `normal ${c.normal.map((v) => v.toFixed(2))} area ${areaOf(c.points).toFixed(2)}`;
  for (const [index, side] of [[c.member, 1], [c.receiver, -1]])
    (placed[index].slabs ??= []).push({ slab: slabOf(patch, c.normal, side, [...holes, ...cut]), name });
  for (const s of cut) s.delete();
}

function checkPlan(plan) {
  const faults = [];
  const placed = place(plan, faults);
  if (!stepsOnly) checkFit(plan, placed, faults);
  for (const p of placed) {
    p.solid.delete();
    for (const h of p.holes ?? []) h.solid.delete();
  }
  tell(plan, faults);
}

function checkFit(plan, placed, faults) {
  checkOverlaps(plan, placed, faults);
  for (const c of plan.contacts) slabsOfContact(plan, placed, c);
  for (const p of placed) checkSlabs(p, p.slabs ?? [], faults);
}

function tell(plan, faults) {
  if (faults.length === 0) ++totals.passed;
  else {
    ++totals.failed;
    if (totals.failed <= 20) {
      console.log(`plan ${plan.number}: ${faults.length} faults`);
      for (const f of faults.slice(0, 12)) console.log(`  ${f}`);
    }
  }
}

const chunks3 = (n) => Array.from({ length: n.length / 3 }, (_, i) => n.slice(3 * i, 3 * i + 3));
const timbers = new TimberReader();
let plan;
for await (const line of createInterface({ input: process.stdin })) {
  const [word, ...rest] = line.split(' ');
  const n = rest.map(Number);
  if (word === 'passed_over') totals.others = n[0];
  else if (word === 'plan') plan = { number: n[0], timbers: [], contacts: [], clashes: new Map() }, ++totals.plans;
  else if (word === 'clash') plan.clashes.set(`${rest[0]} ${rest[1]}`, n[2]);
  else if (timbers.read(word, rest, line, (t) => plan.timbers.push(t))) continue;
  else if (word === 'contact')
    plan.contacts.push({ meeting: n[0], member: n[1], receiver: n[2], normal: n.slice(3, 6), points: chunks3(n.slice(6)), cutInto: [] });
  else if (word === 'cut_into') plan.contacts.at(-1).cutInto.push(n);
  else if (word === 'end') checkPlan(plan);
}
console.log(`${totals.plans} plans, ${totals.others} passed over; ${totals.timbers} timbers, ${totals.pairs} pairs, ${totals.clashes} clashes said; ` +
  `${totals.contacts} bearing contacts, ${totals.cut} of them cut into as the sheets warn`);
if (totals.rebuilt > 0)
  console.log(`${totals.rebuilt} unlike timbers (${totals.handed} of them one of two hands) cut by their ${totals.steps} steps: ` +
    `at most ${totals.worst.toExponential(1)} in³ between the two`);
console.log(`fit: ${totals.passed} passed, ${totals.failed} failed`);
process.exit(totals.failed > 0 ? 1 : 0);
