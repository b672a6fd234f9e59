import { readdirSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import type { Database } from '@/db/client';
import { DEMO_NOW, historyDatabase } from '../setup/database';

/** An entry of the bench of list pages. */
interface ListPage {
  page: string;
  ask: (db: Database, at: string) => Promise<unknown>;
}

/** Tables that grow with the years: no list may go through one of them from end to end. */
const GROWS = [
  'ledger',
  'ledger_names',
  'ledger_things',
  'turns',
  'turn_steps',
  'packs',
  'loads',
  'load_packs',
  'cases',
  'notices',
  'case_picks',
  'case_returns',
  'piece_moves',
  'counts',
  'count_lines',
  'bench_counts',
  'set_contents',
];
/** Heaps that are used up stay on file: what lies there is found by an index that has no others. */
const USED_UP = String.raw`stock\b(?! USING (?:COVERING )?INDEX stock_(?:on_shelf|there))`;
const GOES_THROUGH = new RegExp(`^SCAN (?:\\w+ )?(?:(?:${GROWS.join('|')})\\b|${USED_UP})`);
/**
 * The newest entries are the first in that order, as many as are asked for; an example to look at is whichever comes first; and of
 * what can't be so nothing is read.
 */
const READS_LITTLE = /order by "ledger"\."seq" desc limit \?$|^select "id" from "\w+" limit \?$|where false$/;

const folder = new URL('../bench/pages/', import.meta.url);
const files = readdirSync(folder).filter((file) => !['listPage.ts', 'today.ts'].includes(file));

it.each(files)('no list page of %s goes through what grows with the years', async (file) => {
  const { pages } = (await import(new URL(file, folder).href)) as { pages: ListPage[] };
  const db = await historyDatabase();
  const asked = recordStatements();
  const faults: string[] = [];
  for (const { page, ask } of pages) {
    asked.clear();
    await ask(db, DEMO_NOW.toISOString());
    for (const text of asked) {
      if (READS_LITTLE.test(text)) continue;
      const plan = planOf((db.read as unknown as { $client: Sqlite.Database }).$client, text);
      for (const step of plan)
        if (GOES_THROUGH.test(step)) faults.push(`${page}: ${step}: ${text.slice(0, 300)}`);
    }
  }
  expect(faults).toEqual([]);
});

function planOf(connection: Sqlite.Database, text: string): string[] {
  const unknown = Array.from({ length: text.split('?').length - 1 }, () => 'x');
  const explained = prepare.call(connection, `EXPLAIN QUERY PLAN ${text}`) as unknown as Sqlite.Statement<
    unknown[],
    { detail: string }
  >;
  const rows = explained.all(...unknown);
  return rows.map(({ detail }) => detail);
}

const { prepare } = Sqlite.prototype;

/** Every statement prepared from now on until the test ends. */
function recordStatements(): Set<string> {
  const asked = new Set<string>();
  Sqlite.prototype.prepare = function recorded(this: Sqlite.Database, text: string) {
    if (!text.startsWith('EXPLAIN')) asked.add(text);
    return prepare.call(this, text);
  } as typeof prepare;
  onTestFinished(() => {
    Sqlite.prototype.prepare = prepare;
  });
  return asked;
}
