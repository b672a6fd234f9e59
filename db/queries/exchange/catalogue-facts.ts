import type { CatalogueFacts } from '@/lib/exchange/plans/catalogue';
import type { Queries } from '../../client';
import { itemFromRow } from '../../mappers/item';
import { items, makers } from '../../schema';

/** The catalogue with its makers, as a list is compared with it. */
export async function catalogueFacts(read: Queries): Promise<CatalogueFacts> {
  const [rows, known] = await Promise.all([read.select().from(items), read.select().from(makers)]);
  return { items: rows.map((row) => ({ item: itemFromRow(row), revision: row.revision })), makers: known };
}

/** Codes of items, by which damaged ones are known. */
export async function itemCodes(read: Queries): Promise<ReadonlySet<string>> {
  const rows = await read.select({ code: items.code }).from(items);
  return new Set(rows.map(({ code }) => code));
}
