import { and, eq } from 'drizzle-orm';
import { failed, ok, type Result } from '@/lib/identity/result';
import { type Act, may } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { fitExceptions, fitRules } from '../schema';

/**
 * The life that fit rules and named exceptions share: drafted by one person, approved by another, in force
 * from a date, withdrawn by two. The verb-noun files beside this one are its doors.
 */
export type Kept = 'fit-rule' | 'fit-exception';

/** What every one of these operations is given. `now` is an ISO instant, `today` the local date. */
export interface FitRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  today: PlainDate;
  person: Person;
  id: string;
}

export const problem = (code: string, message: string, path: (string | number)[] = []) =>
  failed({ path, code, message });

const WORD: Record<Kept, string> = { 'fit-rule': 'rule', 'fit-exception': 'exception' };

/** Both tables have the same lifecycle columns, and only those are touched through this. */
const tableOf = (kept: Kept) => (kept === 'fit-rule' ? fitRules : fitExceptions) as typeof fitRules;

export function refuseUnlessMay(
  person: Person,
  act: Act,
  doing: string,
): { ok: false; problems: ReturnType<typeof problem>['problems'] } | null {
  if (may(person.role, act)) return null;
  return problem(
    'not-permitted',
    `${person.name} (${ROLE_WORDS[person.role]}) may not ${doing}: ask a theatre manager, a decontamination lead or an administrator`,
  );
}

async function found(write: Queries, kept: Kept, id: string) {
  const [row] = await write
    .select()
    .from(tableOf(kept))
    .where(eq(tableOf(kept).id, id));
  return row ?? null;
}

const gone = (kept: Kept) =>
  problem(
    'not-found',
    `there is no such ${WORD[kept]} any more: it may have been discarded; go back to the list`,
  );

/** Puts a draft in force from a day, and ends the version it replaces on that day. `replaces` finds that one. */
export async function approve(
  kept: Kept,
  request: FitRequest & { from: PlainDate },
  replaces: (write: Queries, id: string) => Promise<{ id: string; inForceFrom: string | null }[]>,
): Promise<Result<{ from: PlainDate }>> {
  const { db, now, today, person, id, from } = request;
  const refused = refuseUnlessMay(person, 'approveFitRule', `approve a ${WORD[kept]}`);
  if (refused) return refused;
  if (from < today)
    return problem('in-the-past', `it can be in force from today, ${today}, at the earliest`, ['from']);
  return db.tx(async (write) => {
    const row = await found(write, kept, id);
    if (!row) return gone(kept);
    if (row.status !== 'draft')
      return problem('not-a-draft', 'it was approved already; reload to see by whom');
    if (row.draftedBy === null || row.draftedBy === person.id) {
      return problem('same-person', `${person.name} drafted it: a second person has to approve`);
    }
    const table = tableOf(kept);
    const before = await replaces(write, id);
    for (const one of before) {
      if (one.inForceFrom !== null && one.inForceFrom > from) {
        return problem(
          'too-early',
          `the version before it begins on ${one.inForceFrom}: choose that day or a later one`,
          ['from'],
        );
      }
      const ended = from <= today ? ({ status: 'withdrawn' } as const) : {};
      await write
        .update(table)
        .set({ inForceUntil: from, ...ended })
        .where(eq(table.id, one.id));
    }
    await write
      .update(table)
      .set({ status: 'inForce', approvedBy: person.id, inForceFrom: from })
      .where(and(eq(table.id, id), eq(table.status, 'draft')));
    await record(write, kept, {
      now,
      person,
      id,
      action: `approve-${kept}`,
      detail: { from, replaces: before.map((one) => one.id) },
    });
    return ok({ from });
  });
}

/** Throws a draft away. Anyone who may draft may; the ledger keeps that it was. */
export async function discardDraft(kept: Kept, { db, now, person, id }: FitRequest): Promise<Result<null>> {
  const refused = refuseUnlessMay(person, 'draftFitRule', `discard a ${WORD[kept]}`);
  if (refused) return refused;
  return db.tx(async (write) => {
    const row = await found(write, kept, id);
    if (!row) return gone(kept);
    if (row.status !== 'draft') return problem('not-a-draft', 'it is in force, so it can only be withdrawn');
    await write.delete(tableOf(kept)).where(eq(tableOf(kept).id, id));
    await record(write, kept, { now, person, id, action: `discard-${kept}`, detail: { draft: row } });
    return ok(null);
  });
}

