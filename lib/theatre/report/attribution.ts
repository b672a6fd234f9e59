import type { CaseChange, DayChanges, OrderChange, WhatChanged } from './changes';

/** An entry of the ledger as far as it says who changed a case, or a set, and why. */
export interface ListEntry {
  seq: number;
  at: string;
  /** `null`: the program. */
  by: string | null;
  action: string;
  why: string | null;
  /** Ids of the cases and sets that it names. */
  things: readonly string[];
}

/** Who did it, when and why. */
export type Attribution = Pick<ListEntry, 'at' | 'by' | 'action' | 'why'> & {
  /** The set it was done to; `null` where it was done to the case itself. */
  setCode: string | null;
};

export interface AttributedChanges {
  cases: (CaseChange & { by: Attribution | null })[];
  orders: (OrderChange & { by: Attribution | null })[];
}

/** The acts that make a change of that kind. How a case stands follows from many, so the newest of any is named. */
const ACTS: Record<WhatChanged['kind'], readonly string[] | null> = {
  added: ['book-case', 'move-case', 'put-case-back'],
  cancelled: ['cancel-case'],
  putBack: ['put-case-back'],
  leftDay: ['move-case'],
  moved: ['move-case'],
  plan: ['confirm-plan', 'begin-plan', 'begin-plan-version', 'save-plan-draft', 'discard-plan-draft'],
  promises: ['promise-set', 'free-set', 'plan-sets', 'move-case', 'withdraw-set'],
  standing: null,
};

/**
 * Each change with the newest entry that can have made it; `null` where the ledger has none: time alone changes how a case
 * stands.
 *
 * @param entries those made since the day was seen
 */
export function attributed(changes: DayChanges, entries: readonly ListEntry[]): AttributedChanges {
  const newest = [...entries].sort((a, b) => b.seq - a.seq);
  return {
    cases: changes.cases.map((change) => ({ ...change, by: entryOf(change, newest) })),
    orders: changes.orders.map((change) => ({
      ...change,
      by: said(
        newest.find(
          ({ action, things }) =>
            action === 'move-case' && change.caseIds.some((caseId) => things.includes(caseId)),
        ),
        null,
      ),
    })),
  };
}

function entryOf({ caseId, what, sets }: CaseChange, newest: readonly ListEntry[]): Attribution | null {
  const acts = ACTS[what.kind];
  const ofCase = newest.filter(
    ({ action, things }) => things.includes(caseId) && (acts === null || acts.includes(action)),
  );
  if (acts !== null) {
    // booked and moved since: it is the booking that put it here
    const booked = ofCase.find(({ action }) => action === 'book-case');
    return said(booked ?? ofCase[0], null);
  }
  const ofSet = newest.find(({ things }) => sets.some(({ id }) => things.includes(id)));
  const latest = [ofCase[0], ofSet].filter((one) => one !== undefined).sort((a, b) => b.seq - a.seq)[0];
  if (latest === undefined) return null;
  const set = latest.things.includes(caseId) ? undefined : sets.find(({ id }) => latest.things.includes(id));
  return said(latest, set?.code ?? null);
}

function said(entry: ListEntry | undefined, setCode: string | null): Attribution | null {
  if (entry === undefined) return null;
  const { at, by, action, why } = entry;
  return { at, by, action, why, setCode };
}
