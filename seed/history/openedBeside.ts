import { Chance } from './chance';
import { DAY, HISTORY_DAYS, type PastCase, type UsedSet } from './pastCases';

const SEED = 952_030;

/**
 * Configurations of which a second set is now and then opened beside the first, for an instrument that the first lacks, and in
 * how many of the cases. Invented.
 */
const BESIDE: readonly { of: string; beside: string; share: number }[] = [
  { of: 'LFL', beside: 'LFS', share: 0.4 },
  { of: 'PTT', beside: 'LFS', share: 0.5 },
  { of: 'DFF', beside: 'LFL', share: 0.4 },
  { of: 'SFL', beside: 'SFS', share: 0.14 },
  { of: 'DRT', beside: 'MFT', share: 0.06 },
  { of: 'PHT', beside: 'SFT', share: 0.2 },
];

/** A set is turned round in so long before it is opened again. */
const TURN = 2 * DAY;
/** The newest cases are told one by one, each with one set. */
const NEWEST = 30 * DAY;

/** The same cases, some with a second set beside the first, where one was free. A set is in one case at a time. */
export function openedBeside(cases: readonly PastCase[], sets: readonly UsedSet[], now: number): PastCase[] {
  const chance = new Chance(SEED);
  const busy = new Map<string, { from: number; until: number }[]>();
  const take = ({ setId }: UsedSet, { startsAt, endsAt }: PastCase) =>
    busy.set(setId, [...(busy.get(setId) ?? []), { from: startsAt - TURN, until: endsAt + TURN }]);
  for (const one of cases) take(one.set, one);
  const firstTold = new Map(sets.map(({ setId, told }) => [setId, told[0]?.steps[0]?.at ?? now]));
  const isFree = ({ setId }: UsedSet, { startsAt, endsAt }: PastCase) =>
    endsAt + TURN < (firstTold.get(setId) ?? now) &&
    (busy.get(setId) ?? []).every(({ from, until }) => endsAt < from || startsAt > until);
  return cases.map((one) => {
    const pair = BESIDE.find(({ of, share }) => of === one.set.configuration && chance.is(share));
    if (!pair || one.toldTurn !== null) return one;
    if (one.endsAt > now - NEWEST || one.startsAt < now - HISTORY_DAYS * DAY + 5 * DAY) return one;
    const free = sets.find((set) => set.configuration === pair.beside && isFree(set, one));
    if (!free) return one;
    take(free, one);
    return { ...one, beside: free };
  });
}
