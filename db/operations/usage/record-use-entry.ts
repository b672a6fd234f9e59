import { eq } from 'drizzle-orm';
import type { CaseId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import { type Act, may } from '@/lib/people/permissions';
import { type SentUseEntry, sentUseEntry, type UseAct } from '@/lib/usage/act';
import { usageWords as words } from '@/lib/wording/usage';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { type TableFacts, tableFacts } from '../../queries/usage/tableFacts';
import { caseUses, useEntries } from '../../schema';
import { correctUse } from './correct-use';
import { entryProblems } from './entry-problems';

interface RecordUseEntry {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  sessionId: string | null;
  caseId: CaseId;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Makes one entry of a record of use durable; sent again it is answered as before. What is not to be opened is refused once,
 * and taken where whoever enters it says that it was opened all the same: the truth is recorded. After the record is closed
 * an entry corrects it, with the reason, and its moves follow at once.
 */
export async function recordUseEntry(
  request: RecordUseEntry,
): Promise<Outcome<{ id: string; enteredAt: string }, never>> {
  const { db, now, newId, person, sessionId, caseId } = request;
  const parsed = sentUseEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const before = await enteredBefore(write, entry, caseId, person);
    if (before) return before;
    const facts = await tableFacts(write, caseId);
    if (!facts) return refused('notFound', words.noSuchCase);
    const closed = facts.use?.closedAt != null;
    const [act, what] = neededFor(entry.act, closed);
    if (!may(person, act)) return refused('notPermitted', words.mayNot(person.name, what));
    // a case may be delayed because nothing came
    if (entry.act.kind !== 'delay' && facts.sets.length === 0 && facts.packs.length === 0 && !facts.use)
      return refused('frozen', words.nothingThere(facts.booked.reference));
    const problems = await entryProblems(write, facts, entry.act, closed);
    if (problems.length > 0) return refusedFor(problems);
    if (!facts.use) await write.insert(caseUses).values({ caseId, beganBy: person.id, beganAt: now });
    // a browser's clock may be fast: nothing was done later than it was entered
    const doneAt = Date.parse(entry.doneAt) > Date.parse(now) ? now : entry.doneAt;
    await write.insert(useEntries).values({
      id: entry.id,
      caseId,
      act: entry.act,
      packId: packOf(facts, entry.act),
      personId: person.id,
      sessionId,
      scanId: entry.scanId,
      doneAt,
      enteredAt: now,
    });
    if (closed) await correctUse(write, { facts, entry: { ...entry, doneAt }, person, now, newId });
    await appendLedger(write, {
      doneAt,
      enteredAt: now,
      personId: person.id,
      action: entry.act.kind === 'delay' ? 'record-delay' : closed ? 'correct-use' : 'record-use',
      subjectKind: 'case',
      subjectId: caseId,
      detail: { entryId: entry.id, act: entry.act },
    });
    return { ok: true, value: { id: entry.id, enteredAt: now } };
  });
}

/** Who may say it: a delay is told by others too than those who record use. */
function neededFor({ kind }: UseAct, closed: boolean): [act: Act, what: string] {
  if (kind === 'delay') return ['recordDelay', 'record a delay'];
  return closed ? ['correctUse', 'correct a record of use'] : ['recordUse', 'record use'];
}

async function enteredBefore(
  write: Queries,
  entry: SentUseEntry,
  caseId: string,
  person: Person,
): Promise<Outcome<{ id: string; enteredAt: string }, never> | null> {
  const [before] = await write.select().from(useEntries).where(eq(useEntries.id, entry.id));
  if (!before) return null;
  const same =
    before.caseId === caseId &&
    before.personId === person.id &&
    canonicalJson(before.act) === canonicalJson(entry.act);
  return same
    ? { ok: true, value: { id: entry.id, enteredAt: before.enteredAt } }
    : refused('conflict', words.idTaken);
}

/** The sterile pack a piece was in. */
function packOf(facts: TableFacts, act: UseAct): string | null {
  if (act.kind !== 'piece') return null;
  const { source } = act;
  return source.kind === 'slot'
    ? (facts.sets.find(({ id }) => id === source.setId)?.packId ?? null)
    : (facts.packs.find(({ pickId }) => pickId === source.pickId)?.packId ?? null);
}
