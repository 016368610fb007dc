const crcTable = Uint32Array.from({length: 256}, (_, n) => {
  for (let k = 0; k < 8; ++k) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
  return n >>> 0;
});

// Of a byte that has one, two, three more bytes behind it: four bytes are taken at once.
const ahead = [];
for (let table = crcTable; ahead.length < 3; ahead.push(table)) table = table.map((c) => crcTable[c & 255] ^ (c >>> 8));

/** CRC-32 of ISO/IEC 13239 (polynomial 0x04C11DB7, reflected): crc32 of "123456789" is 0xcbf43926. */
export function crc32(bytes) {
  let crc = 0xffffffff, at = 0;
  for (const whole = bytes.length - 3; at < whole; at += 4) {
    crc ^= bytes[at] | bytes[at + 1] << 8 | bytes[at + 2] << 16 | bytes[at + 3] << 24;
    crc = ahead[2][crc & 255] ^ ahead[1][crc >>> 8 & 255] ^ ahead[0][crc >>> 16 & 255] ^ crcTable[crc >>> 24];
  }
  for (; at < bytes.length; ++at) crc = crcTable[(crc ^ bytes[at]) & 255] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
