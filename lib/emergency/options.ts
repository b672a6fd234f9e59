import type { SetId, StockId } from '../identity/ids';
import type { WaysToServe } from '../kits/waysToServe';
import type { TimeSpread } from '../turnaround/turnTime';

/** A set as far as it matters for whether it can be had in time, and what that takes from others. */
export interface SetInReach {
  id: SetId;
  code: string;
  /** Minutes from now until it is sterile; `null`: nobody can say. */
  readyMinutes: TimeSpread | null;
  /** References of the cases that count on it over the time. */
  promisedTo: readonly string[];
  /** It can't be had for this case, whoever asks; the page says why. */
  barred: boolean;
}

/** `now`: all of it is sterile · in time nine times in ten · in time half of the time · later · nobody can say. */
export type OptionTime = 'now' | 'inTime' | 'perhaps' | 'late' | 'unknown';

/** One whole way to build the chosen construct out of sets and single packs. */
export interface EmergencyOption {
  sets: SetInReach[];
  packs: { stockId: StockId; quantity: number }[];
  time: OptionTime;
  /** Minutes from now until all of it is sterile; `null`: nobody can say. */
  readyMinutes: TimeSpread | null;
  /** Cases that would lose a set. */
  takesFrom: string[];
  /** With every back-up that can be had, and no chain with a caution where there is one without. */
  asWished: boolean;
}

const MOST_OF_A_PART = 5;
const MOST_COMBINED = 200;

/**
 * The ways a construct can be served with, by which sets: those that are sterile or in time and cost nobody anything first, then
 * those that take a set from another case, then those that are late. What only adds a tray to another of them is left out.
 *
 * @param neededMinutes from now until it is needed
 */
export function emergencyOptions(
  { ways }: Pick<WaysToServe, 'ways'>,
  sets: ReadonlyMap<SetId, SetInReach>,
  neededMinutes: number,
): EmergencyOption[] {
  const found = new Map<string, EmergencyOption>();
  for (const { parts, packs, asWished } of ways) {
    const choices = parts.map((part) => partChoices(part, sets));
    for (const combined of combinations(choices)) {
      const key = combined
        .map(({ id }) => id)
        .sort()
        .join(' ');
      const known = found.get(key);
      const option = optionOf(combined, packs, asWished, neededMinutes);
      if (!known || isBetter(option, known)) found.set(key, option);
    }
  }
  const all = [...found.values()].sort(compareOptions);
  return all.filter((one) => !all.some((other) => other !== one && makesNeedless(other, one)));
}

function partChoices(part: readonly SetId[], sets: ReadonlyMap<SetId, SetInReach>): SetInReach[] {
  return part
    .flatMap((id) => {
      const set = sets.get(id);
      return set && !set.barred ? [set] : [];
    })
    .sort(
      (a, b) =>
        (a.readyMinutes?.p90 ?? Number.MAX_SAFE_INTEGER) - (b.readyMinutes?.p90 ?? Number.MAX_SAFE_INTEGER) ||
        a.promisedTo.length - b.promisedTo.length ||
        a.code.localeCompare(b.code),
    )
    .slice(0, MOST_OF_A_PART);
}

/** Every choice of one set for each part, no set twice. */
function combinations(parts: readonly SetInReach[][]): SetInReach[][] {
  let made: SetInReach[][] = [[]];
  for (const part of parts)
    made = made
      .flatMap((chosen) => part.flatMap((set) => (chosen.includes(set) ? [] : [[...chosen, set]])))
      .slice(0, MOST_COMBINED);
  return made.filter((chosen) => chosen.length > 0);
}

function optionOf(
  sets: SetInReach[],
  packs: EmergencyOption['packs'],
  asWished: boolean,
  neededMinutes: number,
): EmergencyOption {
  const readyMinutes = latestOf(sets);
  return {
    sets: [...sets].sort((a, b) => a.code.localeCompare(b.code)),
    packs,
    asWished,
    readyMinutes,
    time: timeOf(readyMinutes, neededMinutes),
    takesFrom: [...new Set(sets.flatMap(({ promisedTo }) => promisedTo))].sort(),
  };
}

/** When all of them are sterile; `null` where nobody can say it of one. */
export function latestOf(sets: readonly Pick<SetInReach, 'readyMinutes'>[]): TimeSpread | null {
  const latest = { p50: 0, p90: 0 };
  for (const { readyMinutes } of sets) {
    if (readyMinutes === null) return null;
    latest.p50 = Math.max(latest.p50, readyMinutes.p50);
    latest.p90 = Math.max(latest.p90, readyMinutes.p90);
  }
  return latest;
}

function timeOf(ready: TimeSpread | null, neededMinutes: number): OptionTime {
  if (ready === null) return 'unknown';
  if (ready.p90 === 0) return 'now';
  if (ready.p90 <= neededMinutes) return 'inTime';
  return ready.p50 <= neededMinutes ? 'perhaps' : 'late';
}

const packCount = ({ packs }: EmergencyOption) => packs.reduce((sum, { quantity }) => sum + quantity, 0);

const isBetter = (one: EmergencyOption, other: EmergencyOption) =>
  Number(other.asWished) - Number(one.asWished) < 0 ||
  (one.asWished === other.asWished && packCount(one) < packCount(other));

/** The same with a tray fewer, no more packs and no back-up less. */
function makesNeedless(one: EmergencyOption, other: EmergencyOption): boolean {
  return (
    one.sets.length < other.sets.length &&
    one.sets.every((set) => other.sets.includes(set)) &&
    packCount(one) <= packCount(other) &&
    (one.asWished || !other.asWished)
  );
}

const inTime = ({ time }: EmergencyOption) => time === 'now' || time === 'inTime';
const LATENESS: Record<OptionTime, number> = { now: 0, inTime: 0, perhaps: 1, late: 2, unknown: 3 };

function compareOptions(a: EmergencyOption, b: EmergencyOption): number {
  const costs = (one: EmergencyOption) => (inTime(one) ? one.takesFrom.length : 0);
  return (
    LATENESS[a.time] - LATENESS[b.time] ||
    costs(a) - costs(b) ||
    // what is there is surer than what will be
    Number(a.time !== 'now') - Number(b.time !== 'now') ||
    a.sets.length - b.sets.length ||
    Number(b.asWished) - Number(a.asWished) ||
    packCount(a) - packCount(b) ||
    (a.readyMinutes?.p50 ?? 0) - (b.readyMinutes?.p50 ?? 0) ||
    a.takesFrom.length - b.takesFrom.length ||
    codesOf(a).localeCompare(codesOf(b))
  );
}

const codesOf = ({ sets }: EmergencyOption) => sets.map(({ code }) => code).join(' ');
