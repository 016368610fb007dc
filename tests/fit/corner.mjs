// Hips and valleys, their jacks and what stands at their peak, built with an outside solid modeller from nothing but the
// numbers that `bentbook corner --json` answers: lengths, angles off the timbers' length, plumb cuts, drop, shift,
// backing. Placed on two roof planes laid here, no two timbers may take the same room, and each, pushed a hair the way
// it points, must press with all of its cut on what it meets.
//   node corner.mjs MODELLER-FOLDER PROGRAM COUNT SEED [WRONG] ; WRONG: degrees by which every side cut is off
// Prints `fit: N passed, N failed` (a corner is one check).
import { execFileSync } from 'node:child_process';
import { Manifold, box, trim } from './solids.mjs';

const [program, count, seed, wrong] = [process.argv[3], Number(process.argv[4]), Number(process.argv[5]), Number(process.argv[6] ?? 0)];
const kOverlap = 0.01; // in³
const kHair = 0.01; // in, how far a timber is pushed
const kTouch = 0.99; // of the wood that the push must press into

let state = seed >>> 0;
function random(least, most) { // mulberry32
  state = (state + 0x6d2b79f5) >>> 0;
  let t = Math.imul(state ^ (state >>> 15), state | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return least + ((t ^ (t >>> 14)) >>> 0) / 2 ** 32 * (most - least);
}

const rad = (degrees) => degrees * Math.PI / 180;
const add = (a, b, k = 1) => a.map((v, i) => v + k * b[i]);
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => a.map((v) => v / Math.hypot(...a));
const up = [0, 0, 1];

function placed(solid, origin, x, y, z) {
  const moved = solid.transform([...x, 0, ...y, 0, ...z, 0, ...origin, 1]);
  solid.delete();
  return moved;
}

function shared(a, b) {
  const both = a.intersect(b), volume = both.volume();
  both.delete();
  return volume;
}

// A cut that runs `off` its length on the top face (toward +y where `hand` is 1) and plumb on the sides of a timber that
// climbs at `slope`, through a point of the top. `end` 1: the waste lies up the timber, −1: down.
function sideCut(solid, point, off, hand, slope, end) {
  const onTop = [Math.cos(off), hand * Math.sin(off), 0], plumb = [Math.sin(slope), 0, Math.cos(slope)];
  let normal = unit(cross(onTop, plumb));
  if (normal[0] * end < 0) normal = normal.map((v) => -v);
  return trim(solid, normal, dot(normal, point));
}

function timber(breadth, depth, from, to) {
  return box([from, -breadth / 2, -depth], [to, breadth / 2, 0]);
}

function drawn() {
  const c = { valley: random(0, 1) < 0.5, eave: random(55, 130), own: random(4, 14), other: random(4, 14), run: random(110, 200) };
  c.thick = random(1.5, 6), c.jackThick = random(1.5, 6), c.jackDepth = random(5, 9), c.ridge = random(1, 4), c.spacing = random(18, 30);
  c.backed = !c.valley && random(0, 1) < 0.4;
  c.between = random(0, 1) < 0.4;
  // A hip between commons wants both roofs to have one beside it: plan angles below 90°.
  const plan = Math.atan2(Math.sin(rad(c.eave)), c.own / c.other + Math.cos(rad(c.eave)));
  if (plan > rad(88) || rad(c.eave) - plan > rad(88)) c.between = false;
  return c;
}

function asked(c) {
  const inches = (v) => `${v.toFixed(6)}"`;
  const words = ['corner', '--json', '--eave-angle', c.eave.toFixed(7), '--pitch', `${c.own.toFixed(6)}:12`, '--other', `${c.other.toFixed(6)}:12`,
    '--run', inches(c.run), '--thickness', inches(c.thick), '--depth', inches(60), '--jack-thickness', inches(c.jackThick),
    '--jack-depth', inches(c.jackDepth), '--ridge', inches(c.ridge), '--spacing', inches(c.spacing)];
  if (c.valley) words.push('--valley');
  if (c.backed) words.push('--backed');
  if (c.between) words.push('--peak', 'between');
  return JSON.parse(execFileSync(program, words, { encoding: 'utf8' }));
}

function check(c, said) {
  const faults = [], pieces = [];
  const w = rad(c.eave), slope = rad(said.slope_deg), plan = rad(said.plan_deg);
  const roofs = [
    { eave: [1, 0, 0], inward: [0, 1, 0], tan: c.own / 12, plan, jacks: said.jacks, side: said.jack_side_deg },
    { eave: [Math.cos(w), Math.sin(w), 0], inward: [Math.sin(w), -Math.cos(w), 0], tan: c.other / 12, plan: rad(said.plan_other_deg), jacks: said.jacks_other, side: said.jack_side_other_deg },
  ];
  const level = [Math.cos(plan), Math.sin(plan), 0], left = cross(up, level);
  const onLeft = c.valley ? 0 : 1; // the roof that lies to the left of the hip, looking up it
  const shift = said.hip_shift_in * (said.shift_to === undefined ? 0 : (said.shift_to === 'first') === (onLeft === 0) ? 1 : -1);
  const x = add([0, 0, 0], level, Math.cos(slope)).map((v, i) => v + Math.sin(slope) * up[i]), z = cross(x, left);
  const cutsOf = (id) => said.cuts.filter((cut) => cut.id === id);

  // The hip; its line lies −shift off its middle. A cheek of a ridge or common runs, on the top, off its length.
  let hip = timber(c.thick, 60, -40, said.length_in + 40);
  const peak = add([0, 0, 0], level, said.run_in);
  const things = [];
  for (const cut of cutsOf('peak_cheek')) {
    const roof = roofs[cut.roof === 'first' ? 0 : 1], commons = c.between && !c.valley;
    const face = commons ? roof.inward : roof.eave; // along the face that it stands against
    const turn = dot(cross(level, face), up) * dot(level, face) > 0 ? 1 : -1;
    const half = (commons ? c.jackThick : c.ridge) / 2;
    const square = commons ? roof.eave : roof.inward; // from the hip into what it meets
    const back = half / dot(level, square) / Math.cos(slope);
    hip = sideCut(hip, [said.length_in - back, -shift, 0], rad(cut.faces[0].from_length_deg + wrong), turn, slope, 1);
    // What stands there, its near face on the cheek: a ridge, or the last common as an upright plank that ends at the peak.
    const plank = commons ? box([-400, -half, -200], [0, half, 200]) : box([-400, -half, -200], [400, half, 200]);
    things.push(placed(plank, add(peak, up, said.rise_in), face, cross(up, face), up));
  }
  const nearest = Math.min(...cutsOf('peak_cheek').map((cut) => {
    const roof = roofs[cut.roof === 'first' ? 0 : 1], commons = c.between && !c.valley;
    return said.length_in - (commons ? c.jackThick : c.ridge) / 2 / dot(level, commons ? roof.eave : roof.inward) / Math.cos(slope);
  }));
  if (Math.abs(nearest - said.to_cut_in) > 1e-4) faults.push(`to the peak cut ${said.to_cut_in}, here ${nearest}`);
  let planed = 0; // of its section
  if (c.backed)
    for (const [i, angle] of [[0, said.backing_deg], [1, said.backing_other_deg]]) {
      const out = i === onLeft ? 1 : -1;
      hip = trim(hip, [0, out * Math.sin(rad(angle)), Math.cos(rad(angle))], 0);
      planed += c.thick ** 2 / 8 * Math.tan(rad(angle));
    }
  hip = placed(hip, add(add([0, 0, 0], left, shift), up, -said.drop_in), x, left, z);
  pieces.push({ name: 'hip', solid: hip, push: x, wood: c.thick * 60 - planed, on: things });

  for (const roof of roofs) {
    const theta = Math.atan(roof.tan), along = add(roof.inward.map((v) => v * Math.cos(theta)), up, Math.sin(theta));
    const y = cross(up, roof.inward), high = cross(along, y);
    const run = said.rise_in / roof.tan / Math.cos(theta);
    // The hip's line, seen from a jack: to its left (+y) as it climbs, or to its right.
    const hand = dot(level, y) > 0 ? 1 : -1;
    roof.jacks.forEach((jack, i) => {
      const at = roof.eave.map((v) => v * (i + 1) * c.spacing);
      const ridge = c.valley ? c.ridge / 2 / Math.cos(theta) : 0;
      let solid = c.valley ? timber(c.jackThick, c.jackDepth, -60, run - ridge) : timber(c.jackThick, c.jackDepth, -60, run + 60);
      const cutAt = c.valley ? run - ridge - jack.to_cut_in : jack.to_cut_in;
      solid = sideCut(solid, [cutAt, 0, 0], rad(roof.side + wrong), hand, theta, c.valley ? -1 : 1);
      // A valley's jack stands over the valley's top by what its roof rises from the line to the valley's side.
      const half = c.thick / 2 + (roof === roofs[onLeft] ? shift : -shift);
      const over = c.valley ? half * roof.tan * Math.cos(roof.plan) * Math.cos(theta) : 0;
      const share = Math.max(0, 1 - over / c.jackDepth);
      // Near the peak a jack's cut runs past the hip's own.
      const ends = (i + 1) * c.spacing / Math.cos(roof.plan) + (c.thick + c.jackThick) * (1 / Math.cos(roof.plan) + Math.tan(roof.plan));
      const whole = ends < said.run_in - said.shortening_level_in - c.thick / Math.tan(roofs.reduce((least, r) => Math.min(least, r.plan), 9));
      pieces.push({ name: `jack ${i + 1} of ${roof === roofs[0] ? 'first' : 'other'}`, solid: placed(solid, at, along, y, high),
        push: along.map((v) => (c.valley ? -v : v)), wood: whole ? share * c.jackThick * c.jackDepth : 0, on: [hip] });
    });
  }

  for (const piece of pieces) {
    for (const thing of piece.on) {
      const volume = shared(piece.solid, thing);
      if (volume > kOverlap) faults.push(`${piece.name} takes ${volume.toFixed(3)} in³ of what it meets`);
    }
    const moved = piece.solid.translate(piece.push.map((v) => v * kHair));
    const all = piece.on.length === 1 ? piece.on[0] : Manifold.union(piece.on);
    const pressed = shared(moved, all);
    if (pressed < kTouch * piece.wood * kHair) faults.push(`${piece.name} presses into ${pressed.toFixed(4)} in³ of ${(piece.wood * kHair).toFixed(4)}`);
    moved.delete();
    if (piece.on.length > 1) all.delete();
  }
  const jacks = pieces.slice(1);
  for (const solid of [...pieces.map((piece) => piece.solid), ...things]) solid.delete();
  return { faults, jacks: jacks.length };
}

const totals = { passed: 0, failed: 0, jacks: 0, valleys: 0 };
for (let i = 0; i < count; ++i) {
  const c = drawn();
  const { faults, jacks } = check(c, asked(c));
  totals.jacks += jacks, totals.valleys += c.valley ? 1 : 0;
  if (faults.length === 0) ++totals.passed;
  else if (++totals.failed <= 10) {
    console.log(`corner ${i}: ${JSON.stringify(c)}`);
    for (const fault of faults.slice(0, 6)) console.log(`  ${fault}`);
  }
}
console.log(`${count} corners, ${totals.valleys} of them valleys; ${totals.jacks} jacks`);
console.log(`fit: ${totals.passed} passed, ${totals.failed} failed`);
process.exit(totals.failed > 0 ? 1 : 0);
