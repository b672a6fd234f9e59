import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { auditLedgerFile } from '@/db/ledgerFile';
import { migrate } from '@/db/migrate';
import { ledgerFaultSentence } from '@/lib/wording/ledger-verify';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';
import { random, wholeBelow } from '../random';
import { scratchFolder } from '../scratch';
import { CannotTry, type Found, type Suite } from '../suite';
import { type AfterCut, cutFaults, cutLosses } from './checker';
import { Disk, type DiskEvent } from './disk';
import { CALLS, readTrace } from './trace';

/** Enough for the log to be folded into the database several times, which is when both files are at risk. */
const WRITES = 400;

export const power: Suite = {
  unit: 'cuts',
  size: 1000,
  run: ({ size, seed, say }) => cutPower({ cuts: size, writes: WRITES, seed, say }),
};

interface CutPower {
  cuts: number;
  /** How many writes are recorded. */
  writes: number;
  seed: number;
  say(line: string): void;
}

/**
 * Power cuts, by replaying what the program told the disk. The program's own writes run under strace, which records every
 * change of a file with its bytes, every sync and every acknowledgement in one order; then the power fails at places drawn
 * from that record, and the database is opened as it would be found (`disk.ts` says what a disk may do). Opened by
 * `openDatabase` no acknowledged write may be gone. The same is done with the engine's default, `synchronous=NORMAL`: what it
 * loses is shown, and if it lost nothing the simulation would prove nothing.
 */
