import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import type { Picture } from './picture';

const require = createRequire(import.meta.url);
const wasm = readFileSync(require.resolve('zxing-wasm/reader/zxing_reader.wasm'));
prepareZXingModule({
  overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.length) as ArrayBuffer },
});

export interface Scanned {
  format: string;
  text: string;
  bytes: Uint8Array;
  contentType: string;
  symbologyIdentifier: string;
  /** Where it lies in the picture. */
  position: {
    topLeft: { x: number; y: number };
    topRight: { x: number; y: number };
    bottomLeft: { x: number; y: number };
  };
}

/** Every symbol in the picture, by ZXing-C++: an independent decoder. */
export async function scan({ width, height, greys }: Picture): Promise<Scanned[]> {
  const pixels = new Uint32Array(width * height);
  // red, green and blue of one grey, opaque, written as one number a pixel
  for (let at = 0; at < greys.length; at += 1) pixels[at] = 0xff000000 | ((greys[at] ?? 255) * 0x010101);
  const data = new Uint8ClampedArray(pixels.buffer);
  const image = { data, width, height, colorSpace: 'srgb' } as unknown as ImageData;
  return (await readBarcodes(image, {
    formats: ['DataMatrix'],
    tryHarder: true,
    maxNumberOfSymbols: 4,
  })) as unknown as Scanned[];
}
