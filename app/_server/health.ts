import 'server-only';
import { dirname, join, resolve } from 'node:path';
import { backupsIn } from '@/db/backup/read';
import { bytesOf, freeSpace, isSameDisk } from '@/db/health';
import { headsPath } from '@/db/ledgerHeadsFile';
import { migrationsOf } from '@/db/migrate';
import { probeWriting } from '@/db/operations/running/probe-writing';
import { newestEntry } from '@/db/queries/ledgerHead';
import { signInFacts } from '@/db/queries/signInFacts';
import { newestProven } from '@/lib/backups/manifest';
import { backupSettings } from '@/lib/running/configuration';
import {
  backupLight,
  clockLight,
  foundLight,
  headsLight,
  type Light,
  logLight,
  schemaLight,
  spaceLight,
  writeLight,
} from '@/lib/running/lights';
import { standingFault } from '@/lib/wording/ledger';
import { runningWords as words } from '@/lib/wording/running';
import { now } from './clock';
import { database, watchOfLedger } from './database';

/** Whoever asks often does not write often. */
const GOOD_FOR_MS = 5000;

const kept = globalThis as typeof globalThis & {
  kitwrightHealth?: { at: number; lights: Promise<Light[]> };
};

/** How everything stands that the running server rests on, at most five seconds old. */
export function healthLights(): Promise<Light[]> {
  const at = Date.now();
  const known = kept.kitwrightHealth;
  if (known && Math.abs(at - known.at) < GOOD_FOR_MS) return known.lights;
  const lights = look();
  kept.kitwrightHealth = { at, lights };
  return lights;
}

async function look(): Promise<Light[]> {
  const db = database();
  const path = resolve(process.env.KITWRIGHT_DB ?? 'var/kitwright.sqlite');
  const backups = resolve(process.env.KITWRIGHT_BACKUPS?.trim() || join(dirname(path), 'backups'));
  const heads = headsPath(path, process.env.KITWRIGHT_HEADS);
  const settings = backupSettings(process.env);
  const [{ problem, ms }, newest, { demo }] = await Promise.all([
    probeWriting({ db, now: now() }),
    newestEntry(db),
    signInFacts(db),
  ]);
  const standing = watchOfLedger()?.standing() ?? null;
  const fault = standing?.fault ?? null;
  return [
    writeLight(problem, ms),
    spaceLight('space', freeSpace(path)),
    logLight(bytesOf(`${path}-wal`)),
    schemaLight(migrationsOf(path)),
    foundLight(
      'ledger',
      fault === null ? [] : [standingFault(fault)],
      words.ledgerChecked(standing?.checked?.seq ?? 0),
    ),
    headsLight(standing?.problem ? words.headsNotWritten(standing.problem) : null, isSameDisk(path, heads)),
    backupLight(newestProven(backupsIn(backups)), {
      now: now(),
      isDemo: demo !== null,
      isOn: settings.at !== 'no',
    }),
    spaceLight('backupSpace', freeSpace(backups), bytesOf(path) * 2),
    clockLight(newest?.enteredAt ?? null, now()),
  ];
}
