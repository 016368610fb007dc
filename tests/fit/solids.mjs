// Timbers as solids of an outside modeller (manifold-3d), from nothing but what their sheets say: blank, end cuts,
// pockets, holes. Used by tests/fit and tests/blocking.
import { pathToFileURL } from 'node:url';

const module = await import(pathToFileURL(`${process.argv[2]}/manifold.js`).href);
const library = await module.default();
library.setup();
export const { Manifold } = library;

const kHoleSides = 24;
const axes = { x: [1, 2, 0], y: [0, 2, 1], z: [0, 1, 2] }; // outline first, outline second, sweep

export function box(lo, hi) {
  const cube = Manifold.cube([hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]]);
  const placed = cube.translate(lo);
  cube.delete();
  return placed;
}

export function trim(solid, normal, offset) { // keeps dot(normal, p) <= offset
  const kept = solid.trimByPlane([-normal[0], -normal[1], -normal[2]], -offset);
  solid.delete();
  return kept;
}

export function pocketSolid(p) {
  const [u, v, w] = axes[p.sweep];
  const us = p.points.map((c) => c[0]), vs = p.points.map((c) => c[1]);
  const lo = [], hi = [];
  lo[u] = Math.min(...us), hi[u] = Math.max(...us), lo[v] = Math.min(...vs), hi[v] = Math.max(...vs);
  lo[w] = p.from, hi[w] = p.to;
  let solid = box(lo, hi);
  for (let i = 0; i < p.points.length; ++i) {
    const a = p.points[i], b = p.points[(i + 1) % p.points.length];
    if (a[0] === b[0] || a[1] === b[1]) continue; // a side of the box
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const normal = [0, 0, 0];
    normal[u] = (b[1] - a[1]) / length, normal[v] = -(b[0] - a[0]) / length;
    solid = trim(solid, normal, normal[u] * a[0] + normal[v] * a[1]);
  }
  return solid;
}

export function holeSolid(p) {
  // A regular polygon of the circle's area, a corner on the first outline axis.
  const turn = 2 * Math.PI / kHoleSides;
  const radius = p.radius * Math.sqrt(turn / Math.sin(turn));
  const points = [];
  for (let i = 0; i < kHoleSides; ++i)
    points.push([p.points[0][0] + radius * Math.cos(turn * i), p.points[0][1] + radius * Math.sin(turn * i)]);
  const [u, v, w] = axes[p.sweep];
  const cylinder = Manifold.cylinder(p.to - p.from, radius, radius, kHoleSides);
  const m = new Array(16).fill(0);
  m[15] = 1;
  m[u] = 1, m[4 + v] = 1, m[8 + w] = 1;
  m[12 + u] = p.points[0][0], m[12 + v] = p.points[0][1], m[12 + w] = p.from;
  const placed = cylinder.transform(m);
  cylinder.delete();
  return placed;
}

export function build(t) {
  let body = box([0, t.sides[0], t.sides[2]], [t.length, t.sides[1], t.sides[3]]);
  for (const c of t.cuts) body = trim(body, c.slice(0, 3), c[3]);
  if (t.pockets.length === 0) return body;
  const tools = t.pockets.map((p) => (p.radius > 0 ? holeSolid(p) : pocketSolid(p)));
  const solid = Manifold.difference([body, ...tools]);
  for (const s of [body, ...tools]) s.delete();
  return solid;
}

// "fence_in=2.25@1": a step's number and the face that it is measured from.
function readNumber(text) {
  const [name, value] = text.split('='), [size, face] = value.split('@');
  return { name, value: Number(size), face: face ? Number(face) : 0 };
}

// Reads the lines of one timber (write_timber in rows.h); true if the line was one.
export class TimberReader {
  timber = null;
  read(word, rest, line, add) {
    const n = rest.map(Number);
    if (word === 'timber') {
      this.timber = { mark: rest[0], length: n[1], sides: n.slice(2), cuts: [], pockets: [], sheet: rest.slice(1).join(' ') };
      add(this.timber);
    } else if (word === 'volume') this.timber.volume = n[0];
    else if (['cg', 'origin', 'x', 'y', 'z'].includes(word)) this.timber[word] = n;
    else if (word === 'cut') this.timber.cuts.push(n), (this.timber.sheet += line);
    else if (word === 'pocket' || word === 'hole') {
      this.timber.sheet += line;
      const hole = word === 'hole';
      const numbers = n.slice(hole ? 4 : 3);
      const points = Array.from({ length: numbers.length / 2 }, (_, i) => numbers.slice(2 * i, 2 * i + 2));
      this.timber.pockets.push({ sweep: rest[0], from: n[1], to: n[2], radius: hole ? n[3] : 0, points });
    } else if (word === 'planned') this.timber.planned = n.slice(0, 2), (this.timber.joined = n[2] === 1), (this.timber.handed = n[3] === 1), (this.timber.steps = []);
    else if (word === 'step') {
      const [id, of, work, part, end, ...numbers] = rest;
      this.timber.steps.push({ id, of, work, part, end: end === '-' ? '' : end, numbers: numbers.map(readNumber) });
      this.timber.set = (this.timber.set ?? '') + [work, part, end, ...numbers].join(' ') + ';';
    } else return false;
    return true;
  }
}
