import type { Construct } from '@/lib/plans/plan';
import type { Urgency } from '@/lib/theatre/surgicalCase';
import { type DemoTheatre, THEATRES } from '../hospital/building';
import type { DemoPerson } from '../hospital/people';
import { localDate } from '../hospitalClock';
import type { SetHistory } from '../turns/history';
import type { Chance } from './chance';
import { CASES_A_YEAR, type Work } from './templates';

export const DAY = 86_400_000;
const MINUTE = 60_000;
/** How far back the record goes. */
export const HISTORY_DAYS = 730;

/** A set that was used before now: its plan in the demo, its version, and the turns the demo tells by itself. */
export interface UsedSet {
  setId: string;
  code: string;
  configuration: string;
  versionId: string;
  told: SetHistory['turns'];
  /** Sets of the same configuration. */
  twins: number;
}

export interface PastCase {
  id: string;
  reference: string;
  theatre: DemoTheatre;
  startsAt: number;
  endsAt: number;
  surgeon: DemoPerson;
  urgency: Urgency;
  construct: Construct;
  limb: 'left' | 'right';
  set: UsedSet;
  /** The turn of the demo's own telling that ended in this case, or none. */
  toldTurn: number | null;
  /** A second set that was opened beside it, for its instruments, or none. */
  beside: UsedSet | null;
}

const SURGEONS: readonly DemoPerson[] = [
  'person_tobias-wray',
  'person_ines-halloran',
  'person_sunita-marlowe',
  'person_callum-denby',
];

/**
 * Cases of two years, the oldest first: each set was used now and then, as often as sets of its kind are, and before every
 * turn that the demo tells of it. A theatre that is free is taken, the trauma theatre first.
 */
export function pastCases(
  sets: readonly UsedSet[],
  work: ReadonlyMap<string, Work>,
  chance: Chance,
  now: number,
): PastCase[] {
  const wanted = sets.flatMap((set) => {
    const { constructs } = work.get(set.versionId) ?? { constructs: [] };
    if (constructs.length === 0) return [];
    return timesOf(set, chance, now).map((time) => ({ set, ...time, construct: chance.of(constructs) }));
  });
  wanted.sort((a, b) => a.startsAt - b.startsAt);
  const free = new Map<DemoTheatre, number>(THEATRES.map(({ id }) => [id, 0]));
  const count = new Map<string, number>();
  return wanted.map(({ set, startsAt, endsAt, toldTurn, construct }): PastCase => {
    const theatre = theatreFor(free, startsAt);
    free.set(theatre, endsAt + 20 * MINUTE);
    const year = localDate(new Date(startsAt)).slice(2, 4);
    const number = (count.get(year) ?? 0) + 1;
    count.set(year, number);
    const limb = construct.limb ?? (chance.is(0.5) ? 'left' : 'right');
    const reference = `LM-${year}-${opaque(number)}`;
    return {
      id: `case_${reference.toLowerCase()}`,
      reference,
      theatre,
      startsAt,
      endsAt,
      surgeon: SURGEONS[(regionOf(construct) + chance.whole(0, 1)) % SURGEONS.length] as DemoPerson,
      urgency: chance.of(['booked', 'booked', 'booked', 'soon', 'soon', 'today', 'now']),
      construct: { ...construct, limb },
      limb,
      set,
      toldTurn,
      beside: null,
    };
  });
}

interface Time {
  startsAt: number;
  endsAt: number;
  toldTurn: number | null;
}

/** Cases a year from which a set was in use in the last days too. */
const OFTEN = 20;

function timesOf(set: UsedSet, chance: Chance, now: number): Time[] {
  const perYear = (CASES_A_YEAR[set.configuration] ?? 0) / set.twins;
  if (perYear === 0) return [];
  const first = set.told[0]?.steps[0]?.at ?? now;
  // what ended just before the first turn that is told, and at the end of each turn that is told and over
  const told = perYear < OFTEN ? [] : [before(first, chance, null), ...casesOfTold(set)];
  const gap = (365 * DAY) / perYear;
  const earlier: Time[] = [];
  let at = now - HISTORY_DAYS * DAY + chance.exponential(gap);
  while (at < (told[0]?.startsAt ?? first) - 3 * DAY) {
    const startsAt = inHours(at, chance);
    earlier.push({ startsAt, endsAt: startsAt + chance.whole(60, 175) * MINUTE, toldTurn: null });
    at = startsAt + 2 * DAY + chance.exponential(Math.max(DAY, gap - 2 * DAY));
  }
  return [...earlier, ...told];
}

function casesOfTold({ told }: UsedSet): Time[] {
  return told.flatMap(({ number, steps }, at) => {
    const used = steps.find(({ step }) => step === 'inTheatre');
    const next = told[at + 1]?.steps[0]?.at;
    return used && next
      ? [{ startsAt: used.at + 20 * MINUTE, endsAt: next - 10 * MINUTE, toldTurn: number }]
      : [];
  });
}

const before = (next: number, chance: Chance, toldTurn: number | null): Time => {
  const endsAt = next - 10 * MINUTE;
  return { startsAt: endsAt - chance.whole(70, 170) * MINUTE, endsAt, toldTurn };
};

/** Mostly by day and in the week, now and then at night. */
function inHours(at: number, chance: Chance): number {
  const midnight = Math.floor(at / DAY) * DAY;
  const weekday = new Date(midnight).getUTCDay();
  const shift = chance.is(0.85) ? (weekday === 6 ? 2 : weekday === 0 ? 1 : 0) : 0;
  const minutes = chance.is(0.93) ? chance.whole(51, 95) * 10 : chance.whole(100, 138) * 10;
  return midnight + shift * DAY + minutes * MINUTE;
}

function theatreFor(free: ReadonlyMap<DemoTheatre, number>, startsAt: number): DemoTheatre {
  // trauma first
  const order: DemoTheatre[] = ['theatre_3', 'theatre_1', 'theatre_2', 'theatre_4'];
  return (
    order.find((id) => (free.get(id) ?? 0) <= startsAt) ??
    order.reduce((a, b) => ((free.get(a) ?? 0) <= (free.get(b) ?? 0) ? a : b))
  );
}

const regionOf = ({ region }: Construct) =>
  [...region].reduce((sum, letter) => sum + letter.charCodeAt(0), 0);

const SIGNS = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
/** Four signs that say nothing: a whole number scattered over all of them, no two alike. */
function opaque(number: number): string {
  let left = (number * 421_381 + 95_003) % 1_048_573;
  let text = '';
  for (let at = 0; at < 4; at += 1) {
    text += SIGNS[left % 32];
    left = Math.floor(left / 32);
  }
  return text;
}