export async function cutPower({ cuts, writes, seed, say }: CutPower): Promise<Found> {
  requireStrace();
  const folder = realpathSync(mkdtempSync(join(scratchFolder(), 'power-')));
  try {
    const hospital = join(folder, 'hospital.sqlite');
    makeHospital(hospital);
    const asked = { folder, hospital, cuts, writes, seed, say };
    const full = await cutOften({ ...asked, sync: 'FULL' });
    const normal = await cutOften({ ...asked, sync: 'NORMAL' });
    const faults = [...full.faults, ...normal.faults];
    if (full.lost > 0)
      faults.push(`${full.lost} acknowledged writes were lost with FULL, in ${full.cutsThatLost} cuts`);
    if (normal.lost === 0) faults.push('NORMAL lost nothing: then the simulation shows nothing of FULL');
    return {
      tried: cuts,
      acknowledged: full.acknowledged,
      lost: full.lost,
      seen: [sentence('FULL', full), sentence('NORMAL, for comparison', normal)],
      faults,
      notTried: [],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Sync = 'FULL' | 'NORMAL';

const sentence = (what: string, one: Awaited<ReturnType<typeof cutOften>>) =>
  `${what}: ${one.cuts} cuts in a record of ${one.events} calls and ${one.syncs} syncs, ${one.inFolding} of them while the log was folded in; ${one.cutsThatLost} cuts lost something acknowledged, ${one.lost} writes in all, ${one.most} at most in one cut`;

function requireStrace(): void {
  const tried = spawnSync('strace', ['-o', '/dev/null', 'true'], { encoding: 'utf8' });
  if (tried.error) throw new CannotTry('strace is not on this machine');
  if (tried.status !== 0) throw new CannotTry(`strace may not trace here (${tried.stderr.trim()})`);
}

async function cutOften(asked: CutPower & { folder: string; hospital: string; sync: Sync }) {
  const { folder, sync, cuts, seed, say } = asked;
  const draw = random(seed);
  const { before, events, database } = await record(asked);
  const written = events.flatMap((one) =>
    one.kind === 'told' ? (/acknowledged (\S+)/.exec(one.text)?.[1] ?? []) : [],
  );
  const folding = whileFolding(events, database);
  const disk = new Disk(before);
  const found = { lost: 0, cutsThatLost: 0, most: 0, inFolding: 0, faults: [] as string[] };
  let taken = 0;
  let acknowledged = 0;
  for (const [number, place] of placesToCut(events.length, folding, cuts, draw).entries()) {
    for (; taken < place; taken += 1) {
      const event = events[taken] as DiskEvent;
      disk.take(event);
      if (event.kind === 'told') acknowledged += 1;
    }
    if (folding.includes(place)) found.inFolding += 1;
    const after = { written, acknowledged, ...open(join(folder, 'cut'), database, disk.cut(draw)) };
    const lost = cutLosses(after);
    found.lost += lost;
    found.most = Math.max(found.most, lost);
    if (lost > 0) found.cutsThatLost += 1;
    for (const fault of cutFaults(after)) found.faults.push(`${sync}, after ${place} calls: ${fault}`);
    if ((number + 1) % 500 === 0) say(`${sync}: ${number + 1} cuts`);
  }
  const syncs = events.filter(({ kind }) => kind === 'sync').length;
  return { ...found, cuts, events: events.length, syncs, acknowledged: written.length };
}

/** The places where the log is being folded in: the database itself was written to and not yet synced. */
function whileFolding(events: readonly DiskEvent[], database: string): number[] {
  let folding = false;
  return events.flatMap((event, at) => {
    if (event.kind !== 'told' && event.path === database) folding = event.kind !== 'sync';
    return folding ? [at + 1] : [];
  });
}

/** Anywhere; and one in four while the log is being folded in, which takes a small part of the time. In order. */
const placesToCut = (length: number, folding: readonly number[], cuts: number, draw: () => number) =>
  Array.from({ length: cuts }, () =>
    draw() < 0.25 && folding.length > 0
      ? (folding[wholeBelow(draw, folding.length)] as number)
      : wholeBelow(draw, length + 1),
  ).sort((one, other) => one - other);

/** Runs the writer under strace and proves that the record is whole: replayed without a cut it gives the very same files. */
async function record(asked: { folder: string; hospital: string; sync: Sync; writes: number }) {
  const { folder, hospital, sync, writes } = asked;
  const place = join(folder, sync);
  mkdirSync(place);
  const database = join(place, 'hospital.sqlite');
  copyFileSync(hospital, database);
  const before = new Map([[database, readFileSync(database)]]);
  const log = join(folder, `${sync}.strace`);
  const writer = join(ROOT, 'tests/faults/power/writer.ts');
  const ran = spawnSync(
    'strace',
    // the writer writes from its first thread alone, so the others need not be followed; a thread that did would be missed
    // by the record, and the comparison below would say so
    ['-y', '-xx', '-s', '1000000', '-o', log, '-e', `trace=${CALLS.join(',')}`].concat(
      process.execPath,
      '--import',
      'tsx',
      writer,
      database,
      String(writes),
      sync,
    ),
    { cwd: ROOT, encoding: 'utf8', maxBuffer: 1e8 },
  );
  if (ran.status !== 0) throw new Error(`the writer ended with ${ran.status}: ${ran.stderr.slice(-2000)}`);
  const events: DiskEvent[] = [];
  const skip = (path: string) => path.endsWith('-shm');
  for await (const event of readTrace(log, { folder: place, there: before.keys(), skip })) events.push(event);
  const disk = new Disk(before);
  for (const event of events) disk.take(event);
  for (const [path, bytes] of disk.files())
    if (!bytes.equals(readFileSync(path))) throw new Error(`the record of ${path} is not whole`);
  rmSync(log);
  return { before, events, database };
}

function makeHospital(database: string): void {
  migrate(database);
  const connection = new Sqlite(database);
  connection
    .prepare("INSERT INTO people (id, name, role) VALUES ('person_writer', 'Wren Writer', 'technician')")
    .run();
  // what lies in the log goes into the file, so that it alone is the beginning
  connection.pragma('journal_mode = DELETE');
  connection.close();
}

/** The files as they are found when the power is back, opened as the program opens them. */
function open(
  place: string,
  database: string,
  files: ReadonlyMap<string, Buffer>,
): Pick<AfterCut, 'stored' | 'entered' | 'damage'> {
  rmSync(place, { recursive: true, force: true });
  mkdirSync(place);
  const here = (path: string) => join(place, path.slice(path.lastIndexOf('/') + 1));
  for (const [path, bytes] of files) writeFileSync(here(path), bytes);
  try {
    const connection = new Sqlite(here(database), { fileMustExist: true });
    const all = (sql: string) => connection.prepare(sql).pluck().all() as string[];
    const stored = all('SELECT id FROM scans ORDER BY seq');
    const entered = all("SELECT subject_id FROM ledger WHERE action = 'record-scan' ORDER BY seq");
    const dangling = (connection.pragma('foreign_key_check') as unknown[]).length;
    connection.close();
    const audit = auditLedgerFile(here(database), '');
    const damage = [
      ...(audit.damaged === null ? [] : [audit.damaged]),
      ...audit.faults.map(ledgerFaultSentence),
      ...audit.guardsGone.map((name) => `${name} is gone`),
      ...(dangling === 0 ? [] : [`${dangling} rows point at nothing`]),
    ];
    return { stored, entered, damage };
  } catch (error) {
    return { stored: null, entered: [], damage: [error instanceof Error ? error.message : String(error)] };
  }
}
