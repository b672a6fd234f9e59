import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { dirname, join } from 'node:path';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import type { BenchRow } from './row';

export interface Measured extends BenchRow {
  /** The bench it is of. */
  file: string;
  failed?: string;
}

interface Kept extends Measured {
  measuredAt: string;
  machine: string;
}

/** `docs/benchmarks.md` explains each. */
const RESULTS = join(VAR, 'bench', 'results.json');

/** Keeps what was measured, in place of what the same benches gave before; those that did not run keep theirs. */
export function keepResults(rows: readonly Measured[]): void {
  const before: Kept[] = existsSync(RESULTS) ? JSON.parse(readFileSync(RESULTS, 'utf8')) : [];
  const ran = new Set(rows.map(({ file }) => file));
  const [first] = cpus();
  const machine = `Node ${process.version}, ${cpus().length} cores, ${first?.model.trim() ?? 'unknown processor'}`;
  const measuredAt = new Date().toISOString();
  const all = [
    ...before.filter(({ file }) => !ran.has(file)),
    ...rows.map((row) => ({ ...row, measuredAt, machine })),
  ].sort((a, b) => a.file.localeCompare(b.file, 'en'));
  mkdirSync(dirname(RESULTS), { recursive: true });
  writeFileSync(RESULTS, JSON.stringify(all, null, 2));
}
