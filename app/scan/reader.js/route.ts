import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { endpoint } from '@/app/_server/enter';

const PACKAGE = join(process.cwd(), 'node_modules', 'zxing-wasm', 'dist', 'iife', 'reader', 'index.js');
const OURS = join(process.cwd(), 'app', '_scan', 'camera-worker.mjs');
let kept: Promise<string> | null = null;

/**
 * The worker that reads the camera's pictures: the package in use and what of ours asks it. A worker has the policy it is
 * served with, so that the wasm it compiles has to be allowed to no page.
 */
export const GET = endpoint('GET /scan/reader.js', async () => {
  kept ??= Promise.all([readFile(PACKAGE, 'utf8'), readFile(OURS, 'utf8')]).then((parts) => parts.join('\n'));
  return new Response(await kept, {
    headers: { 'Content-Type': 'text/javascript; charset=utf-8', 'Cache-Control': 'private, max-age=86400' },
  });
});