/** The first of the two steps of a withdrawal: one person asks. */
export async function askWithdrawal(
  kept: Kept,
  request: FitRequest & { because: string },
): Promise<Result<null>> {
  const { db, now, today, person, id, because } = request;
  const refused = refuseUnlessMay(person, 'draftFitRule', `ask for a ${WORD[kept]} to be withdrawn`);
  if (refused) return refused;
  if (because.trim().length < 8)
    return problem('no-reason', 'say why it should be withdrawn, in a few words', ['because']);
  if (because.length > 300) return problem('too-long', 'at most 300 characters', ['because']);
  return db.tx(async (write) => {
    const row = await found(write, kept, id);
    if (!row) return gone(kept);
    if (row.status !== 'inForce' || (row.inForceUntil !== null && row.inForceUntil <= today)) {
      return problem('not-in-force', 'it is not in force, so there is nothing to withdraw');
    }
    if (row.inForceUntil !== null) return problem('ends-already', `it ends on ${row.inForceUntil} already`);
    if (row.withdrawalAskedBy !== null)
      return problem('asked-already', 'its withdrawal was asked for already');
    await write
      .update(tableOf(kept))
      .set({ withdrawalAskedBy: person.id })
      .where(eq(tableOf(kept).id, id));
    await record(write, kept, {
      now,
      person,
      id,
      action: `ask-withdrawal-of-${kept}`,
      detail: { because: because.trim() },
    });
    return ok(null);
  });
}

/** The second step: another person agrees, and it ends on `until`, the first day it no longer holds. */
export async function withdraw(
  kept: Kept,
  request: FitRequest & { until: PlainDate },
): Promise<Result<{ until: PlainDate }>> {
  const { db, now, today, person, id, until } = request;
  const refused = refuseUnlessMay(person, 'approveFitRule', `withdraw a ${WORD[kept]}`);
  if (refused) return refused;
  if (until < today) return problem('in-the-past', `it can end today, ${today}, at the earliest`, ['until']);
  return db.tx(async (write) => {
    const row = await found(write, kept, id);
    if (!row) return gone(kept);
    if (row.status !== 'inForce' || row.withdrawalAskedBy === null || row.withdrawnBy !== null) {
      return problem('not-asked', 'nobody has asked for it to be withdrawn, or it was withdrawn meanwhile');
    }
    if (row.withdrawalAskedBy === person.id) {
      return problem('same-person', `${person.name} asked for it: a second person has to agree`);
    }
    const ended = until <= today ? ({ status: 'withdrawn' } as const) : {};
    await write
      .update(tableOf(kept))
      .set({ withdrawnBy: person.id, inForceUntil: until, ...ended })
      .where(eq(tableOf(kept).id, id));
    await record(write, kept, { now, person, id, action: `withdraw-${kept}`, detail: { until } });
    return ok({ until });
  });
}

/** Turns a withdrawal down, or takes the asking back: it stays in force. */
export async function keep(kept: Kept, { db, now, person, id }: FitRequest): Promise<Result<null>> {
  const refused = refuseUnlessMay(person, 'draftFitRule', `decide on a ${WORD[kept]}`);
  if (refused) return refused;
  return db.tx(async (write) => {
    const row = await found(write, kept, id);
    if (!row) return gone(kept);
    if (row.withdrawalAskedBy === null || row.withdrawnBy !== null) {
      return problem('not-asked', 'nobody has asked for it to be withdrawn, or it was withdrawn meanwhile');
    }
    await write
      .update(tableOf(kept))
      .set({ withdrawalAskedBy: null })
      .where(eq(tableOf(kept).id, id));
    await record(write, kept, {
      now,
      person,
      id,
      action: `keep-${kept}`,
      detail: { askedBy: row.withdrawalAskedBy },
    });
    return ok(null);
  });
}

export async function record(
  write: Queries,
  kept: Kept,
  entry: { now: string; person: Person; id: string; action: string; detail: Record<string, unknown> },
): Promise<void> {
  await appendLedger(write, {
    doneAt: entry.now,
    enteredAt: entry.now,
    personId: entry.person.id,
    action: entry.action,
    subjectKind: kept,
    subjectId: entry.id,
    detail: entry.detail,
  });
}
