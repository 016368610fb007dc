// Reads what blocking_rows writes and moves the solids with an outside modeller, in samples.
//   node check.mjs MODELLER-FOLDER [wrong] < rows
// free: what comes, taken back along the said moves, nowhere shares room with what stands. blocked: each timber that is
// said to be in the way is met somewhere on it, and no other. stopped: a swing on which something is met. pair: the same for two timbers and one line.
// `wrong`: what is said to be in the way and what is not are exchanged; all must fail then.
// Prints `blocking: N passed, N failed` (a case or a pair is one check).
import { createInterface } from 'node:readline';
import { Manifold, TimberReader, build } from '../fit/solids.mjs';

const wrong = process.argv[3] === 'wrong';
const kTouch = 0.3; // in³: faces that slide on each other count as touching up to 1/1000 in (kTouching)
const kMet = 1e-4; // in³
const kGraze = 1e-6; // in³: the least that edges share where they are more than kTouching into each other
const kDeep = 2e-3; // in: so far into the ground counts as on it
const [kLower, kSlide, kSpread, kSwing] = [0, 1, 2, 3];

const built = new Map();
function solidOf(t) { // without pegs' holes: no peg is in while timbers move
  let solid = built.get(t.sheet);
  if (!solid) {
    if (built.size > 300) {
      for (const s of built.values()) s.delete();
      built.clear();
    }
    solid = build({ ...t, pockets: t.pockets.filter((p) => p.radius === 0) });
    built.set(t.sheet, solid);
  }
  return solid;
}

function placed(t) {
  t.placed ??= solidOf(t).transform([...t.x, 0, ...t.y, 0, ...t.z, 0, ...t.origin, 1]);
  t.bounds ??= t.placed.boundingBox();
  return t.placed;
}

function groundOf(plan) {
  plan.ground ??= Math.min(...plan.timbers.map((t) => (placed(t), t.bounds.min[2])));
  return plan.ground;
}

// Distances back from the place: close together near it, then wider; a timber is inches thick.
function samples(distance, fine) {
  const list = [];
  for (let d = 0; d < distance && d < 700; d += d < 12 * fine ? fine / 2 : d < 60 * fine ? fine : 2 * fine) list.push(d);
  if (distance < 700) list.push(distance);
  return list;
}

const scaled = (v, k) => v.map((c) => c * k);
const sum = (a, b) => a.map((c, i) => c + b[i]);

function apart(a, by, b) {
  for (let k = 0; k < 3; ++k) if (a.min[k] + by[k] > b.max[k] || b.min[k] > a.max[k] + by[k]) return true;
  return false;
}

// Room shared by `a`, moved by `by`, and `b`. Flush faces leave the modeller undecided: nudged, the least counts.
function shared(a, aBounds, by, b, bBounds) {
  if (apart(aBounds, by, bBounds)) return 0;
  const at = (nudge) => {
    const moved = a.translate(sum(by, nudge));
    const both = moved.intersect(b);
    const volume = both.volume();
    moved.delete(), both.delete();
    return volume;
  };
  let least = at([0, 0, 0]);
  for (const nudge of [[1e-6, 1e-6, 1e-6], [-1e-6, -1e-6, -1e-6], [1e-6, -1e-6, 0]]) {
    if (least <= kMet) break;
    least = Math.min(least, at(nudge));
  }
  return least;
}

function rotation(axis, angle, pivot) {
  const [x, y, z] = axis, c = Math.cos(angle), s = Math.sin(angle), k = 1 - c;
  const m = [[c + x * x * k, x * y * k - z * s, x * z * k + y * s], [y * x * k + z * s, c + y * y * k, y * z * k - x * s],
    [z * x * k - y * s, z * y * k + x * s, c + z * z * k]];
  const shift = pivot.map((p, i) => p - m[i].reduce((t, v, j) => t + v * pivot[j], 0));
  return [m[0][0], m[1][0], m[2][0], 0, m[0][1], m[1][1], m[2][1], 0, m[0][2], m[1][2], m[2][2], 0, ...shift, 1];
}

