import { eq } from 'drizzle-orm';
import type { ReconciliationId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { reconciliationWords as words } from '@/lib/wording/reconciliation';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { reconciliations } from '../../schema';

/** What an act on a reconciliation is asked with; the revision is the one that was seen. */
export interface AtReconciliation {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  reconciliationId: ReconciliationId;
  baseRevision: number;
}

/** One act on a reconciliation that is not closed: permission and revision are checked inside its write. */
export async function atReconciliation<T>(
  { db, person, reconciliationId, baseRevision }: AtReconciliation,
  work: (
    write: Queries,
    row: typeof reconciliations.$inferSelect,
  ) => Promise<Outcome<T, { revision: number }>>,
): Promise<Outcome<T, { revision: number }>> {
  if (!may(person, 'reconcileConsignment')) return refused('notPermitted', words.mayNot(person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(reconciliations).where(eq(reconciliations.id, reconciliationId));
    if (!row) return refused('notFound', words.noSuch);
    const { revision, number } = row;
    if (row.closedAt !== null) return refused('frozen', words.closed(number), { revision });
    if (revision !== baseRevision) return refused('conflict', words.changed(number), { revision });
    return work(write, row);
  });
}
