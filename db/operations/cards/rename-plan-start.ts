import { and, eq, ne } from 'drizzle-orm';
import type { StartId } from '@/lib/identity/ids';
import { failed, ok, problemsFromZod, type Result } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { planStarts } from '../../schema';
import { startName } from './save-plan-start';

interface RenamePlanStart {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  startId: StartId;
  name: unknown;
}

/** Gives one's own start another name. */
export async function renamePlanStart(request: RenamePlanStart): Promise<Result<null>> {
  const { db, now, person, startId } = request;
  const name = startName.safeParse(request.name);
  if (!name.success) return failed(...problemsFromZod(name.error).map((one) => ({ ...one, path: ['name'] })));
  const warned = textProblems(name.data, ['name']);
  if (warned.length > 0) return failed(...warned);
  return db.tx(async (write) => {
    const [same] = await write
      .select({ id: planStarts.id })
      .from(planStarts)
      .where(
        and(eq(planStarts.personId, person.id), eq(planStarts.name, name.data), ne(planStarts.id, startId)),
      );
    if (same) {
      const message = `You have a start called “${name.data}” already: give this one another name.`;
      return failed({ path: ['name'], code: 'name-taken', message });
    }
    const [renamed] = await write
      .update(planStarts)
      .set({ name: name.data })
      .where(and(eq(planStarts.id, startId), eq(planStarts.personId, person.id)))
      .returning({ id: planStarts.id });
    if (!renamed) {
      return failed({
        path: [],
        code: 'start-unknown',
        message: 'You have no such start; it may have been deleted.',
      });
    }
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'rename-plan-start',
      subjectKind: 'start',
      subjectId: startId,
      detail: { name: name.data },
    });
    return ok(null);
  });
}
