import { inArray } from 'drizzle-orm';
import { parseExceptionDraft } from '@/lib/fit/draft';
import type { FitException } from '@/lib/fit/rule';
import type { NewId } from '@/lib/identity/ids';
import { ok, type Problem, type Result } from '@/lib/identity/result';
import type { Database } from '../client';
import { exceptionFromRow } from '../mappers/fitRule';
import type { Person } from '../queries/people';
import { fitExceptions, items } from '../schema';
import { record, refuseUnlessMay } from './fit-lifecycle';

interface DraftFitException {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** What was entered, unread. */
  draft: unknown;
}

/** Drafts a named exception for a pair of designs. Nothing is in force until a second person approves. */
export async function draftFitException(request: DraftFitException): Promise<Result<FitException>> {
  const { db, now, newId, person } = request;
  const refused = refuseUnlessMay(person, 'draftFitRule', 'draft an exception');
  if (refused) return refused;
  const parsed = parseExceptionDraft(request.draft);
  if (!parsed.ok) return parsed;
  const draft = parsed.value;
  return db.tx(async (write) => {
    const named = await write
      .select({ id: items.id })
      .from(items)
      .where(inArray(items.id, [draft.firstItemId, draft.secondItemId]));
    const problems: Problem[] = (['firstItemId', 'secondItemId'] as const)
      .filter((key) => !named.some(({ id }) => id === draft[key]))
      .map((key) => ({
        path: [key],
        code: 'not-found',
        message: 'the catalogue has no such item: choose one from the list',
      }));
    if (problems.length > 0) return { ok: false, problems };
    const [row] = await write
      .insert(fitExceptions)
      .values({ ...draft, id: newId('exception'), status: 'draft', draftedBy: person.id, version: 1 })
      .returning();
    if (!row) throw new Error('the draft was not written');
    await record(write, 'fit-exception', {
      now,
      person,
      id: row.id,
      action: 'draft-fit-exception',
      detail: { ...draft },
    });
    return ok(exceptionFromRow(row));
  });
}
