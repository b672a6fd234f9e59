import { and, eq } from 'drizzle-orm';
import { z } from 'zod';
import { type NewId, type StartId, startId } from '@/lib/identity/ids';
import { failed, ok, problemsFromZod, type Result } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { checkConstruct, textProblems } from '@/lib/plans/checkConstruct';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { planStarts } from '../../schema';

export const startName = z
  .string()
  .trim()
  .min(1, 'give it a name')
  .max(120, 'a name of at most 120 characters');

interface SavePlanStart {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  name: unknown;
  construct: unknown;
}

/**
 * Keeps a construct as one person's starting point, under a name of its own. The note stays behind, since it was
 * written for one case; the side too, so that the start serves both.
 */
export async function savePlanStart(request: SavePlanStart): Promise<Result<{ id: StartId }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'writePlan')) {
    return failed({
      path: [],
      code: 'not-permitted',
      message: `${person.name} can’t keep starts for plans.`,
    });
  }
  const name = startName.safeParse(request.name);
  const body = checkConstruct(request.construct, true);
  const problems = [
    ...(name.success
      ? textProblems(name.data, ['name'])
      : problemsFromZod(name.error).map((one) => ({ ...one, path: ['name'] }))),
    ...(body.ok ? [] : body.problems.map((one) => ({ ...one, path: ['construct', ...one.path] }))),
  ];
  if (problems.length > 0 || !name.success || !body.ok) return failed(...problems);
  return db.tx(async (write) => {
    const [same] = await write
      .select({ id: planStarts.id })
      .from(planStarts)
      .where(and(eq(planStarts.personId, person.id), eq(planStarts.name, name.data)));
    if (same) {
      const message = `You have a start called “${name.data}” already: give this one another name.`;
      return failed({ path: ['name'], code: 'name-taken', message });
    }
    const id = startId.parse(newId('start'));
    const kept = { ...body.value, note: null, limb: null };
    await write
      .insert(planStarts)
      .values({ id, personId: person.id, name: name.data, body: kept, savedAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-plan-start',
      subjectKind: 'start',
      subjectId: id,
      detail: { name: name.data },
    });
    return ok({ id });
  });
}