// So many that no point goes farther than `fine` / 2 in one of them.
function swingSteps(move, boundsOfAll, fine) {
  let reach = 0;
  for (const b of boundsOfAll)
    for (let corner = 0; corner < 8; ++corner)
      reach = Math.max(reach, Math.hypot(...move.pivot.map((p, k) => ((corner >> k) & 1 ? b.max[k] : b.min[k]) - p)));
  return Math.max(96, Math.ceil(2 * reach * move.distance / fine));
}

// What a foot stands on: there it turns, so that it does not count when it leans.
function isUnder(plan, t, leaning) {
  placed(plan.timbers[t]), placed(plan.timbers[leaning]);
  return plan.timbers[t].bounds.max[2] < plan.timbers[leaning].bounds.min[2] + 12;
}

const kGround = -1; // stands for the ground, which lies at the frame's lowest point, among what is met

// The most that each standing timber (and the ground) shares with what comes, the moves run backward; for the ground
// inches below it. `fine`: inches between samples. `enough`: of what is met, whether to go no farther.
function walk(plan, one, fine, enough = () => false) {
  const most = new Map(one.standing.map((t) => [t, 0]));
  const made = [];
  if (one.moves.some((m) => m.kind === kSwing)) most.set(kGround, 0);
  const spread = one.moves.find((m) => m.kind === kSpread);
  const shift = (t) => (spread && spread.who.includes(t) ? scaled(spread.direction, spread.distance) : [0, 0, 0]);
  let bodies = one.coming.map((t) => ({ solid: placed(plan.timbers[t]), bounds: plan.timbers[t].bounds }));
  const meet = (by, shiftOf, pieces = bodies) => {
    for (const body of pieces) {
      if (most.has(kGround)) most.set(kGround, Math.max(most.get(kGround), groundOf(plan) - body.bounds.min[2] - by[2]));
      for (const t of one.standing) {
        placed(plan.timbers[t]);
        const volume = shared(body.solid, body.bounds, sum(by, scaled(shiftOf(t), -1)), plan.timbers[t].placed, plan.timbers[t].bounds);
        if (volume > most.get(t)) most.set(t, volume);
      }
    }
  };
  let by = [0, 0, 0];
  // It closes last: backward, it opens first, and what opens must clear what stays.
  if (spread)
    for (const d of samples(spread.distance, fine)) {
      meet(by, (t) => (spread.who.includes(t) ? scaled(spread.direction, d) : [0, 0, 0]));
      for (const moving of spread.who)
        for (const t of one.standing)
          if (!spread.who.includes(t) && !isUnder(plan, t, moving)) {
            const a = plan.timbers[moving], b = plan.timbers[t];
            most.set(t, Math.max(most.get(t), shared(a.placed, a.bounds, scaled(spread.direction, d), b.placed, b.bounds)));
          }
    }
  for (const move of [...one.moves].reverse()) {
    if (move.kind === kSpread) continue;
    if (move.kind === kSwing) {
      const solids = bodies.map((b) => b.solid);
      const steps = swingSteps(move, bodies.map((b) => b.bounds), fine);
      for (let i = 1; i <= steps; ++i) {
        made.splice(0).forEach((s) => s.delete());
        made.push(...solids.map((s) => s.transform(rotation(move.direction, -move.distance * i / steps, move.pivot))));
        bodies = made.map((s) => ({ solid: s, bounds: s.boundingBox() }));
        meet(by, shift);
        if (enough(most)) break;
      }
      continue;
    }
    for (const d of samples(move.distance, fine)) if (!enough(most)) meet(sum(by, scaled(move.direction, -d)), shift);
    by = sum(by, scaled(move.direction, -move.distance));
  }
  for (const s of made) s.delete();
  return most;
}

