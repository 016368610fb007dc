// Reading screenshots.
import {inflateSync} from 'node:zlib';

/** The pixels of an 8-bit RGB(A) PNG, as Chromium writes them (PNG specification, 2nd edition: 9.2 filtering). */
export function pixels(png) {
  const width = png.readUInt32BE(16), height = png.readUInt32BE(20), channels = png[25] === 6 ? 4 : 3;
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
      const guess = [0, left, up, (left + up) >> 1, paeth][filter];
      out[y * stride + x] = raw[y * (stride + 1) + 1 + x] + guess;
    }
  }
  const colours = new Uint32Array(width * height);
  for (let i = 0; i < colours.length; ++i) colours[i] = out.readUIntBE(i * channels, 3);
  return {width, height, colours};
}
