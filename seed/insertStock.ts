import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { stock } from '@/db/schema';
import { idOfCode } from './catalogue/entry';
import type { HospitalClock } from './hospitalClock';
import { STOCK } from './stock/stock';

/** Pouches, sterile packs and shelf stock. */
export async function insertStock(write: Queries, clock: HospitalClock): Promise<void> {
  await insertMany(
    write,
    stock,
    STOCK.map((plan, index) => ({
      id: `stock_demo-${String(index + 1).padStart(3, '0')}`,
      itemId: idOfCode(plan.code),
      form: plan.form,
      lot: plan.lot,
      useBy: plan.useByDays === null ? null : clock.date(plan.useByDays),
      quantity: plan.quantity,
      owner: plan.owner ?? 'ours',
      placeId: plan.place,
      heldBecause: plan.heldBecause ?? null,
      revision: 1,
    })),
  );
}
