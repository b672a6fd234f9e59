import { eq } from 'drizzle-orm';
import type { TheatreCountId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { theatreCounts } from '../../schema';
import { ownTheatreCount } from './own-theatre-count';

/** Gives up an open count in theatre; its entries stay on record and count for nothing. */
export async function abandonTheatreCount({
  db,
  now,
  person,
  countId,
}: {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  countId: TheatreCountId;
}): Promise<Outcome<{ countId: string }, never>> {
  return db.tx(async (write) => {
    const own = await ownTheatreCount(write, countId, person);
    if (!own.ok) return own;
    await write.update(theatreCounts).set({ abandonedAt: now }).where(eq(theatreCounts.id, countId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'abandon-count',
      subjectKind: 'case',
      subjectId: own.value.caseId,
      detail: { countId, moment: own.value.moment },
    });
    return { ok: true, value: { countId } };
  });
}
