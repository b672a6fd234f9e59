import { and, eq, inArray, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { caseId, type DecisionId, decisionId, type ItemId, setId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import type { Attestation } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { plainDate } from '@/lib/quantities/plainDate';
import { type Approver, shortAsk, shortLinesOf } from '@/lib/sets/short/ask';
import { type Approving, checkDecision } from '@/lib/sets/short/checkDecision';
import { type Approval, lapsesOf, notCovered } from '@/lib/sets/short/decision';
import { checkStandIns, standIn } from '@/lib/sets/short/standIns';
import { shortWords as words } from '@/lib/wording/short';
import { turnWords } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { type Person, personFromRow } from '../../queries/people';
import { namedCase, presentDecisions } from '../../queries/short/decisions';
import { shortFacts } from '../../queries/short/facts';
import { cases, items, people, sets, shortDecisions } from '../../schema';
import { sweepLapsed } from './sweep-lapsed';

/** What is sent to decide; whoever stands for it proves it apart. */
export const shortDecisionEntry = z.strictObject({
  /** Made where it is entered, so that the same decision sent twice is taken once. */
  id: decisionId,
  setId,
  baseRevision: z.number('the revision you saw').int().positive(),
  reason: z.string().max(4000),
  caseId: caseId.nullable(),
  substitutes: z.array(standIn).max(200),
});

interface DecideShort {
  db: Pick<Database, 'tx'>;
  now: string;
  /** Who sends it; those who stand for it are in `approvals`. */
  person: Person;
  /** As sent from outside; parsed here against `shortDecisionEntry`. */
  entry: unknown;
  approvals: readonly { as: Approver; attestation: Attestation }[];
}

/**
 * Lets a short set go: with named substitutes where class 2 is short, and for one named case where class 1 is. Each person
 * the table asks for has proven who they are and said "I send it short". It lapses with its case; nothing here packs it.
 */
export async function decideShort(
  request: DecideShort,
): Promise<Outcome<{ id: DecisionId; revision: number }, { revision: number }>> {
  const { db, now, person } = request;
  const mine = ['packSet', 'sendWithSubstitute', 'sendShortAsTheatreLead', 'sendShortAsSurgeon'] as const;
  if (!mine.some((act) => may(person, act)))
    return refused('notPermitted', words.notPermitted(person.name, 'send a set short'));
  const parsed = shortDecisionEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, entry.setId));
    if (!set) return refused('notFound', words.noSuchSet);
    const [known] = await write.select().from(shortDecisions).where(eq(shortDecisions.id, entry.id));
    if (known) {
      return known.setId === set.id
        ? { ok: true, value: { id: entry.id, revision: set.revision } }
        : refused('conflict', turnWords.changed(set.code), { revision: set.revision });
    }
    if (set.revision !== entry.baseRevision)
      return refused('conflict', turnWords.changed(set.code), { revision: set.revision });
    if (set.step !== 'shortAwaitingDecision' || set.turnId === null)
      return refused('frozen', words.notWaiting(set.code));
    await sweepLapsed(write, now);
    const booked = await caseOf(write, entry.caseId);
    const facts = await shortFacts(
      write,
      set,
      now,
      booked ? plainDate.parse(booked.row.caseDate) : undefined,
    );
    const ask = shortAsk(facts);
    if (ask.asks === 'nothing') return refused('frozen', words.nothingShort(set.code));
    if (ask.asks === 'technician') return refused('frozen', words.technicianMay(set.code));
    if (ask.asks === 'nobody') return refused('frozen', words.neverGoes(set.code));
    const before = (await presentDecisions(write, set.id)).get(entry.setId);
    if (
      before &&
      lapsesOf(before.decision, before.named, now).length === 0 &&
      notCovered(before.decision, ask, facts.lines, facts.pouches).length === 0
    )
      return refused('frozen', words.decidedAlready(set.code));
    const approvals = await withPeople(write, request.approvals);
    const names = await namesOf(write, [
      ...facts.lines.map(({ itemId }) => itemId),
      ...entry.substitutes.map(({ itemId }) => itemId),
    ]);
    const problems = [
      ...checkDecision({
        ask,
        reason: entry.reason,
        approvals,
        caseNamed: entry.caseId !== null,
        named: booked ? namedCase(booked.row) : null,
        surgeonName: booked?.surgeon ?? null,
        now,
      }),
      ...checkStandIns(entry.substitutes, facts.lines, facts.pouches, (id) => names.get(id) ?? id),
    ];
    if (problems.length > 0) return refusedFor(problems);
    // what was decided before in this turn stands for nothing any more
    await write
      .update(shortDecisions)
      .set({ lapsedAt: now })
      .where(
        and(
          eq(shortDecisions.setId, set.id),
          eq(shortDecisions.turnId, set.turnId),
          isNull(shortDecisions.lapsedAt),
        ),
      );
    const stood = approvals.map(({ as, attestation, person: who }): Approval => {
      return {
        as,
        personId: attestation.personId,
        name: who?.name ?? attestation.personId,
        method: attestation.method,
        at: attestation.at,
      };
    });
    const lines = shortLinesOf(ask.findings);
    const kind = ask.oneCase ? 'oneCase' : 'withSubstitute';
    await write.insert(shortDecisions).values({
      id: entry.id,
      setId: set.id,
      turnId: set.turnId,
      kind,
      lines,
      substitutes: entry.substitutes,
      reason: entry.reason.trim(),
      caseId: booked?.row.id ?? null,
      approvals: stood,
      decidedAt: now,
      lapsesAt: booked?.row.endsAt ?? null,
      lapsedAt: null,
    });
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'send-short',
      subjectKind: 'set',
      subjectId: set.id,
      detail: {
        decisionId: entry.id,
        turnId: set.turnId,
        kind,
        lines,
        substitutes: entry.substitutes,
        reason: entry.reason.trim(),
        caseId: booked?.row.id ?? null,
        lapsesAt: booked?.row.endsAt ?? null,
        attested: approvals.map(({ as, attestation }) => ({
          as,
          personId: attestation.personId,
          meaning: attestation.meaning,
          method: attestation.method,
          at: attestation.at,
        })),
        revision,
      },
    });
    return { ok: true, value: { id: entry.id, revision } };
  });
}

async function caseOf(write: Queries, id: string | null) {
  if (id === null) return null;
  const [found] = await write
    .select({ row: cases, surgeon: people.name })
    .from(cases)
    .leftJoin(people, eq(people.id, cases.surgeonId))
    .where(eq(cases.id, id));
  return found ?? null;
}

async function withPeople(write: Queries, given: DecideShort['approvals']): Promise<Approving[]> {
  const ids = given.map(({ attestation }) => attestation.personId);
  const rows =
    ids.length === 0
      ? []
      : await write
          .select()
          .from(people)
          .where(and(inArray(people.id, ids), isNull(people.leftAt)));
  return given.map(({ as, attestation }) => {
    const row = rows.find(({ id }) => id === attestation.personId);
    return { as, attestation, person: row ? personFromRow(row) : null };
  });
}

async function namesOf(write: Queries, ids: readonly ItemId[]): Promise<ReadonlyMap<string, string>> {
  const rows = await write
    .select({ id: items.id, name: items.name })
    .from(items)
    .where(inArray(items.id, [...new Set(ids)]));
  return new Map(rows.map(({ id, name }) => [id, name]));
}
