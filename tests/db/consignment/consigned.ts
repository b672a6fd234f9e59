import { sql } from 'drizzle-orm';
import { approveUsageOrder } from '@/db/operations/consignment/approve-usage-order';
import { chooseReplacement } from '@/db/operations/consignment/choose-replacement';
import { makeUsageOrder } from '@/db/operations/consignment/make-usage-order';
import { markUsageOrderSent } from '@/db/operations/consignment/mark-usage-order-sent';
import { withdrawUsageOrder } from '@/db/operations/consignment/withdraw-usage-order';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { usageOfOwner } from '@/db/queries/consignment/usageOfOwner';
import { findUsageOrder } from '@/db/queries/consignment/usageOrders';
import { THE_PROGRAM } from '@/db/reader';
import { usageLineId, usageOrderId } from '@/lib/identity/ids';
import type { AdjustReason } from '@/lib/stock/adjustment';
import { done, Shelf } from '../stock/shelf';

export const OWNER = 'lender_sallowfen';
export const OTHER_OWNER = 'lender_corrow-hill';
export const ITEM = 'item_sf-l27-24';

/** Who tells owners what was used, in which hospital and when. */
type Telling = Pick<Shelf, 'db' | 'newId' | 'keeper' | 'manager'> & { now(): string };

/** What is done for one owner. */
export class ForOwner {
  constructor(readonly by: Telling) {}

  get db() {
    return this.by.db;
  }

  waiting(owner = OWNER) {
    return usageOfOwner(this.db.read, owner).waiting;
  }

  make({
    id = this.by.newId('usageOrder') as string,
    lines = this.waiting().length,
    person = this.by.keeper,
  } = {}) {
    return makeUsageOrder({
      db: this.db,
      now: this.by.now(),
      newId: this.by.newId,
      person,
      entry: { id, lenderId: OWNER, lines },
    });
  }

  async made(): Promise<string> {
    return done(await this.make()).id;
  }

  async order(id: string) {
    const found = await findUsageOrder({ read: this.db.read, reader: THE_PROGRAM }, id);
    if (!found) throw new Error(`there is no ${id}`);
    return found;
  }

  async at(id: string, person = this.by.manager) {
    const { revision } = await this.order(id);
    return {
      db: this.db,
      now: this.by.now(),
      person,
      usageOrderId: usageOrderId.parse(id),
      baseRevision: revision,
    };
  }

  /** Says of every line that it is, or is not, to be replaced. */
  async choose(id: string, replace = true): Promise<void> {
    const { lines } = await this.order(id);
    const choices = lines.flatMap((line) =>
      line.way === 'used' ? [{ lineId: usageLineId.parse(line.id), replace }] : [],
    );
    if (choices.length > 0)
      done(await chooseReplacement({ ...(await this.at(id, this.by.keeper)), choices }));
  }

  async approve(id: string): Promise<void> {
    done(await approveUsageOrder(await this.at(id)));
  }

  async send(id: string): Promise<void> {
    done(await markUsageOrderSent({ ...(await this.at(id)), how: 'by e-mail' }));
  }

  async withdraw(id: string): Promise<void> {
    done(await withdrawUsageOrder({ ...(await this.at(id)), because: 'It was made too early.' }));
  }

  /** Made, chosen, approved, sent. */
  async sent(replace = true): Promise<string> {
    const id = await this.approved(replace);
    await this.send(id);
    return id;
  }

  async approved(replace = true): Promise<string> {
    const id = await this.made();
    await this.choose(id, replace);
    await this.approve(id);
    return id;
  }

  /** Moves of the journal that are on more than one order that stands. */
  onTwoOrders() {
    return this.db.read.all(sql`SELECT move_seq, way FROM usage_order_lines WHERE withdrawn = 0
      GROUP BY move_seq, way HAVING count(*) > 1`);
  }
}

/** The shelves of the demo with consigned pieces of one lot on them. */
export class Consigned extends ForOwner {
  private constructor(
    readonly shelf: Shelf,
    readonly heap: string,
  ) {
    super(shelf);
  }

  static async open(pieces = 6, lot: string | null = 'CONS-1'): Promise<Consigned> {
    const shelf = await Shelf.open();
    const { id } = await shelf.putDown(pieces, { lot, owner: 'consignment', lenderId: OWNER });
    return new Consigned(shelf, id);
  }

  async adjust(reason: AdjustReason, pieces: number, heap = this.heap): Promise<void> {
    done(await adjustStock({ ...(await this.shelf.at(heap)), reason, pieces, note: 'As it was seen.' }));
  }
}
