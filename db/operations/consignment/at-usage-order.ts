import { eq } from 'drizzle-orm';
import type { UsageOrderId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import { consignmentWords as words } from '@/lib/wording/consignment';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { usageOrders } from '../../schema';

/** What an act on a usage order is asked with; the revision is the one that was seen. */
export interface AtUsageOrder {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  usageOrderId: UsageOrderId;
  baseRevision: number;
}

export type UsageOrderRow = typeof usageOrders.$inferSelect;
/** A usage order that somebody else changed, as it stands now. */
export interface StandsNow {
  revision: number;
  state: string;
}

const MAY_NOT: Partial<Record<Act, (name: string) => string>> = { approveUsageOrder: words.mayNotApprove };

/** One act on a usage order: permission and revision are checked inside its write. */
export async function atUsageOrder<T>(
  { db, person, usageOrderId, baseRevision }: AtUsageOrder,
  act: 'makeUsageOrder' | 'approveUsageOrder',
  work: (write: Queries, order: UsageOrderRow) => Promise<Outcome<T, StandsNow>>,
): Promise<Outcome<T, StandsNow>> {
  if (!may(person, act)) return refused('notPermitted', (MAY_NOT[act] ?? words.mayNotMake)(person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(usageOrders).where(eq(usageOrders.id, usageOrderId));
    if (!row) return refused('notFound', words.noSuchOrder);
    const { revision, state, number } = row;
    if (revision !== baseRevision) return refused('conflict', words.changed(number), { revision, state });
    return work(write, row);
  });
}
