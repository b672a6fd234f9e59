import { and, eq, ne } from 'drizzle-orm';
import { z } from 'zod';
import { type NewId, type SteriliserId, steriliserId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { programmes } from '@/lib/loads/programme';
import { may } from '@/lib/people/permissions';
import { loadWords as words } from '@/lib/wording/loads';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { sterilisers } from '../../schema';

export const steriliserEntry = z.strictObject({ name: z.string().trim().min(1).max(60), programmes });

interface SaveSteriliser {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** `null` adds one. */
  steriliserId: SteriliserId | null;
  entry: unknown;
}

/** Adds a steriliser or changes its name and programmes. A load keeps the programme as it stood when it was started. */
export async function saveSteriliser(request: SaveSteriliser): Promise<Outcome<{ id: SteriliserId }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'manageSterilisers'))
    return refused('notPermitted', words.notPermitted(person.name, 'change sterilisers'));
  const parsed = steriliserEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const id = request.steriliserId ?? steriliserId.parse(newId('steriliser'));
    const [before] = await write.select().from(sterilisers).where(eq(sterilisers.id, id));
    if (request.steriliserId !== null && !before) return refused('notFound', words.noSuchSteriliser);
    if (before && before.withdrawnAt !== null)
      return refused('frozen', words.withdrawnSteriliser(before.name));
    const [other] = await write
      .select()
      .from(sterilisers)
      .where(and(eq(sterilisers.name, entry.name), ne(sterilisers.id, id)));
    if (other)
      return refusedFor([{ path: ['name'], code: 'name-taken', message: words.nameTaken(entry.name) }]);
    if (before) await write.update(sterilisers).set(entry).where(eq(sterilisers.id, id));
    else await write.insert(sterilisers).values({ id, ...entry });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-steriliser',
      subjectKind: 'steriliser',
      subjectId: id,
      detail: { before: before ? { name: before.name, programmes: before.programmes } : null, after: entry },
    });
    return { ok: true, value: { id } };
  });
}
