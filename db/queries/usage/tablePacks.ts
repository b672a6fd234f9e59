import { and, asc, eq, inArray, isNotNull, isNull } from 'drizzle-orm';
import { returnOutcome } from '@/lib/caseLife/account';
import type { PackSource } from '@/lib/usage/account';
import type { Queries } from '../../client';
import { casePicks, caseReturns, items, stock, useReturns } from '../../schema';

/** Single packs of one heap that were issued to the case. */
export interface TablePack extends PackSource {
  stockId: string;
  packId: string | null;
  lot: string | null;
  useBy: string | null;
  held: boolean;
  owner: 'ours' | 'consignment';
}

/** Single packs issued to a case, with what the return alone says of them. */
export async function packsAtTable(read: Queries, caseId: string): Promise<TablePack[]> {
  const rows = await read
    .select({ pick: casePicks, heldBecause: stock.heldBecause, owner: stock.owner, use: items.use })
    .from(casePicks)
    .innerJoin(stock, eq(stock.id, casePicks.stockId))
    .innerJoin(items, eq(items.id, stock.itemId))
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt)))
    .orderBy(asc(casePicks.issuedAt), asc(casePicks.id));
  const returns = await read
    .select({ row: caseReturns })
    .from(caseReturns)
    .leftJoin(useReturns, eq(useReturns.returnId, caseReturns.id))
    .where(
      and(
        isNull(useReturns.returnId),
        inArray(
          caseReturns.pickId,
          rows.map(({ pick }) => pick.id),
        ),
      ),
    )
    .orderBy(asc(caseReturns.doneAt), asc(caseReturns.id));
  return rows.map(({ pick, heldBecause, owner, use }) => ({
    kind: 'pack',
    pickId: pick.id,
    stockId: pick.stockId ?? '',
    itemId: pick.itemId ?? '',
    reusable: use === 'reprocessable',
    quantity: pick.quantity,
    packId: pick.packId,
    lot: pick.lot,
    useBy: pick.useBy,
    held: heldBecause !== null,
    owner: owner === 'consignment' ? 'consignment' : 'ours',
    returns: returns
      .filter(({ row }) => row.pickId === pick.id)
      .map(({ row }) => ({ id: row.id, outcome: returnOutcome.parse(row.outcome), quantity: row.quantity })),
  }));
}
