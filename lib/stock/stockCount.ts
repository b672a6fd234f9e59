import { z } from 'zod';
import { entryId, itemId, stockCountLineId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';
import { stockForm, stockOwner } from './stock';

const pieces = z.number().int('whole pieces only').min(0).max(99_999);
const doneAt = z.iso.datetime({ precision: 3 });

/** One figure as it is sent, its id made where it was counted: of a listed heap, or of something that lies there too. */
export const sentFigure = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), id: entryId, lineId: stockCountLineId, pieces, doneAt }),
  z.strictObject({
    kind: z.literal('added'),
    id: entryId,
    /** Made here: the same line again is another figure of it. */
    lineId: stockCountLineId,
    itemId,
    form: stockForm,
    lot: z.string().trim().min(1).max(60).nullable(),
    useBy: plainDate.nullable(),
    owner: stockOwner,
    pieces,
    doneAt,
  }),
]);
export type SentFigure = z.infer<typeof sentFigure>;

/** How far a count has come. */
export type StockCountStage =
  | 'counting'
  /** Differences above what is tolerated wait for another person. */
  | 'toRecount'
  | 'recounting'
  /** Differences are shown, and wait for somebody who may decide. */
  | 'toDecide'
  | 'done'
  | 'abandoned';

export interface CountFacts {
  closedAt: string | null;
  recountBegunAt: string | null;
  recountClosedAt: string | null;
  abandonedAt: string | null;
  lines: readonly { recount: boolean; difference: number | null; decision: string | null }[];
}

export function stageOfCount(count: CountFacts): StockCountStage {
  if (count.abandonedAt !== null) return 'abandoned';
  if (count.closedAt === null) return 'counting';
  if (count.recountClosedAt === null && count.lines.some(({ recount }) => recount))
    return count.recountBegunAt === null ? 'toRecount' : 'recounting';
  return count.lines.some(({ difference, decision }) => (difference ?? 0) !== 0 && decision === null)
    ? 'toDecide'
    : 'done';
}

export interface Figure {
  round: 1 | 2;
  pieces: number;
  expected: number;
}

/** The figure that counts: the last one of the second round where there is one, else the last one of the first. */
export function standingFigure<F extends Figure>(figures: readonly F[]): F | null {
  return figures.findLast(({ round }) => round === 2) ?? figures.findLast(({ round }) => round === 1) ?? null;
}

/** Pieces more (or fewer, below zero) than the record had at the moment they were counted. */
export const differenceOf = ({ pieces: counted, expected }: Pick<Figure, 'pieces' | 'expected'>): number =>
  counted - expected;

/** Whether a difference is more than is tolerated: above the larger of so many pieces and such a share of what was expected. */
export function aboveTolerance(
  figure: Pick<Figure, 'pieces' | 'expected'>,
  tolerance: { pieces: number; percent: number },
): boolean {
  const off = Math.abs(differenceOf(figure));
  return off > tolerance.pieces && off * 100 > figure.expected * tolerance.percent;
}