// A spread as the tilt that it stands for: what gives way turns about the lower edge of its lowest feet on the side it leans
// to, as far as takes its joint by the said distance. Opens; then what comes is lowered beside its place and slid in.
// (How the joint closes over the tenon is looked at as a straight move alone: cut without play, it can't turn.)
// The most room shared with each standing timber.
function tilt(plan, one, fine) {
  const most = new Map(one.standing.map((t) => [t, 0]));
  const spread = one.moves.find((m) => m.kind === kSpread);
  const axis = [-spread.direction[1], spread.direction[0], 0]; // a positive turn leans along the direction
  const come = plan.timbers[one.coming[0]], ends = [come.origin, sum(come.origin, scaled(come.x, come.length))];
  const along = (p) => p[0] * spread.direction[0] + p[1] * spread.direction[1];
  const joint = along(ends[0]) > along(ends[1]) ? ends[0] : ends[1];
  const lowest = Math.min(...spread.who.map((t) => plan.timbers[t].bounds.min[2]));
  const edge = (t) => [0, 1].map((k) => (spread.direction[k] > 0 ? plan.timbers[t].bounds.max[k] : plan.timbers[t].bounds.min[k]));
  const feet = spread.who.filter((t) => plan.timbers[t].bounds.min[2] < lowest + 1).map(edge);
  const leans = spread.who.map((t) => {
    // Each on its own foot; what is carried by several, as the one nearest to it.
    const own = edge(t), from = (foot) => Math.abs(along(foot) - along(own));
    const foot = feet.reduce((best, next) => (from(next) < from(best) ? next : best));
    return { timber: t, solid: placed(plan.timbers[t]), pivot: [...foot, lowest],
             full: Math.atan2(spread.distance, joint[2] - lowest) };
  });
  const stay = one.standing.filter((t) => !spread.who.includes(t));
  const note = (t, volume) => most.set(t, Math.max(most.get(t), volume));
  const leant = (share) => leans.map((l) => {
    const solid = l.solid.transform(rotation(axis, l.full * share, l.pivot));
    return { solid, bounds: solid.boundingBox(), timber: l.timber };
  });
  for (let i = 1; i <= 24; ++i)
    for (const l of leant(i / 24)) {
      for (const t of stay) {
        placed(plan.timbers[t]);
        if (isUnder(plan, t, l.timber)) continue;
        note(t, shared(l.solid, l.bounds, [0, 0, 0], plan.timbers[t].placed, plan.timbers[t].bounds));
      }
      l.solid.delete();
    }
  const open = leant(1);
  let by = [0, 0, 0];
  const own = { solid: placed(come), bounds: come.bounds };
  for (const move of one.moves.filter((m) => m.kind !== kSpread).reverse()) {
    for (const d of samples(move.distance, fine)) {
      const at = sum(by, scaled(move.direction, -d));
      for (const t of stay) note(t, shared(own.solid, own.bounds, at, plan.timbers[t].placed, plan.timbers[t].bounds));
      open.forEach((l, i) => note(spread.who[i], shared(own.solid, own.bounds, at, l.solid, l.bounds)));
    }
    by = sum(by, scaled(move.direction, -move.distance));
  }
  for (const l of open) l.solid.delete();
  return most;
}

const totals = { plans: 0, passed: 0, failed: 0, free: 0, blocked: 0, pairsFree: 0, pairsMet: 0, spread: 0, swing: 0, slid: 0, stopped: 0 };

function tell(plan, what, faults) {
  if (faults.length === 0) return void ++totals.passed;
  ++totals.failed;
  if (totals.failed > 20) return;
  console.log(`plan ${plan.number}: ${what}`);
  for (const f of faults.slice(0, 6)) console.log(`  ${f}`);
}

const path = (moves) => moves.map((m) => `${m.kind} ${m.direction.map((v) => v.toFixed(2))} ${m.distance.toFixed(2)}`).join('; ');
const nameOf = (plan, t) => (t === kGround ? 'the ground' : plan.timbers[t].mark);

