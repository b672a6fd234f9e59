import { runningWords as words } from '../wording/running';

/** How one part of a running program stands: well, to be looked at, wrong, or not known. */
export type LightState = 'well' | 'look' | 'wrong' | 'unknown';

export interface Light {
  /** What is looked at, stable, for programs. */
  name: string;
  state: LightState;
  /** How it stands, in a sentence. */
  says: string;
  /** What to do about it; `null` where there is nothing to do. */
  remedy: string | null;
}

const DAY_MS = 86_400_000;
/** A night's backup may take a while, and the hour changes twice a year. */
const NIGHTLY_WITHIN_MS = 26 * 3_600_000;
const LOG_LARGE = 256e6;
const CLOCK_MAY_BE_OFF_MS = 5 * 60_000;
/** Below this the next backup, or the next week, may not fit. */
const SPACE_LOW = 1e9;
const SPACE_NONE = 100e6;

const well = (name: string, says: string): Light => ({ name, state: 'well', says, remedy: null });
const light = (name: string, state: LightState, says: string, remedy: string): Light => ({
  name,
  state,
  says,
  remedy,
});

/** Age of the newest proven backup. A demo needs none. */
export function backupLight(
  newest: { madeAt: string } | null,
  { now, isDemo, isOn }: { now: string; isDemo: boolean; isOn: boolean },
): Light {
  const name = 'backup';
  if (isDemo) return well(name, words.demoNeedsNone(newest?.madeAt ?? null));
  if (newest === null) return light(name, 'wrong', words.noBackup, words.makeBackup(isOn));
  const age = Date.parse(now) - Date.parse(newest.madeAt);
  const says = words.backupAge(newest.madeAt, Math.floor(age / 3_600_000));
  if (age > 7 * DAY_MS) return light(name, 'wrong', says, words.makeBackup(isOn));
  if (age > NIGHTLY_WITHIN_MS) return light(name, 'look', says, words.makeBackup(isOn));
  return well(name, says);
}

/** Free space where the database, or its backups, are; `null`: the system does not say. */
export function spaceLight(name: string, free: number | null, needs = 0): Light {
  if (free === null) return light(name, 'unknown', words.spaceUnknown, words.freeSpace);
  const says = words.spaceFree(free);
  if (free < SPACE_NONE) return light(name, 'wrong', says, words.freeSpace);
  if (free < Math.max(SPACE_LOW, needs)) return light(name, 'look', says, words.freeSpace);
  return well(name, says);
}

/** Size of the write-ahead log: it grows without end only when something keeps an old view of the database open. */
export function logLight(bytes: number): Light {
  const says = words.logSize(bytes);
  return bytes > LOG_LARGE ? light('writeLog', 'look', says, words.logLarge) : well('writeLog', says);
}

/** The machine's clock against the newest entry: one that went back would date new entries before old ones. */
export function clockLight(newestEnteredAt: string | null, now: string): Light {
  const name = 'clock';
  if (newestEnteredAt === null) return well(name, words.clockNothingYet);
  const behind = Date.parse(newestEnteredAt) - Date.parse(now);
  return behind > CLOCK_MAY_BE_OFF_MS
    ? light(name, 'wrong', words.clockBehind(newestEnteredAt, now), words.setClock)
    : well(name, words.clockRight(now));
}

/** Migrations of the database against those of this program. */
export function schemaLight({
  missing,
  unknown,
  changed,
}: Record<'missing' | 'unknown' | 'changed', string[]>): Light {
  const name = 'schema';
  if (unknown.length > 0) return light(name, 'wrong', words.schemaNewer(unknown), words.updateProgram);
  if (changed.length > 0) return light(name, 'wrong', words.schemaOther(changed), words.useOtherProgram);
  if (missing.length > 0) return light(name, 'look', words.schemaOlder(missing.length), words.startOnce);
  return well(name, words.schemaRight);
}

/** What was found reading some of the database. */
export const foundLight = (name: string, faults: readonly string[], right: string): Light =>
  faults.length === 0 ? well(name, right) : light(name, 'wrong', faults.join(' '), words.putBackBackup);

/** What is wrong in the environment. */
export const environmentLight = (problems: readonly { message: string }[]): Light =>
  problems.length === 0
    ? well('environment', words.environmentRight)
    : light('environment', 'wrong', problems.map(({ message }) => message).join(' '), words.seeReadme);

/** Whether a small write reaches the disk; `problem` in plain words where it does not. */
export const writeLight = (problem: string | null, ms: number): Light =>
  problem === null
    ? well('writing', words.writes(ms))
    : light('writing', 'wrong', words.doesNotWrite(problem), words.freeSpace);

/** The second place of the ledger's heads. */
export function headsLight(problem: string | null, isOnSameDisk: boolean): Light {
  if (problem !== null) return light('heads', 'wrong', problem, words.headsRemedy);
  return isOnSameDisk
    ? light('heads', 'look', words.headsBeside, words.headsElsewhere)
    : well('heads', words.headsApart);
}

/** The worst of them. `unknown` and `look` leave the program usable. */
export function worst(lights: readonly Light[]): LightState {
  const order: LightState[] = ['wrong', 'unknown', 'look', 'well'];
  return order.find((state) => lights.some((one) => one.state === state)) ?? 'well';
}
