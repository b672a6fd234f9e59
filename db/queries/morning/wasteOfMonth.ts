import { and, eq, gte, sql } from 'drizzle-orm';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';
import { pieceMoves } from '../../schema';

/** What was opened or thrown away for nothing since the first of the month, by the hospital's calendar. */
export interface WasteOfMonth {
  pieces: number;
  /** Of those whose price is stated. */
  pence: number;
  /** Pieces whose price nobody has stated. */
  unpriced: number;
}

export async function wasteOfMonth(db: Reading, today: PlainDate): Promise<WasteOfMonth> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({
      pieces: sql<number>`coalesce(sum(${pieceMoves.quantity}), 0)`,
      pence: sql<number>`coalesce(sum(${pieceMoves.quantity} * ${pieceMoves.unitPence}), 0)`,
      unpriced: sql<number>`coalesce(sum(iif(${pieceMoves.unitPence} IS NULL, ${pieceMoves.quantity}, 0)), 0)`,
    })
    .from(pieceMoves)
    .where(and(gte(pieceMoves.doneOn, `${today.slice(0, 7)}-01`), eq(pieceMoves.act, 'wasted')));
  return row ?? { pieces: 0, pence: 0, unpriced: 0 };
}
