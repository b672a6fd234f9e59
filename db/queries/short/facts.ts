import { eq } from 'drizzle-orm';
import { itemId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { HeldLine } from '@/lib/sets/holdings';
import { pieceCondition } from '@/lib/sets/setState';
import type { ShortFacts } from '@/lib/sets/short/ask';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { lineFromRow } from '../../mappers/configuration';
import { configurationLines, setContents, setForeignPieces } from '../../schema';
import { pouchesFor } from './decisions';

interface Held {
  id: string;
  versionId: string;
}

/** What lies in a set by its last count, inside or outside a write. */
export async function heldLines(read: Queries, set: Held): Promise<HeldLine[]> {
  const [lines, contents] = await Promise.all([
    read.select().from(configurationLines).where(eq(configurationLines.versionId, set.versionId)),
    read.select().from(setContents).where(eq(setContents.setId, set.id)),
  ]);
  const counted = new Map(contents.map((row) => [row.lineId, row]));
  return lines
    .map(lineFromRow)
    .sort((a, b) => a.layer - b.layer || a.row - b.row || a.slot - b.slot)
    .map((line) => {
      const held = counted.get(line.id);
      return {
        ...line,
        found: held?.found ?? null,
        unsound: held?.unsound ?? 0,
        condition: held ? pieceCondition.parse(held.condition) : 'sound',
      };
    });
}

/**
 * What the table of short sets is asked about: the lines, what does not belong, and the pouches that could travel with it.
 *
 * @param on the day the pouches must be in date: that of the case where one is named, else today
 */
export async function shortFacts(
  read: Queries,
  set: Held,
  now: string,
  on: PlainDate = wallClock(now).date,
): Promise<ShortFacts> {
  const [lines, foreign, pouches] = await Promise.all([
    heldLines(read, set),
    read.select().from(setForeignPieces).where(eq(setForeignPieces.setId, set.id)),
    pouchesFor(read, set.id, on, now),
  ]);
  return {
    lines,
    foreign: foreign.map((row) => ({ itemId: itemId.parse(row.itemId), quantity: row.quantity })),
    pouches,
  };
}
