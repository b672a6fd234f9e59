import { and, eq, isNull } from 'drizzle-orm';
import { failed, ok, type Result } from '@/lib/identity/result';
import { type Attestation, attests } from '@/lib/people/attestation';
import { type Act, may } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { changeWords } from '@/lib/wording/changes';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { exceptionFromRow, ruleFromRow } from '../mappers/fitRule';
import { contentDigestOf, fitBasisDigest } from '../queries/changes/fitDigests';
import type { Person } from '../queries/people';
import { fitExceptions, fitRules } from '../schema';
import { trialSeen } from './changes/trial-seen';

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

/** What a second person's agreement needs besides: that they proved who they are, and the trial they were shown. */
export interface Agreed {
  attestation: Attestation;
  trialId: string;
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
  if (may(person, act)) return null;
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

/** Whether the second person proved who they are and saw what the change does; answers what the ledger keeps of both. */
async function agreedBy(
  write: Queries,
  kept: Kept,
  { now, today, person, id, attestation, trialId }: FitRequest & Agreed,
  change: 'putInForce' | 'withdraw',
): Promise<Result<Record<string, unknown>>> {
  if (!attests(attestation, person.id, 'iApprove', now)) return problem('not-proven', changeWords.notProven);
  const row = await found(write, kept, id);
  if (!row) return gone(kept);
  const subject = kept === 'fit-rule' ? ruleFromRow(row) : exceptionFromRow(row as never);
  const seen = await trialSeen(write, {
    trialId,
    subject: { kind: kept, id, change },
    person,
    contentDigest: contentDigestOf(subject),
    basisDigest: await fitBasisDigest(write, today),
    now,
  });
  if (!seen.ok) return failed(seen.problem);
  const { meaning, method, at } = attestation;
  return ok({ trial: seen.seen, attested: { meaning, method, at } });
}

/** Puts a draft in force from a day, and ends the version it replaces on that day. `replaces` finds that one. */
export async function approve(
  kept: Kept,
  request: FitRequest & Agreed & { from: PlainDate },
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
    const agreed = await agreedBy(write, kept, request, 'putInForce');
    if (!agreed.ok) return agreed;
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
      detail: { from, replaces: before.map((one) => one.id), ...agreed.value },
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

/**
 * The second step: another person agrees, and it ends on `until`, the first day it no longer holds. One that never begins
 * gives its place back to the version it would have replaced, so that no day is left without either.
 */
export async function withdraw(
  kept: Kept,
  request: FitRequest & Agreed & { until: PlainDate },
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
    const agreed = await agreedBy(write, kept, request, 'withdraw');
    if (!agreed.ok) return agreed;
    const table = tableOf(kept);
    const neverBegins = row.inForceFrom !== null && row.inForceFrom > today && until <= row.inForceFrom;
    const ended = until <= today || neverBegins ? ({ status: 'withdrawn' } as const) : {};
    await write
      .update(table)
      .set({ withdrawnBy: person.id, inForceUntil: until, ...ended })
      .where(eq(table.id, id));
    const goesOn = neverBegins ? await giveBack(write, kept, row) : [];
    const detail = { until, ...(neverBegins ? { goesOn } : {}), ...agreed.value };
    await record(write, kept, { now, person, id, action: `withdraw-${kept}`, detail });
    return ok({ until });
  });
}

/** Lets what was to end on the day this one would have begun go on. */
async function giveBack(
  write: Queries,
  kept: Kept,
  row: NonNullable<Awaited<ReturnType<typeof found>>>,
): Promise<string[]> {
  const table = tableOf(kept);
  const ending = await write
    .select()
    .from(table)
    .where(
      and(
        eq(table.status, 'inForce'),
        eq(table.inForceUntil, row.inForceFrom ?? ''),
        isNull(table.withdrawnBy),
      ),
    );
  const ids = ending.filter((one) => sameThing(kept, one, row)).map(({ id }) => id);
  for (const id of ids) await write.update(table).set({ inForceUntil: null }).where(eq(table.id, id));
  return ids;
}

/** Versions of one rule; exceptions for one pair, in either order. */
function sameThing(kept: Kept, a: unknown, b: unknown): boolean {
  if (kept === 'fit-rule') return (a as { code: string }).code === (b as { code: string }).code;
  const pair = (one: unknown) => {
    const { relation, firstItemId, secondItemId } = exceptionFromRow(one as never);
    return [relation, ...[firstItemId, secondItemId].sort()].join();
  };
  return pair(a) === pair(b);
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
