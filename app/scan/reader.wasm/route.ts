import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { endpoint } from '@/app/_server/enter';

const FILE = join(process.cwd(), 'node_modules', 'zxing-wasm', 'dist', 'reader', 'zxing_reader.wasm');
let kept: Promise<Uint8Array<ArrayBuffer>> | null = null;

/** The reader of symbols for the camera, from the package in use: nothing is asked of another machine. */
export const GET = endpoint('GET /scan/reader.wasm', async () => {
  kept ??= readFile(FILE).then((file) => new Uint8Array(file));
  return new Response(await kept, {
    headers: { 'Content-Type': 'application/wasm', 'Cache-Control': 'private, max-age=86400' },
  });
});
