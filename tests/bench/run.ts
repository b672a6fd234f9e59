import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';
import { keepResults, type Measured } from './results';
import type { BenchRow } from './row';

const folder = new URL('.', import.meta.url);
const wanted = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && !['run.ts', 'row.ts', 'results.ts'].includes(file))
  .filter((file) => wanted.length === 0 || wanted.some((part) => file.includes(part)))
  .sort();

const rows: Measured[] = [];
for (const file of files) {
  const { bench } = (await import(pathToFileURL(new URL(file, folder).pathname).href)) as {
    bench?: () => BenchRow[] | Promise<BenchRow[]>;
  };
  if (!bench) continue;
  try {
    rows.push(...(await bench()).map((row) => ({ file, ...row })));
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    rows.push({ file, name: file, p50: Number.NaN, p95: Number.NaN, bound: null, failed });
  }
}
print();
keepResults(rows);
process.exit(rows.some((row) => row.failed !== undefined || isOver(row)) ? 1 : 0);

function isOver({ p95, p99 = Number.NaN, bound, boundOn }: BenchRow): boolean {
  return bound !== null && !((boundOn === 'p99' ? p99 : p95) <= bound);
}

/** The table: figures in milliseconds, `OVER` where a bound is passed, ratio to a reference of the same run. */
function print(): void {
  const ms = (value: number) =>
    Number.isNaN(value) ? '–' : value < 10 ? value.toFixed(2) : value.toFixed(0);
  const cells = rows.map((row) => [
    row.name,
    ms(row.p50),
    ms(row.p95),
    row.p99 === undefined ? '' : ms(row.p99),
    row.bound === null ? '' : String(row.bound),
    row.failed ? `FAILED: ${row.failed}` : row.bound === null ? '' : isOver(row) ? 'OVER' : 'ok',
    row.ratio == null ? '' : row.ratio.toFixed(2),
    row.beside ?? '',
  ]);
  const head = ['what', 'p50 ms', 'p95 ms', 'p99 ms', 'bound', '', 'ratio', 'to'];
  const widths = head.map((title, at) => Math.max(title.length, ...cells.map((row) => row[at]?.length ?? 0)));
  const line = (row: string[]) =>
    row
      .map((cell, at) =>
        at === 0 || at === 5 || at === 7 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0),
      )
      .join('  ');
  console.log(`Node ${process.version}, ${cpus().length} cores; milliseconds`);
  console.log(line(head));
  for (const row of cells) console.log(line(row));
}
