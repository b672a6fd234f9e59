/**
 * npm run --silent ledger:export > ledger.jsonl      (or: npm run ledger:export -- --to ledger.jsonl [--db FILE])
 *
 * Every entry of the ledger as a line of JSON, as `standalone-verify.mjs` reads it. Only reads; the server may run.
 */

import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { openLedgerFile } from '@/db/ledgerFile';
import { exportLine } from '@/lib/ledger/exportFile';
import { printedHead } from '@/lib/ledger/heads';
import { readLedgerArguments } from './arguments';

const { database, to } = readLedgerArguments(process.argv.slice(2), process.env);
const file = openLedgerFile(database);
const out = to === null ? process.stdout : createWriteStream(to);
let last: { seq: number; hash: string } | null = null;
try {
  for (const row of file.rows()) {
    last = row;
    if (!out.write(exportLine(row))) await once(out, 'drain');
  }
} finally {
  file.close();
}
if (to !== null) out.end();
console.error(last ? `Exported up to entry ${printedHead(last)}.` : 'The ledger has no entry.');
