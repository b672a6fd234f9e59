import { inArray } from 'drizzle-orm';
import type { UsedItem } from '@/lib/usage/differences';
import type { Queries } from '../../client';
import { items } from '../../schema';
import type { TableFacts } from './tableFacts';

export interface TableItem extends UsedItem {
  code: string;
  name: string;
  status: string;
  gtin: string | null;
}

/** What is to be known of items by a record of use, by id. */
export async function tableItems(read: Queries, ids: Iterable<string>): Promise<Map<string, TableItem>> {
  const rows = await read
    .select({
      itemId: items.id,
      code: items.code,
      name: items.name,
      kind: items.kind,
      status: items.status,
      gtin: items.gtin,
      screwFamily: items.screwFamily,
      lengthUm: items.lengthUm,
    })
    .from(items)
    .where(inArray(items.id, [...new Set(ids)]));
  return new Map(rows.map((row) => [row.itemId, row]));
}

/** Items of everything at the table, of what is planned there, and of what is recorded. */
export const itemsAtTable = ({ slots, packs: own, plan, entries }: TableFacts): string[] => [
  ...slots.map(({ itemId }) => itemId),
  ...own.map(({ itemId }) => itemId),
  ...(plan?.construct.plates.map(({ plateItemId }) => plateItemId as string) ?? []),
  ...entries.flatMap(({ act }) => (act.kind === 'piece' ? [act.itemId as string] : [])),
];
