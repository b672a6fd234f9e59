import { eq, inArray } from 'drizzle-orm';
import type { CaseId, NewId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { isListChange } from '@/lib/theatre/planning/listChanges';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, ledger, setPromises, sets } from '../../schema';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from './promises';

interface KeepPlan {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** The sets of every case that was planned for, those it keeps included. */
  plan: ReadonlyMap<CaseId, readonly SetId[]>;
  /** The promises the plan was made from, by id. */
  madeFrom: ReadonlySet<string>;
  /** When each case was as the plan was worked out, by id, where somebody looked at the plan meanwhile. */
  seenAt?: ReadonlyMap<string, { startsAt: string; endsAt: string }>;
  round: RoundTimes;
  /**
   * The number in the ledger of the act that this follows from: who changes the list changes who gets which set, so that act,
   * if it is this person's own, is permission enough. Left out where somebody asks for the plan itself.
   */
  follows?: number;
}

/** What planning changed: which case got which set, and which it no longer has. */
export interface PlanKept {
  given: { caseId: string; setId: string }[];
  taken: { caseId: string; setId: string }[];
}

/**
 * Makes the promises of a plan, all or none. What a person promised stays; of what planning promised before, what the plan
 * does not have ends. Refused where promises were made or ended since the plan was worked out: it is made anew then.
 */
export async function keepPlan(request: KeepPlan): Promise<Outcome<PlanKept, never>> {
  const { db, now, person, plan, madeFrom, follows } = request;
  const mayAsk = may(person, 'promiseSets') || may(person, 'keepTheatreList');
  return db
    .tx(async (write) => {
      const from = follows === undefined ? null : await actOf(write, follows, person);
      if (from === null && (follows !== undefined || !mayAsk))
        return refused('notPermitted', words.mayNotPromise(person.name));
      const ids = [...plan.keys()];
      const kept = await write.select().from(setPromises).where(inArray(setPromises.caseId, ids));
      const all = await write.select({ id: setPromises.id }).from(setPromises);
      if (all.length !== madeFrom.size || all.some(({ id }) => !madeFrom.has(id)))
        return refused('conflict', words.planOvertaken);
      if (request.seenAt && !(await unmoved(write, request.seenAt)))
        return refused('conflict', words.planOvertaken);
      const wanted = (caseId: string, setId: string) =>
        plan.get(caseId as CaseId)?.includes(setId as SetId) ?? false;
      const ended = kept.filter(
        ({ caseId, setId, chosenBy }) => chosenBy === 'planning' && !wanted(caseId, setId),
      );
      if (ended.length > 0)
        await write.delete(setPromises).where(
          inArray(
            setPromises.id,
            ended.map(({ id }) => id),
          ),
        );
      const has = new Set(kept.map(({ caseId, setId }) => `${caseId} ${setId}`));
      const given: PlanKept['given'] = [];
      for (const [caseId, setIds] of plan)
        for (const setId of setIds) {
          if (has.has(`${caseId} ${setId}`)) continue;
          if (!(await give(write, request, caseId, setId))) throw new Overtaken();
          given.push({ caseId, setId });
        }
      const taken = ended.map(({ caseId, setId }) => ({ caseId, setId }));
      for (const caseId of new Set([...given, ...taken].map((one) => one.caseId))) {
        const setsOf = (list: PlanKept['given']) =>
          list.filter((one) => one.caseId === caseId).map(({ setId }) => setId);
        await appendLedger(write, {
          doneAt: now,
          enteredAt: now,
          personId: person.id,
          action: 'plan-sets',
          subjectKind: 'case',
          subjectId: caseId,
          detail: {
            given: setsOf(given),
            taken: setsOf(taken),
            ...(from === null ? {} : { follows: from }),
          },
        });
      }
      return { ok: true as const, value: { given, taken } };
    })
    .catch((error: unknown) => {
      if (error instanceof Overtaken) return refused('conflict', words.planOvertaken);
      throw error;
    });
}

/** Whether these cases are when they were, all of them, and none is cancelled. */
async function unmoved(write: Queries, seenAt: NonNullable<KeepPlan['seenAt']>): Promise<boolean> {
  const rows = await write
    .select()
    .from(cases)
    .where(inArray(cases.id, [...seenAt.keys()]));
  return (
    rows.length === seenAt.size &&
    rows.every(({ id, startsAt, endsAt, cancelledAt }) => {
      const seen = seenAt.get(id);
      return cancelledAt === null && seen?.startsAt === startsAt && seen.endsAt === endsAt;
    })
  );
}

/** The act that planning follows from, where it is this person's and of a kind that planning follows. */
async function actOf(
  write: Queries,
  seq: number,
  person: Person,
): Promise<{ entry: number; action: string } | null> {
  const [entry] = await write.select().from(ledger).where(eq(ledger.seq, seq));
  if (!entry || entry.personId !== person.id || !isListChange(entry.action)) return null;
  return { entry: seq, action: entry.action };
}

async function give(write: Queries, request: KeepPlan, caseId: CaseId, setId: SetId): Promise<boolean> {
  const { person, now, newId, round } = request;
  const [[booked], [set]] = await Promise.all([
    write.select().from(cases).where(eq(cases.id, caseId)),
    write.select({ withdrawnAt: sets.withdrawnAt }).from(sets).where(eq(sets.id, setId)),
  ]);
  if (!booked || booked.cancelledAt !== null || !set || set.withdrawnAt !== null) return false;
  const times = await timesFor(write, booked, setId, round);
  if (await rivalFor(write, setId, times, caseId)) return false;
  await keepPromise(write, { setId, caseId, times, chosenBy: 'planning', personId: person.id, now, newId });
  return true;
}

/** Found in the middle of writing that the plan no longer holds: everything written of it is taken back. */
class Overtaken extends Error {}
