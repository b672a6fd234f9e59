import { and, count, eq, ne } from 'drizzle-orm';
import type { ProcedureId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { procedureChange } from '@/lib/plans/procedure';
import { procedureWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { preferenceCards, procedures } from '../../schema';

interface ChangeProcedure {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  procedureId: ProcedureId;
  /** As sent from outside; parsed here. */
  change: unknown;
}

/** Renames a procedure, takes it off the list for new cards, or puts it back. Cards that are for it keep it. */
export async function changeProcedure(
  request: ChangeProcedure,
): Promise<Outcome<{ revision: number }, never>> {
  const { db, now, person, procedureId } = request;
  if (!may(person, 'keepProcedures')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = procedureChange.safeParse(request.change);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { name, region, inUse, baseRevision } = parsed.data;
  return db.tx(async (write) => {
    const [row] = await write.select().from(procedures).where(eq(procedures.id, procedureId));
    if (!row) return refused('notFound', words.noSuch);
    if (row.revision !== baseRevision) return changedTo(words.changed(row.name), row.revision);
    const problems: Problem[] = textProblems(name, ['name']);
    const [taken] = await write
      .select({ id: procedures.id })
      .from(procedures)
      .where(and(eq(procedures.name, name), ne(procedures.id, procedureId)));
    if (taken) problems.push({ path: ['name'], code: 'name-taken', message: words.taken(name) });
    const [cards] = await write
      .select({ n: count() })
      .from(preferenceCards)
      .where(eq(preferenceCards.procedureId, procedureId));
    const held = cards?.n ?? 0;
    if (region !== row.region && held > 0)
      problems.push({ path: ['region'], code: 'in-use', message: words.inUse(row.name, held) });
    if (problems.length > 0) return refusedFor(problems);
    const revision = row.revision + 1;
    await write
      .update(procedures)
      .set({ name, region, withdrawnAt: inUse ? null : (row.withdrawnAt ?? now), revision })
      .where(and(eq(procedures.id, procedureId), eq(procedures.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-procedure',
      subjectKind: 'procedure',
      subjectId: procedureId,
      detail: {
        from: { name: row.name, region: row.region, inUse: row.withdrawnAt === null },
        to: { name, region, inUse },
      },
    });
    return { ok: true, value: { revision } };
  });
}
