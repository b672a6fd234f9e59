import { deflateSync } from 'node:zlib';
import { DOTS_PER_MM } from '@/lib/documents/label';
import type { Raster } from './raster';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/**
 * Dots as a PNG of one bit a dot (ISO/IEC 15948: greyscale, bit depth 1), with its true size in it (pHYs), so that a
 * label printer's driver takes it dot by dot.
 */
export function pngOf({ width, height, dots }: Raster): Buffer {
  const bytesInRow = Math.ceil(width / 8);
  const rows = Buffer.alloc((bytesInRow + 1) * height);
  for (let y = 0; y < height; y += 1) {
    // every row begins with its filter, none
    const from = y * (bytesInRow + 1) + 1;
    for (let x = 0; x < width; x += 1) {
      // in greys 1 is white
      if (dots[y * width + x] === 0) {
        const at = from + (x >> 3);
        rows[at] = (rows[at] ?? 0) | (0x80 >> (x & 7));
      }
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 1;
  const physical = Buffer.alloc(9);
  physical.writeUInt32BE(DOTS_PER_MM * 1000, 0);
  physical.writeUInt32BE(DOTS_PER_MM * 1000, 4);
  physical[8] = 1;
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('pHYs', physical),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'ascii'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** CRC-32 of ISO/IEC 15948, annex D. */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
