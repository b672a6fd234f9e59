import { eq } from 'drizzle-orm';
import type { NewId, OrderId, RestockId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { restocks, supplyOrders } from '../../schema';

interface Acting {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** The revision that was seen. */
  baseRevision: number;
  /** As sent from outside; parsed in the operation. */
  entry: unknown;
}

/** What an act on a proposal is asked with. */
export interface AtRestock extends Acting {
  restockId: RestockId;
}

/** What an act on an order is asked with. */
export interface AtOrder extends Acting {
  orderId: OrderId;
}

/** A proposal or an order that somebody else changed, as it stands now. */
export interface StandsNow {
  revision: number;
  state: string;
}

/** One decision on a proposal nobody has decided on: permission, revision and state are checked inside its write. */
export async function atRestock<T>(
  { db, person, restockId, baseRevision }: AtRestock,
  work: (write: Queries, proposal: typeof restocks.$inferSelect) => Promise<Outcome<T, StandsNow>>,
): Promise<Outcome<T, StandsNow>> {
  if (!may(person, 'approveRestock')) return refused('notPermitted', words.mayNotApprove(person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(restocks).where(eq(restocks.id, restockId));
    if (!row) return refused('notFound', words.noSuchProposal);
    const { revision, state, number } = row;
    if (state !== 'proposed') return refused('frozen', words.decided(number), { revision, state });
    if (revision !== baseRevision) return refused('conflict', words.changed(number), { revision, state });
    return work(write, row);
  });
}

/** One act on an order that is open, checked as `atRestock` does. */
export async function atOrder<T>(
  { db, person, orderId, baseRevision }: AtOrder,
  work: (write: Queries, order: typeof supplyOrders.$inferSelect) => Promise<Outcome<T, StandsNow>>,
): Promise<Outcome<T, StandsNow>> {
  if (!may(person, 'receiveOrder')) return refused('notPermitted', words.mayNotReceive(person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(supplyOrders).where(eq(supplyOrders.id, orderId));
    if (!row) return refused('notFound', words.noSuchOrder);
    const { revision, state, number } = row;
    if (revision !== baseRevision) return refused('conflict', words.changed(number), { revision, state });
    if (state !== 'open') return refused('frozen', words.closed(number), { revision, state });
    return work(write, row);
  });
}
