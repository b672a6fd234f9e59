import { desc, eq, inArray, sql } from 'drizzle-orm';
import { may } from '@/lib/people/permissions';
import type { StockForm } from '@/lib/stock/stock';
import { stockForm, stockOwner } from '@/lib/stock/stock';
import type { StockCountStage } from '@/lib/stock/stockCount';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { items, people, places, stock, stockCounts } from '../../schema';
import { type CountedLine, type CountOnRecord, countOnRecord, countsOnRecord } from './countOnRecord';

/** What whoever reads is in a count: who counts sees only their own figures, who could still count sees none. */
export type PartInCount = 'counts' | 'countsAgain' | 'mayCountAgain' | 'waits' | 'sees';

export interface CountLineShown {
  id: string;
  itemId: string;
  code: string;
  name: string;
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  owner: 'ours' | 'consignment';
  held: string | null;
  added: boolean;
  /** The reader's own figure in the round they count in. */
  own: number | null;
  /** What came of it, for those who may see it. */
  result: {
    first: number | null;
    second: number | null;
    expected: number | null;
    difference: number | null;
    decision: 'accepted' | 'left' | null;
    decidedBy: string | null;
    because: string | null;
  } | null;
}

export interface CountScreen {
  id: string;
  placeId: string;
  place: string;
  countClass: string;
  stage: StockCountStage;
  part: PartInCount;
  begunBy: string;
  begunAt: string;
  closedAt: string | null;
  recountBy: string | null;
  revision: number;
  tolerance: { pieces: number; percent: number };
  /** Figures given so far, of how many lines. */
  counted: number;
  of: number;
  lines: CountLineShown[];
}

/** One count of the shelves as its reader may see it: blind for whoever counts, or could be asked to count again. */
export async function countScreen(db: Reading, id: string): Promise<CountScreen | null> {
  mayRead(db, 'readHospital');
  const found = await countOnRecord(db.read, id);
  if (!found) return null;
  const { count, stage } = found;
  const part = partOf(found, db.reader);
  const lines = part === 'waits' ? [] : found.lines.filter(({ row }) => sees(part, row));
  const [facts, heaps, names] = await Promise.all([
    db.read
      .select({ id: items.id, code: items.code, name: items.name })
      .from(items)
      .where(inArray(items.id, [...new Set(lines.map(({ row }) => row.itemId))])),
    db.read
      .select({ id: stock.id, heldBecause: stock.heldBecause })
      .from(stock)
      .where(
        inArray(
          stock.id,
          lines.flatMap(({ row }) => (row.stockId === null ? [] : [row.stockId])),
        ),
      ),
    db.read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const [place] = await db.read.select().from(places).where(eq(places.id, count.placeId));
  const nameOf = (personId: string | null) => names.find((one) => one.id === personId)?.name ?? null;
  const round = part === 'countsAgain' ? 2 : 1;
  const inRound = found.lines.filter(({ row }) => stage !== 'recounting' || row.recount);
  const given = ({ figures }: CountedLine, of: 1 | 2) => figures.findLast((one) => one.round === of) ?? null;
  return {
    id: count.id,
    placeId: count.placeId,
    place: place?.name ?? '',
    countClass: count.countClass,
    stage,
    part,
    begunBy: nameOf(count.begunBy) ?? '',
    begunAt: count.begunAt,
    closedAt: count.closedAt,
    recountBy: nameOf(count.recountBy),
    revision: count.revision,
    tolerance: { pieces: count.tolerancePieces, percent: count.tolerancePercent },
    counted: inRound.filter((line) => given(line, stage === 'recounting' ? 2 : 1) !== null).length,
    of: inRound.length,
    lines: lines
      .map((line): CountLineShown => {
        const { row, standing, difference } = line;
        const item = facts.find((one) => one.id === row.itemId);
        return {
          id: row.id,
          itemId: row.itemId,
          code: item?.code ?? '',
          name: item?.name ?? '',
          form: stockForm.parse(row.form),
          lot: row.lot,
          useBy: row.useBy,
          owner: stockOwner.parse(row.owner),
          held: heaps.find((one) => one.id === row.stockId)?.heldBecause ?? null,
          added: row.added,
          own: part === 'counts' || part === 'countsAgain' ? (given(line, round)?.pieces ?? null) : null,
          result:
            part === 'sees'
              ? {
                  first: given(line, 1)?.pieces ?? null,
                  second: given(line, 2)?.pieces ?? null,
                  expected: standing?.expected ?? null,
                  difference,
                  decision: row.decision === 'accepted' || row.decision === 'left' ? row.decision : null,
                  decidedBy: nameOf(row.decidedBy),
                  because: row.because,
                }
              : null,
        };
      })
      .sort(
        (a, b) =>
          a.code.localeCompare(b.code) ||
          (a.useBy ?? '9').localeCompare(b.useBy ?? '9') ||
          (a.lot ?? '').localeCompare(b.lot ?? ''),
      ),
  };
}

function partOf({ count, stage }: CountOnRecord, reader: Reading['reader']): PartInCount {
  const own = reader === THE_PROGRAM ? null : reader.id;
  if (stage === 'counting') return own === count.begunBy ? 'counts' : 'waits';
  if (stage === 'recounting' && own !== null && own === count.recountBy) return 'countsAgain';
  if (stage !== 'toRecount' && stage !== 'recounting') return 'sees';
  if (reader === THE_PROGRAM || own === count.begunBy || !may({ role: reader.role }, 'countStock'))
    return 'sees';
  return stage === 'toRecount' ? 'mayCountAgain' : 'waits';
}

/** Who counts again, or may, sees the lines of the second count alone. */
const sees = (part: PartInCount, { recount }: { recount: boolean }): boolean =>
  part === 'countsAgain' || part === 'mayCountAgain' ? recount : true;

export interface CountOnList {
  id: string;
  place: string;
  countClass: string;
  stage: StockCountStage;
  begunBy: string;
  begunAt: string;
  mine: boolean;
  heaps: number;
}

/**
 * The latest counts, newest first. How much was found is not among it: some of them are counted again.
 *
 * @param after when and as which the last one began that is known: those before it
 */
export async function recentStockCounts(
  db: Reading,
  limit: number,
  after: { begunAt: string; id: string } | null = null,
): Promise<CountOnList[]> {
  mayRead(db, 'readHospital');
  const heads = await db.read
    .select({ id: stockCounts.id, place: places.name, by: people.name })
    .from(stockCounts)
    .innerJoin(places, eq(places.id, stockCounts.placeId))
    .innerJoin(people, eq(people.id, stockCounts.begunBy))
    .where(
      after === null
        ? undefined
        : sql`(${stockCounts.begunAt}, ${stockCounts.id}) < (${after.begunAt}, ${after.id})`,
    )
    .orderBy(desc(stockCounts.begunAt), desc(stockCounts.id))
    .limit(limit);
  const found = await countsOnRecord(
    db.read,
    heads.map(({ id }) => id),
  );
  const own = db.reader === THE_PROGRAM ? null : db.reader.id;
  return heads.flatMap(({ id, place, by }): CountOnList[] => {
    const one = found.find(({ count }) => count.id === id);
    if (!one) return [];
    const { count, stage, lines } = one;
    const counter = stage === 'recounting' ? count.recountBy : count.begunBy;
    return [
      {
        id,
        place,
        countClass: count.countClass,
        stage,
        begunBy: by,
        begunAt: count.begunAt,
        mine: counter === own && (stage === 'counting' || stage === 'recounting'),
        heaps: lines.length,
      },
    ];
  });
}
