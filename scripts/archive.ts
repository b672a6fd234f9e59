/**
 * npm run archive -- take FILE [--db DATABASE]      everything the hospital holds, into one file; only reads
 * npm run archive -- load FILE --db DATABASE        into a database that is not there yet
 */

import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { loadArchive } from '@/db/archive/load-archive';
import { writeArchive } from '@/db/archive/write-archive';
import { printedHead } from '@/lib/ledger/heads';

const HOW = 'Say “take FILE” or “load FILE --db DATABASE”.';
const { positionals, values } = parseArgs({ allowPositionals: true, options: { db: { type: 'string' } } });
const [act, file, ...more] = positionals;
const database = values.db ?? process.env.KITWRIGHT_DB ?? 'var/kitwright.sqlite';

if (file === undefined || more.length > 0) fail([HOW]);
else if (act === 'take' && !existsSync(database)) fail([`There is no database at ${database}.`]);
else if (act === 'take') {
  const { tables, ledgerHead } = writeArchive({ database, to: file, madeAt: new Date().toISOString() });
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(`${tables.length} tables, ${rows} rows. ${headWords(ledgerHead)}`);
} else if (act === 'load') {
  const loaded = loadArchive({ archive: file, database });
  if (loaded.ok) console.log(`Loaded into ${database}. ${headWords(loaded.manifest.ledgerHead)}`);
  else fail(loaded.sentences);
} else fail([HOW]);

function headWords(head: { seq: number; hash: string } | null): string {
  return head === null ? 'The ledger has no entry.' : `The ledger ends with ${printedHead(head)}.`;
}

function fail(sentences: readonly string[]): void {
  for (const sentence of sentences) console.error(sentence);
  process.exitCode = 1;
}
