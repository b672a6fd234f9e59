import { eq } from 'drizzle-orm';
import { type NewId, type ProcedureId, procedureId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { newProcedure } from '@/lib/plans/procedure';
import { procedureWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { procedures } from '../../schema';

interface AddProcedure {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  procedure: unknown;
}

/** Puts a procedure on the hospital's own list. */
export async function addProcedure(request: AddProcedure): Promise<Outcome<{ id: ProcedureId }, never>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'keepProcedures')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = newProcedure.safeParse(request.procedure);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { name, region } = parsed.data;
  const warned = textProblems(name, ['name']);
  if (warned.length > 0) return refusedFor(warned);
  return db.tx(async (write) => {
    const [taken] = await write.select().from(procedures).where(eq(procedures.name, name));
    if (taken) return refusedFor([{ path: ['name'], code: 'name-taken', message: words.taken(name) }]);
    const id = procedureId.parse(newId('procedure'));
    await write.insert(procedures).values({ id, name, region });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-procedure',
      subjectKind: 'procedure',
      subjectId: id,
      detail: { name, region },
    });
    return { ok: true, value: { id } };
  });
}
