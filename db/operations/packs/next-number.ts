import { desc } from 'drizzle-orm';
import { packNumberOf, sequenceOf, sheetNumberOf } from '@/lib/packs/packNumber';
import type { Queries } from '../../client';
import { packs, sheetPrints } from '../../schema';

/** The next free number of a pack, inside the write that makes it. Numbers only grow: packs are never deleted. */
export async function nextPackNumber(write: Queries): Promise<string> {
  // as text the longer number is the later one, and of two equally long the greater
  const rows = await write.select({ number: packs.number }).from(packs).orderBy(desc(packs.number)).limit(1);
  return packNumberOf(Math.max(0, ...rows.map(({ number }) => sequenceOf(number))) + 1);
}

export async function nextSheetNumber(write: Queries): Promise<string> {
  const rows = await write
    .select({ number: sheetPrints.number })
    .from(sheetPrints)
    .orderBy(desc(sheetPrints.number))
    .limit(1);
  return sheetNumberOf(Math.max(0, ...rows.map(({ number }) => sequenceOf(number))) + 1);
}