// A swing that is said to be stopped, by whom is not said.
function judgeStopped(plan, one) {
  ++totals.stopped;
  const beyond = (least) => (most) => [...most.values()].some((v) => v > least);
  const ok = beyond(kGraze)(walk(plan, one, 1, beyond(kMet))) !== wrong;
  tell(plan, `${nameOf(plan, one.coming[0])}: stopped, moves ${path(one.moves)}`, ok ? [] : [wrong ? 'is met' : 'nothing is met']);
}

function judge(plan, one) {
  if (one.stopped) return judgeStopped(plan, one);
  const name = (list) => list.map((t) => plan.timbers[t].mark).join(' ');
  const said = new Set(wrong ? one.standing.filter((t) => !one.blockers.includes(t)) : one.blockers);
  const most = walk(plan, one, one.free ? 1 : 0.5);
  const faults = [];
  for (const [t, volume] of most) {
    if (!said.has(t) && volume > (t === kGround ? kDeep : kTouch)) faults.push(`${nameOf(plan, t)} is run into: ${volume.toFixed(3)}`);
    if (said.has(t) && !(volume > kMet)) faults.push(`${nameOf(plan, t)} is said to be in the way and is not met`);
  }
  if (one.free && one.moves.some((m) => m.kind === kSpread))
    for (const [t, volume] of tilt(plan, one, 1))
      if (!wrong && volume > kTouch) faults.push(`${nameOf(plan, t)} is run into where what gives way tilts: ${volume.toFixed(3)}`);
  if (one.free) ++totals.free;
  else ++totals.blocked;
  if (one.free && one.moves.some((m) => m.kind === kSpread)) ++totals.spread;
  if (one.free && one.moves.some((m) => m.kind === kSwing)) ++totals.swing;
  if (one.free && one.moves.at(-1).kind === kSlide) ++totals.slid;
  tell(plan, `${name(one.coming)} against ${name(one.standing)}: ${one.free ? 'free' : 'blocked by ' + name(one.blockers)}, moves ${path(one.moves)}`, faults);
}

function judgePair(plan, [a, b, x, y, z, distance, met]) {
  const one = { coming: [a], standing: [b], moves: [{ kind: kSlide, direction: [x, y, z], distance, who: [] }] };
  const volume = walk(plan, one, 0.5).get(b);
  const ok = (met === 1) !== wrong ? volume > kMet : volume <= kTouch;
  ++totals[met ? 'pairsMet' : 'pairsFree'];
  tell(plan, `${plan.timbers[a].mark} past ${plan.timbers[b].mark} along ${[x, y, z].map((v) => v.toFixed(3))} by ${distance}`,
    ok ? [] : [`said ${met ? 'met' : 'free'}, shares ${volume.toFixed(5)} in³`]);
}

const timbers = new TimberReader();
let plan, one;
for await (const line of createInterface({ input: process.stdin })) {
  const [word, ...rest] = line.split(' ');
  const n = rest.map(Number);
  if (word === 'plan') plan = { number: n[0], timbers: [] }, ++totals.plans;
  else if (timbers.read(word, rest, line, (t) => plan.timbers.push(t))) continue;
  else if (word === 'case') one = { free: rest[0] === 'free', stopped: rest[0] === 'stopped', moves: [] };
  else if (['coming', 'standing', 'blockers'].includes(word)) one[word] = n;
  else if (word === 'move') one.moves.push({ kind: n[0], direction: n.slice(1, 4), distance: n[4], pivot: n.slice(5, 8), who: n.slice(8) });
  else if (word === 'judge') judge(plan, one);
  else if (word === 'pair') judgePair(plan, n);
  else if (word === 'end') for (const t of plan.timbers) t.placed?.delete();
}
console.log(`${totals.plans} plans: ${totals.free} free (${totals.slid} slid in, ${totals.spread} spread, ${totals.swing} swung), ${totals.blocked} blocked; ${totals.stopped} swings stopped; ` +
  `pairs: ${totals.pairsFree} free, ${totals.pairsMet} met`);
console.log(`blocking: ${totals.passed} passed, ${totals.failed} failed`);
process.exit(totals.failed > 0 ? 1 : 0);
