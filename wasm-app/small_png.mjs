// Line drawings as small PNGs: sixteen colours and four bits a pixel instead of thirty-two. PNG specification, second
// edition (ISO/IEC 15948): 9.2 filters, 11.2.3 palette.
import {crc32} from './web/crc32.mjs';
import {deflateSync, inflateSync} from 'node:zlib';

/** The pixels of an 8-bit RGB or RGBA PNG, each 0xRRGGBB, laid over white. */
export function pixels(png) {
  const width = png.readUInt32BE(16), height = png.readUInt32BE(20), channels = png[25] === 6 ? 4 : 3;
  if (png[24] !== 8 || ![2, 6].includes(png[25]) || png[28]) throw new Error('not an 8-bit RGB or RGBA PNG');
  const parts = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  }
  const raw = inflateSync(Buffer.concat(parts));
  const stride = width * channels;
  const out = Buffer.alloc(stride * height);
  for (let y = 0; y < height; ++y) {
    const filter = raw[y * (stride + 1)];
    for (let x = 0; x < stride; ++x) {
      const left = x >= channels ? out[y * stride + x - channels] : 0;
      const up = y ? out[(y - 1) * stride + x] : 0;
      const corner = y && x >= channels ? out[(y - 1) * stride + x - channels] : 0;
      const p = left + up - corner;
      const [a, b, c] = [Math.abs(p - left), Math.abs(p - up), Math.abs(p - corner)];
      const paeth = a <= b && a <= c ? left : b <= c ? up : corner;
      out[y * stride + x] = raw[y * (stride + 1) + 1 + x] + [0, left, up, (left + up) >> 1, paeth][filter];
    }
  }
  const colours = new Uint32Array(width * height);
  for (let i = 0; i < colours.length; ++i) {
    const alpha = channels === 4 ? out[i * 4 + 3] : 255;
    const over = (c) => Math.round((c * alpha) / 255) + 255 - alpha;
    for (let k = 0; k < 3; ++k) colours[i] = colours[i] * 256 + over(out[i * channels + k]);
  }
  return {width, height, colours};
}

const parts = (c) => [c >> 16, (c >> 8) & 255, c & 255];
const apart = (a, b) => parts(a).reduce((sum, v, i) => sum + (v - parts(b)[i]) ** 2, 0);

/** The most used colours that are not much alike. */
function pickPalette(colours) {
  const uses = new Map();
  for (const c of colours) uses.set(c, (uses.get(c) ?? 0) + 1);
  const palette = [];
  for (const [c] of [...uses].sort((a, b) => b[1] - a[1] || a[0] - b[0])) {
    if (palette.length < 16 && palette.every((p) => apart(p, c) > 900)) palette.push(c);
  }
  return {palette, nearest: new Map([...uses.keys()].map((c) =>
    [c, palette.reduce((best, p, i) => (apart(p, c) < apart(palette[best], c) ? i : best), 0)]))};
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

/** The same picture in sixteen colours. */
export function smallPng(png) {
  const {width, height, colours} = pixels(png);
  const {palette, nearest} = pickPalette(colours);
  const stride = Math.ceil(width / 2) + 1;
  const raw = Buffer.alloc(stride * height);
  for (let y = 0; y < height; ++y) {
    for (let x = 0; x < width; ++x) raw[y * stride + 1 + (x >> 1)] |= nearest.get(colours[y * width + x]) << (x % 2 ? 0 : 4);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([4, 3, 0, 0, 0], 8);
  return Buffer.concat([png.subarray(0, 8), chunk('IHDR', header), chunk('PLTE', Buffer.from(palette.flatMap(parts))),
    chunk('IDAT', deflateSync(raw, {level: 9, memLevel: 9})), chunk('IEND', Buffer.alloc(0))]);
}
