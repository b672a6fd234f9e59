import {
  closeSync,
  copyFileSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { makeBackup } from '@/db/backup/make';
import { makeKeyFile } from '@/db/backup/seal';
import { openDatabase } from '@/db/client';
import { recordScans } from '@/db/operations/scans/record-scans';
import { personId, scanId } from '@/lib/identity/ids';
import { kitwright } from '../../../scripts/kitwright/kitwright';
import { SECTOR } from '../power/disk';
import { random, wholeBelow } from '../random';
import { scratchFolder } from '../scratch';
import { digestsOf, schemaOf } from '../standing';
import type { Found, Suite } from '../suite';
import { bitFaults, bitShares, type Damage } from './checker';
import { mapPages } from './pages';

/** Entries that the ledger's chain is checked over, beside the demo's one. */
const ENTRIES = 200;
/** One damage in so many is a torn page, the others are single bits. */
const TORN = 4;

/**
 * Damage that no disk reported: single bits that read differently, and pages of which a part is of another write. The file of a
 * hospital is damaged at places drawn over all of it, one damage at a time, and `verify` and `doctor` are asked; so are a
 * backup, a sealed one and the description beside it. In a backup every damage must be found, for its digest is written down.
 * In the database itself the engine finds what breaks its structure, the ledger's chain what was changed in the ledger, and the
 * newest proven backup what was changed of what is written once and for all; a value that may change and that nothing else rests
 * on is found by no check, and its share is shown.
 */
export const bits: Suite = {
  unit: 'damages',
  size: 400,
  run: ({ size, seed, template, say }) => damageBits({ damages: size, seed, template, say }),
};

export async function damageBits(asked: {
  damages: number;
  seed: number;
  template: string;
  say(line: string): void;
}): Promise<Found> {
  const { damages, seed, template, say } = asked;
  const draw = random(seed);
  const folder = mkdtempSync(join(scratchFolder(), 'bits-'));
  try {
    const files = await makeFiles(folder, template);
    const all: Damage[] = [];
    for (let number = 0; number < damages; number += 1) {
      const how = number % TORN === TORN - 1 ? 'torn' : 'bit';
      all.push(await damageDatabase(files, how, draw));
      // a backup is read whole for each of its damages, too
      if (number % 4 === 0) all.push(await damageBackup(files, 'backup', how, draw));
      if (number % 16 === 0) all.push(await damageBackup(files, 'sealed', 'bit', draw));
      if (number % 8 === 0) all.push(await damageBackup(files, 'description', 'bit', draw));
      if ((number + 1) % 100 === 0) say(`${number + 1} damages of the database`);
    }
    return {
      tried: all.length,
      acknowledged: null,
      lost: null,
      seen: bitShares(all),
      faults: bitFaults(all),
      notTried: [],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Files = Awaited<ReturnType<typeof makeFiles>>;

async function makeFiles(folder: string, template: string) {
  const database = join(folder, 'hospital.sqlite');
  copyFileSync(template, database);
  const db = openDatabase(database);
  const [first] = await db.read.query.people.findMany({ limit: 1 });
  const person = { id: personId.parse(first?.id), name: first?.name ?? '', role: 'technician' } as const;
  const by = { ok: true, value: { person, sessionId: null, workstationId: null } } as const;
  for (let number = 0; number < ENTRIES; number += 1) {
    const now = new Date().toISOString();
    const scan = {
      id: scanId.parse(`scan_bits-${number}`),
      text: `KW-UNKNOWN-${number}`,
      how: 'scanner',
      separators: 'sent',
      doneAt: now,
      context: { kind: 'none' },
      session: null,
    } as const;
    await recordScans({ db, now, scans: [{ scan, by }] });
  }
  db.close();
  const keyFile = join(folder, 'key.txt');
  const now = new Date().toISOString();
  const recipient = await makeKeyFile(keyFile, now);
  const make = { database, folder, reason: 'asked', now, headsText: '' } as const;
  const open = await makeBackup({ ...make, recipient: null });
  // the older of the two: the newest is what a database is compared with
  const before = new Date(Date.now() - 60_000).toISOString();
  const sealed = await makeBackup({ ...make, now: before, recipient });
  const files = {
    folder,
    database,
    keyFile,
    backup: join(folder, open.file),
    sealed: join(folder, sealed.file),
    map: mapPages(database),
    whole: readFileSync(database),
    tables: new Map<string, string>(),
  };
  files.tables = digests(database) ?? files.tables;
  return files;
}

interface Change {
  at: number;
  bytes: Buffer;
}

/** One bit turned over; or of one page a part, from a sector on, as another page has it. */
function drawChange(whole: Buffer, pageSize: number, how: Damage['how'], draw: () => number): Change {
  if (how === 'bit') {
    const at = wholeBelow(draw, whole.length);
    return { at, bytes: Buffer.from([(whole[at] ?? 0) ^ (1 << wholeBelow(draw, 8))]) };
  }
  for (;;) {
    const pages = Math.floor(whole.length / pageSize);
    const from = SECTOR * (1 + wholeBelow(draw, pageSize / SECTOR - 1));
    const at = wholeBelow(draw, pages) * pageSize + from;
    const other = wholeBelow(draw, pages) * pageSize + from;
    const bytes = whole.subarray(other, other + pageSize - from);
    // a part that is the same in both is no damage
    if (!bytes.equals(whole.subarray(at, at + bytes.length))) return { at, bytes };
  }
}

async function damageDatabase(files: Files, how: Damage['how'], draw: () => number): Promise<Damage> {
  const { database, whole, map, tables } = files;
  const change = drawChange(whole, map.pageSize, how, draw);
  put(database, change);
  try {
    const verify = await ask(['verify', '--db', database], files.folder);
    const doctor = await ask(['doctor', '--db', database], files.folder);
    const now = verify.isWrong ? null : digests(database);
    return {
      of: 'database',
      how,
      place: map.placeOf(change.at, whole),
      verify: verify.isWrong,
      doctor: doctor.isWrong,
      wordless: verify.wordless ?? doctor.wordless,
      differs: verify.isWrong
        ? []
        : now === null
          ? 'unreadable'
          : [...new Set([...tables.keys(), ...now.keys()])].filter(
              (name) => tables.get(name) !== now.get(name),
            ),
    };
  } finally {
    put(database, { at: change.at, bytes: whole.subarray(change.at, change.at + change.bytes.length) });
    for (const end of ['-wal', '-shm']) rmSync(database + end, { force: true });
  }
}

async function damageBackup(
  files: Files,
  of: 'backup' | 'sealed' | 'description',
  how: Damage['how'],
  draw: () => number,
): Promise<Damage> {
  const backup = of === 'sealed' ? files.sealed : files.backup;
  const path = of === 'description' ? `${backup}.json` : backup;
  const whole = readFileSync(path);
  put(path, drawChange(whole, files.map.pageSize, how, draw));
  try {
    const key = of === 'sealed' ? ['--key', files.keyFile] : [];
    const verify = await ask(['verify', backup, ...key, '--db', files.database]);
    return {
      of,
      how,
      place: 'row',
      verify: verify.isWrong,
      doctor: false,
      wordless: verify.wordless,
      differs: [],
    };
  } finally {
    writeFileSync(path, whole);
  }
}

function put(path: string, { at, bytes }: Change): void {
  const file = openSync(path, 'r+');
  writeSync(file, bytes, 0, bytes.length, at);
  closeSync(file);
}

/** What the command line says: that something is wrong, and whether a person can read it. */
async function ask(
  words: string[],
  backups?: string,
): Promise<{ isWrong: boolean; wordless: string | null }> {
  const said: string[] = [];
  const exit = await kitwright(
    words,
    { ...process.env, PORT: '1', KITWRIGHT_DB: undefined, KITWRIGHT_BACKUPS: backups },
    {
      say: (line) => said.push(line),
      refuse: (line) => said.push(line),
      secret: () => Promise.resolve(''),
      now: () => new Date(),
    },
  );
  const text = said.join('\n');
  const stack = /^ +at .+$/m.exec(text);
  return { isWrong: exit !== 0, wordless: stack ? text.slice(0, 300) : null };
}

/** A digest of every table's rows, and the schema; `null` where some cannot be read. */
function digests(path: string): Map<string, string> | null {
  const connection = new Sqlite(path, { readonly: true });
  try {
    return new Map([...digestsOf(connection), ['sqlite_schema', schemaOf(connection).join('\n')]]);
  } catch {
    return null;
  } finally {
    connection.close();
  }
}
