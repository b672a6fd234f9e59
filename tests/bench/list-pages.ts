import { readdirSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { openDatabase } from '@/db/client';
import type { ListPage } from './pages/listPage';
import type { BenchRow } from './row';
import { hospitalOf } from './years/hospitals';

const ROUNDS = 12;
/** `YEARS=1,10` puts a year and ten side by side; a year alone unless told: ten take a quarter of an hour to make. */
const YEARS = (process.env.YEARS ?? '1').split(',').map(Number);
const NOT_PAGES = ['listPage.ts', 'today.ts'];

/**
 * What every list page asks the store for, in a hospital of 2,000 items and 3,000 sets with its cases of a fortnight, by the
 * years of record behind it: every file of `pages/` gives some. The ratio is to the first of the years, or to plain work of the
 * engine beside it.
 */
export async function bench(): Promise<BenchRow[]> {
  const pages = await listPages();
  const first = new Map<string, number>();
  const rows: BenchRow[] = [];
  for (const years of YEARS) {
    const db = openDatabase(await hospitalOf(years));
    for (const { page, ask, bound, beside } of pages) {
      const took = await timed(() => ask(db, new Date().toISOString()));
      const plain = beside && (await timed(async () => beside(db)));
      if (!first.has(page)) first.set(page, took.p50);
      rows.push({
        name: `${page}, ${years} years`,
        ...took,
        bound,
        ratio: took.p50 / (plain?.p50 ?? first.get(page) ?? Number.NaN),
      });
    }
    db.close();
  }
  return rows;
}

async function timed(ask: () => Promise<unknown>): Promise<{ p50: number; p95: number }> {
  const took: number[] = [];
  for (let round = 0; round <= ROUNDS; round += 1) {
    const began = performance.now();
    await ask();
    // the first is the one that warms up
    if (round > 0) took.push(performance.now() - began);
  }
  took.sort((a, b) => a - b);
  const at = (share: number) => took[Math.ceil(took.length * share) - 1] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95) };
}

async function listPages(): Promise<ListPage[]> {
  const folder = new URL('pages/', import.meta.url);
  const files = readdirSync(folder).filter((file) => !NOT_PAGES.includes(file));
  const all: ListPage[] = [];
  for (const file of files.sort()) {
    const found = (await import(pathToFileURL(new URL(file, folder).pathname).href)) as { pages: ListPage[] };
    all.push(...found.pages);
  }
  return all;
}
