import { eq, max } from 'drizzle-orm';
import type { Database } from '../../client';
import type { Person } from '../../queries/people';
import { ledger, listMarks } from '../../schema';

interface MarkListSeen {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** The newest entry of the ledger when the list was shown: what came after it stays new. */
  upTo: number;
}

/** Up to where a person has looked at what changed on the list; never back. A mark for reading, so the ledger does not speak of it. */
export async function markListSeen({ db, now, person, upTo }: MarkListSeen): Promise<{ seq: number }> {
  return db.tx(async (write) => {
    const [mark] = await write.select().from(listMarks).where(eq(listMarks.personId, person.id));
    const [newest] = await write.select({ seq: max(ledger.seq) }).from(ledger);
    // what is still to come was not looked at
    const seq = Math.max(mark?.seq ?? 0, Math.min(upTo, newest?.seq ?? 0));
    await write
      .insert(listMarks)
      .values({ personId: person.id, seq, markedAt: now })
      .onConflictDoUpdate({ target: listMarks.personId, set: { seq, markedAt: now } });
    return { seq };
  });
}
