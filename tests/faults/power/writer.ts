/**
 * The program that is under power when it fails: makes COUNT writes of the program's own on DATABASE, one after the other, and
 * says of each on standard output that it is acknowledged, only after it was. SYNC is FULL, the program's own way to open, or
 * NORMAL, the engine's default, for comparison.
 *
 * node --import tsx writer.ts DATABASE COUNT FULL|NORMAL
 */
import { writeSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { assertDurable, openDatabase } from '@/db/client';
import { recordScans } from '@/db/operations/scans/record-scans';
import { writeQueue } from '@/db/tx';
import { personId, scanId } from '@/lib/identity/ids';

const [path = '', count = '0', sync = 'FULL'] = process.argv.slice(2);
const { tx, close } = sync === 'FULL' ? openDatabase(path) : openNormal();
const person = { id: personId.parse('person_writer'), name: 'Wren Writer', role: 'technician' } as const;
const by = { ok: true, value: { person, sessionId: null, workstationId: null } } as const;

for (let number = 0; number < Number(count); number += 1) {
  const now = new Date().toISOString();
  const scan = {
    id: scanId.parse(`scan_power-${number}`),
    text: `KW-UNKNOWN-${number}`,
    how: 'scanner',
    separators: 'sent',
    doneAt: now,
    context: { kind: 'none' },
    session: null,
  } as const;
  const [outcome] = await recordScans({ db: { tx }, now, scans: [{ scan, by }] });
  if (!outcome?.ok) throw new Error('a scan was refused');
  writeSync(1, `acknowledged scan_power-${number}\n`);
}
close();

/** As `openDatabase`, but for the one pragma. */
function openNormal() {
  const writer = new Sqlite(path);
  assertDurable(writer);
  writer.pragma('synchronous = NORMAL');
  return { tx: writeQueue(writer, drizzle(writer)), close: () => writer.close() };
}
