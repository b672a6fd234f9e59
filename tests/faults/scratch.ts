import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { VAR } from '../../scripts/bootstrap/places.mjs';

/**
 * Where the many copies of a run are made. Memory where there is such: thousands of files are written and thrown away, and what
 * a disk does to them is simulated or tried on a disk of its own.
 */
export function scratchFolder(): string {
  if (existsSync('/dev/shm')) return '/dev/shm';
  const folder = join(VAR, 'test', 'faults');
  mkdirSync(folder, { recursive: true });
  return folder;
}
