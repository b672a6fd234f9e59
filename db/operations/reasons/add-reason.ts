import { and, eq, isNull, max } from 'drizzle-orm';
import { type NewId, type ReasonId, reasonId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { newReason } from '@/lib/reasons/reason';
import { reasonsWords as words } from '@/lib/wording/reasons';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { reasonCodes } from '../../schema';

interface AddReason {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  reason: unknown;
}

/** Puts a reason at the end of the hospital's own list. */
export async function addReason(request: AddReason): Promise<Outcome<{ id: ReasonId }, never>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'keepReasons')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = newReason.safeParse(request.reason);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { kind, code, words: said } = parsed.data;
  return db.tx(async (write) => {
    const problems: Problem[] = textProblems(said, ['words']);
    const [taken] = await write
      .select({ id: reasonCodes.id })
      .from(reasonCodes)
      .where(and(eq(reasonCodes.kind, kind), eq(reasonCodes.code, code)));
    if (taken) problems.push({ path: ['code'], code: 'code-taken', message: words.codeTaken(code) });
    const [alike] = await write
      .select({ id: reasonCodes.id })
      .from(reasonCodes)
      .where(and(eq(reasonCodes.kind, kind), eq(reasonCodes.words, said), isNull(reasonCodes.retiredAt)));
    if (alike) problems.push({ path: ['words'], code: 'words-taken', message: words.wordsTaken(said) });
    if (problems.length > 0) return refusedFor(problems);
    const [last] = await write
      .select({ position: max(reasonCodes.position) })
      .from(reasonCodes)
      .where(eq(reasonCodes.kind, kind));
    const id = reasonId.parse(newId('reason'));
    await write
      .insert(reasonCodes)
      .values({ id, kind, code, words: said, position: (last?.position ?? -1) + 1 });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-reason',
      subjectKind: 'reason',
      subjectId: id,
      detail: { kind, code, words: said },
    });
    return { ok: true, value: { id } };
  });
}
