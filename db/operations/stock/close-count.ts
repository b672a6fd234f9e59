import { and, eq, inArray } from 'drizzle-orm';
import type { StockCountId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { aboveTolerance } from '@/lib/stock/stockCount';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { type CountOnRecord, countOnRecord } from '../../queries/shelf/countOnRecord';
import { stockCountLines, stockCounts } from '../../schema';

export interface CountRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  countId: StockCountId;
  baseRevision: number;
}

/**
 * Closes the count, or the second count, of whoever counts. After the first, differences above what is tolerated wait for
 * another person; lines without a figure stay due.
 */
export async function closeStockCount(
  request: CountRequest,
): Promise<Outcome<{ recount: number; differences: number }, never>> {
  const { db, now, person, countId, baseRevision } = request;
  if (!may(person, 'countStock'))
    return refused('notPermitted', words.mayNot(person.name, 'count the shelves'));
  return db.tx(async (write) => {
    const found = await countOnRecord(write, countId);
    if (!found) return refused('notFound', words.noSuchCount);
    const { count, stage } = found;
    if (count.revision !== baseRevision) return changedTo(words.changed, count.revision);
    const [mine, second] = [
      stage === 'counting' ? count.begunBy : stage === 'recounting' ? count.recountBy : null,
      stage === 'recounting',
    ];
    if (mine === null) return refused('frozen', words.notOpen);
    if (mine !== person.id) return refused('notPermitted', words.notYours('Somebody else'));
    const again = second ? [] : toCountAgain(found);
    if (second) {
      const left = found.lines.filter(
        ({ row, figures }) => row.recount && !figures.some(({ round }) => round === 2),
      ).length;
      if (left > 0) return refused('frozen', words.recountAll(left));
    } else if (found.lines.every(({ standing }) => standing === null))
      return refused('frozen', words.nothingCounted);
    if (again.length > 0)
      await write
        .update(stockCountLines)
        .set({ recount: true })
        .where(and(eq(stockCountLines.countId, countId), inArray(stockCountLines.id, again)));
    await write
      .update(stockCounts)
      .set({ ...(second ? { recountClosedAt: now } : { closedAt: now }), revision: count.revision + 1 })
      .where(eq(stockCounts.id, countId));
    const differences = found.lines.filter(({ difference }) => (difference ?? 0) !== 0).length;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-stock-count',
      subjectKind: 'stockCount',
      subjectId: countId,
      detail: {
        round: second ? 2 : 1,
        figures: found.lines.flatMap(({ row, standing }) =>
          standing === null
            ? []
            : [
                {
                  lineId: row.id,
                  stockId: row.stockId,
                  pieces: standing.pieces,
                  expected: standing.expected,
                },
              ],
        ),
        countAgain: again,
      },
    });
    return { ok: true, value: { recount: again.length, differences } };
  });
}

const toCountAgain = ({ count, lines }: CountOnRecord): string[] =>
  lines.flatMap(({ row, standing }) =>
    standing !== null &&
    aboveTolerance(standing, { pieces: count.tolerancePieces, percent: count.tolerancePercent })
      ? [row.id]
      : [],
  );
