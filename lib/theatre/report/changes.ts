import { wallClock } from '../localTime';
import type { SeenCase, SeenStanding } from './seen';

type Slot = Pick<SeenCase, 'theatre' | 'startsAt' | 'endsAt'>;

/** What is other about a case than when the day was last marked as seen. */
export type WhatChanged =
  | { kind: 'added' | 'cancelled' | 'putBack' }
  /** Moved to another day. */
  | { kind: 'leftDay'; to: Slot }
  | { kind: 'moved'; from: Slot; to: Slot }
  | { kind: 'plan'; from: PlanState; to: PlanState }
  | { kind: 'promises'; gained: string[]; lost: string[] }
  | { kind: 'standing'; from: SeenStanding | null; to: SeenStanding | null };
type PlanState = Pick<SeenCase, 'planVersion' | 'confirmed'>;

export interface CaseChange {
  caseId: string;
  reference: string;
  theatre: string;
  startsAt: string;
  what: WhatChanged;
  /** Sets that the case had or has, by id: what was done to them may be why it stands otherwise. */
  sets: { id: string; code: string }[];
}

/** Cases of one theatre that follow each other otherwise than they did. */
export interface OrderChange {
  theatre: string;
  from: string[];
  to: string[];
  caseIds: string[];
}

export interface DayChanges {
  cases: CaseChange[];
  orders: OrderChange[];
}

/**
 * What changed on a day since it was seen, by time of the case.
 *
 * @param seen     the day as it was seen
 * @param present  the same day now, and those of the cases seen that are on another day now
 * @param toldFrom a waiting time that moves by less than so many minutes is no news: the program's own estimate breathes
 */
export function changesSince(
  seen: readonly SeenCase[],
  present: readonly SeenCase[],
  about: { toldFrom: number; day: string },
): DayChanges {
  const before = new Map(seen.map((one) => [one.id, one]));
  const cases = present.flatMap((now): CaseChange[] => {
    const then = before.get(now.id);
    const sets = setsOf([then, now]);
    const { id: caseId, reference, theatre, startsAt } = now;
    return whatChanged(then, now, about).map((what) => ({
      caseId,
      reference,
      theatre,
      startsAt,
      what,
      sets,
    }));
  });
  cases.sort((a, b) => a.startsAt.localeCompare(b.startsAt) || a.reference.localeCompare(b.reference));
  return { cases, orders: orderChanges(seen, present, about.day) };
}

function whatChanged(
  then: SeenCase | undefined,
  now: SeenCase,
  { toldFrom, day }: { toldFrom: number; day: string },
): WhatChanged[] {
  const here = wallClock(now.startsAt).date === day;
  if (!then) return now.cancelled ? [] : [{ kind: 'added' }];
  if (now.cancelled) return then.cancelled ? [] : [{ kind: 'cancelled' }];
  if (!here) return [{ kind: 'leftDay', to: slotOf(now) }];
  const changes: WhatChanged[] = [];
  if (then.cancelled) changes.push({ kind: 'putBack' });
  if (!sameSlot(then, now)) changes.push({ kind: 'moved', from: slotOf(then), to: slotOf(now) });
  if (then.planVersion !== now.planVersion || then.confirmed !== now.confirmed)
    changes.push({ kind: 'plan', from: planOf(then), to: planOf(now) });
  const gained = codesNotIn(now.promised, then.promised);
  const lost = codesNotIn(then.promised, now.promised);
  if (gained.length + lost.length > 0) changes.push({ kind: 'promises', gained, lost });
  if (standsOtherwise(then.standing, now.standing, toldFrom))
    changes.push({ kind: 'standing', from: then.standing, to: now.standing });
  return changes;
}

/** A case that began or ended meanwhile is no news: the clock did it. */
function standsOtherwise(then: SeenStanding | null, now: SeenStanding | null, toldFrom: number): boolean {
  if (now === null) return false;
  if (then === null) return true;
  if (then.kind !== now.kind) return true;
  if (then.until === null || now.until === null) return then.until !== now.until;
  return Math.abs(Date.parse(then.until) - Date.parse(now.until)) >= toldFrom * 60_000;
}

function orderChanges(seen: readonly SeenCase[], present: readonly SeenCase[], day: string): OrderChange[] {
  const listed = present.filter((one) => !one.cancelled && wallClock(one.startsAt).date === day);
  const theatres = [...new Set(listed.map(({ theatreId }) => theatreId))];
  return theatres.flatMap((theatreId) => {
    const then = inOrder(seen.filter((one) => one.theatreId === theatreId && !one.cancelled));
    const now = inOrder(listed.filter((one) => one.theatreId === theatreId));
    const common = new Set(then.filter(({ id }) => now.some((one) => one.id === id)).map(({ id }) => id));
    const [from, to] = [then, now].map((list) => list.filter(({ id }) => common.has(id)));
    if (!from || !to || from.every(({ id }, at) => to[at]?.id === id)) return [];
    return [
      {
        theatre: to[0]?.theatre ?? '',
        from: from.map(({ reference }) => reference),
        to: to.map(({ reference }) => reference),
        caseIds: to.map(({ id }) => id),
      },
    ];
  });
}

const inOrder = (cases: readonly SeenCase[]) =>
  [...cases].sort((a, b) => a.startsAt.localeCompare(b.startsAt) || a.reference.localeCompare(b.reference));
const slotOf = ({ theatre, startsAt, endsAt }: SeenCase): Slot => ({ theatre, startsAt, endsAt });
const planOf = ({ planVersion, confirmed }: SeenCase): PlanState => ({ planVersion, confirmed });
const sameSlot = (a: SeenCase, b: SeenCase) =>
  a.theatreId === b.theatreId && a.startsAt === b.startsAt && a.endsAt === b.endsAt;

function codesNotIn(some: SeenCase['promised'], others: SeenCase['promised']): string[] {
  return some.filter(({ id }) => !others.some((other) => other.id === id)).map(({ code }) => code);
}

function setsOf(cases: readonly (SeenCase | undefined)[]): CaseChange['sets'] {
  const all = cases.flatMap((one) => (one ? [...one.promised, ...(one.standing?.sets ?? [])] : []));
  return [...new Map(all.map((one) => [one.id, one])).values()];
}
