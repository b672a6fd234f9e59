import { and, asc, gte, inArray, isNotNull, min, notInArray } from 'drizzle-orm';
import { moveAct } from '@/lib/pieces/move';
import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { daysBetween } from '@/lib/restock/days';
import type { UseRecord } from '@/lib/restock/record';
import { DEMAND_ACTS, recordsOf } from '@/lib/restock/uses';
import { wallClock } from '@/lib/theatre/localTime';
import { mayRead, type Reading } from '../../reader';
import { movesTakenBack, pieceMoves, plans } from '../../schema';

/** What every item was needed for, day by day, and over which days that is known. */
export interface DemandOnRecord {
  /** The first day on record; `null` where the journal is empty. */
  from: PlainDate | null;
  days: number;
  recordOf: (itemId: string) => UseRecord;
}

/** The record of demand before `today`, as far back as the journal and the setting go. */
export async function demandOnRecord(
  db: Reading,
  today: PlainDate,
  recordWeeks: number,
): Promise<DemandOnRecord> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [first] = await read.select({ day: min(pieceMoves.doneOn) }).from(pieceMoves);
  if (!first?.day) return { from: null, days: 0, recordOf: () => ({ days: 0, uses: [] }) };
  const began = plainDate.parse(first.day);
  const earliest = addDays(today, -7 * recordWeeks);
  const [from = began] = [began, earliest].sort().reverse();
  const [rows, known] = await Promise.all([
    read
      .select({
        act: pieceMoves.act,
        itemId: pieceMoves.itemId,
        quantity: pieceMoves.quantity,
        doneOn: pieceMoves.doneOn,
        caseId: pieceMoves.caseId,
        fromStockId: pieceMoves.fromStockId,
        fromSetId: pieceMoves.fromSetId,
        fromLineId: pieceMoves.fromLineId,
        toSetId: pieceMoves.toSetId,
        toLineId: pieceMoves.toLineId,
      })
      .from(pieceMoves)
      .where(
        and(
          inArray(pieceMoves.act, [...DEMAND_ACTS]),
          gte(pieceMoves.doneOn, from),
          // what a corrected record of use took back was no demand
          notInArray(pieceMoves.seq, read.select({ seq: movesTakenBack.moveSeq }).from(movesTakenBack)),
        ),
      )
      .orderBy(asc(pieceMoves.seq)),
    read
      .select({ caseId: plans.caseId, at: min(plans.confirmedAt) })
      .from(plans)
      .where(isNotNull(plans.confirmedAt))
      .groupBy(plans.caseId),
  ]);
  const moves = rows.map(({ fromSetId, fromLineId, toSetId, toLineId, act, ...move }) => ({
    ...move,
    act: moveAct.parse(act),
    slot: slotOf(fromSetId ?? toSetId, fromLineId ?? toLineId),
  }));
  const inMoves = new Set(moves.map((move) => move.caseId));
  const knownOn = new Map(
    known.flatMap(({ caseId, at }) =>
      at !== null && inMoves.has(caseId) ? [[caseId, wallClock(at).date] as const] : [],
    ),
  );
  const records = recordsOf(moves, { from, until: today, knownOn });
  const days = Math.max(0, daysBetween(from, today));
  return { from, days, recordOf: (itemId) => records.get(itemId) ?? { days, uses: [] } };
}

const slotOf = (setId: string | null, lineId: string | null) =>
  setId === null ? null : `${setId}/${lineId}`;
