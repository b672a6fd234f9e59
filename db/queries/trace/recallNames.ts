import { eq } from 'drizzle-orm';
import type { RecallOf } from '@/lib/trace/recall';
import type { Queries } from '../../client';
import { items, loads, sets } from '../../schema';

/** What is called back, in words, and the screen that shows it. Inside or outside a write. */
export async function recallNames(read: Queries, of: RecallOf): Promise<{ what: string; href: string }> {
  switch (of.kind) {
    case 'lot': {
      const name = await itemName(read, of.itemId);
      return { what: `lot ${of.lot} of ${name}`, href: `/catalogue/${of.itemId}` };
    }
    case 'item':
      return { what: await itemName(read, of.itemId), href: `/catalogue/${of.itemId}` };
    case 'set': {
      const [set] = await read.select({ code: sets.code }).from(sets).where(eq(sets.id, of.setId));
      return { what: `set ${set?.code ?? of.setId}`, href: `/sets/${of.setId}` };
    }
    case 'load': {
      const [load] = await read.select({ number: loads.number }).from(loads).where(eq(loads.id, of.loadId));
      return { what: `load ${load?.number ?? of.loadId}`, href: `/loads/${of.loadId}` };
    }
  }
}

async function itemName(read: Queries, itemId: string): Promise<string> {
  const [item] = await read.select({ name: items.name }).from(items).where(eq(items.id, itemId));
  return item?.name ?? itemId;
}
