import { asc } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import type { Database } from '../client';
import { itemFromRow } from '../mappers/item';
import { items } from '../schema';

/** The whole catalogue, withdrawn items too, by code. Parsed; a few milliseconds for hundreds of items. */
export async function loadCatalogue({ read }: Pick<Database, 'read'>): Promise<Item[]> {
  return (await read.select().from(items).orderBy(asc(items.code))).map(itemFromRow);
}
