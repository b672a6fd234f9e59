import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { type Database, openDatabase } from '@/db/client';
import { rowFromItem } from '@/db/mappers/item';
import { migrate } from '@/db/migrate';
import { loadCatalogue } from '@/db/queries/catalogue';
import { searchCatalogue } from '@/db/queries/catalogueSearch';
import { items } from '@/db/schema';
import { searchFrom } from '@/lib/catalogue/search';
import { itemId } from '@/lib/identity/ids';
import { loadDemo } from '@/seed/load';
import { type BenchRow, besideOf, percentiles } from './row';

/** What people type, letter by letter: each beginning is a search of its own. */
const TYPED = ['drill bit 2.5', 'locking 3.5', 'plate 8-hole', 'cortical screw 4.5 32', 'left'];

/** The server's share of a keystroke: the search and its answer as JSON. The browser's share is measured in the browser test. */
const SERVER_SHARE_MS = 40;

/** Catalogue search as it is typed, on the demo's catalogue and on one ten times as large. */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-bench-'));
  const path = join(folder, 'search.sqlite');
  migrate(path);
  const db = openDatabase(path);
  try {
    await loadDemo({ db, now: new Date('2026-01-14T06:30:00Z') });
    const rows = [await measured('catalogue-search: a keystroke, the demo', path, db, SERVER_SHARE_MS)];
    await enlarge(db, 9);
    rows.push(await measured('catalogue-search: a keystroke, ten times the demo', path, db, null));
    return rows;
  } finally {
    db.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measured(name: string, path: string, db: Database, bound: number | null): Promise<BenchRow> {
  const searches = TYPED.flatMap((text) => Array.from(text, (_, index) => text.slice(0, index + 1)));
  const times: number[] = [];
  for (let round = 0; round < 4; round += 1) {
    for (const q of searches) {
      const start = performance.now();
      const answer = JSON.stringify({
        rows: await searchCatalogue(db, searchFrom(new URLSearchParams({ q }))),
      });
      // the first round fills what is worked out once for each item
      if (round > 0) times.push(performance.now() - start);
      if (answer.length < 10) throw new Error('a search without an answer');
    }
  }
  const { p50, p95 } = percentiles(times);
  const plain = new Sqlite(path, { readonly: true });
  const like = plain.prepare("SELECT * FROM items WHERE name LIKE '%' || ? || '%' OR code LIKE ? || '%'");
  const ratio =
    p50 / ((await besideOf(() => searches.map((q) => JSON.stringify(like.all(q, q))))) / searches.length);
  plain.close();
  return { name, p50, p95, bound, ratio, beside: 'LIKE over the same rows, as JSON' };
}

/** The same items again under other codes. */
async function enlarge(db: Database, times: number): Promise<void> {
  const catalogue = await loadCatalogue(db);
  await db.tx(async (write) => {
    for (let copy = 1; copy <= times; copy += 1) {
      for (const item of catalogue) {
        const id = itemId.parse(`${item.id}-c${copy}`);
        await write
          .insert(items)
          .values(rowFromItem({ ...item, id, code: `${item.code}-C${copy}`, gtin: null }, 1, 'a maker'));
      }
    }
  });
}
