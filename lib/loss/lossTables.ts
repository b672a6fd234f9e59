import type { ThingLife } from '../calculations/serviceLife/schema';
import type { FigureTable } from '../documents/figureTable';
import { wasteCodeWords } from '../wording/costs';
import { notFoundStepWords, unfitWords, lossWords as words } from '../wording/loss';
import { LIFE_STATE_WORDS } from '../wording/service-life';
import type { ShelfLoss } from './shelf';

export const LOSS_TABLES = ['shelf', 'shelfWaste', 'notFound', 'repairs', 'life'] as const;
export type LossTable = (typeof LOSS_TABLES)[number];

/** One lot with what is likely to be lost of it, as the table and the file have it. */
export interface LotAtRisk {
  stockId: string;
  itemId: string;
  item: string;
  lot: string | null;
  place: string;
  useBy: string;
  units: number;
  pastUseBy: boolean;
  expectedLost: number;
  likelyLost: number;
  worthPence: number | null;
  sentence: string;
  neverUsed: boolean;
}

/** Every lot of every item, the most costly loss first; the calculation has lots by use-by, heaps by their own order. */
export function lotsAtRisk(losses: readonly ShelfLoss[]): LotAtRisk[] {
  return losses
    .flatMap(({ shelf, input, loss, neverUsed }) =>
      shelf.lots.flatMap((heap, at): LotAtRisk[] => {
        const lot = loss.lots.find((one) => one.lot === input.lots[at]?.lot);
        return lot
          ? [
              {
                stockId: heap.stockId,
                itemId: shelf.itemId,
                item: `${shelf.name} (${shelf.code})`,
                lot: heap.lot,
                place: heap.place,
                useBy: heap.useBy,
                units: heap.units,
                pastUseBy: lot.pastUseBy,
                expectedLost: lot.expectedLost,
                likelyLost: lot.likelyLost,
                worthPence: lot.expectedLostPence,
                sentence: lot.sentence,
                neverUsed,
              },
            ]
          : [];
      }),
    )
    .sort((a, b) => (b.worthPence ?? 0) - (a.worthPence ?? 0) || b.expectedLost - a.expectedLost);
}

const tenth = (value: number) => Math.round(value * 10) / 10;

export function shelfTable(lots: readonly LotAtRisk[]): FigureTable {
  return {
    name: 'loss-shelf',
    caption: words.tables.shelf,
    columns: [
      { header: 'Item', kind: 'text' },
      { header: 'Lot', kind: 'text' },
      { header: 'Place', kind: 'text' },
      { header: 'Use-by', kind: 'text' },
      { header: 'Units', kind: 'number' },
      { header: 'Expected to be lost', kind: 'number' },
      { header: 'Worth', kind: 'pence' },
      { header: 'What to do', kind: 'text' },
    ],
    rows: lots.map((lot) => [
      lot.item,
      lot.lot,
      lot.place,
      lot.useBy,
      lot.units,
      tenth(lot.expectedLost),
      lot.worthPence,
      lot.sentence,
    ]),
  };
}

export function shelfWasteTable(
  rows: readonly { code: string; pieces: number; pence: number; unknown: number }[],
): FigureTable {
  return {
    name: 'loss-shelf-waste',
    caption: words.tables.shelfWaste,
    columns: [
      { header: 'Reason', kind: 'text' },
      { header: 'Pieces', kind: 'number' },
      { header: 'Worth', kind: 'pence' },
      { header: 'Pieces without a price', kind: 'number' },
    ],
    rows: rows.map(({ code, pieces, pence, unknown }) => [wasteCodeWords(code), pieces, pence, unknown]),
  };
}

export function notFoundTable(
  rows: readonly {
    step: string | null;
    set: string | null;
    pieces: number;
    pence: number;
    unknown: number;
  }[],
): FigureTable {
  return {
    name: 'loss-not-found',
    caption: words.tables.notFound,
    columns: [
      { header: 'Step', kind: 'text' },
      { header: 'From', kind: 'text' },
      { header: 'Pieces', kind: 'number' },
      { header: 'Worth', kind: 'pence' },
      { header: 'Pieces without a price', kind: 'number' },
    ],
    rows: rows.map(({ step, set, pieces, pence, unknown }) => [
      notFoundStepWords(step),
      words.notFoundFrom(set),
      pieces,
      pence,
      unknown,
    ]),
  };
}

export function repairTable(
  rows: readonly {
    name: string;
    code: string;
    condition: string | null;
    putAside: number;
    repaired: number;
    discarded: number;
  }[],
): FigureTable {
  return {
    name: 'loss-repairs',
    caption: words.tables.repairs,
    columns: [
      { header: 'Item', kind: 'text' },
      { header: 'Because', kind: 'text' },
      { header: 'Put aside', kind: 'number' },
      { header: 'Repaired', kind: 'number' },
      { header: 'Discarded', kind: 'number' },
    ],
    rows: rows.map((row) => [
      `${row.name} (${row.code})`,
      unfitWords(row.condition),
      row.putAside,
      row.repaired,
      row.discarded,
    ]),
  };
}

export function lifeTable(
  rows: readonly { setCode: string; name: string; pieces: number; limit: number | null; life: ThingLife }[],
): FigureTable {
  return {
    name: 'loss-service-life',
    caption: words.tables.life,
    columns: [
      { header: 'Set', kind: 'text' },
      { header: 'Item', kind: 'text' },
      { header: 'Pieces', kind: 'number' },
      { header: 'Cycles allowed', kind: 'number' },
      { header: 'Stands', kind: 'text' },
      { header: 'In words', kind: 'text' },
    ],
    rows: rows.map(({ setCode, name, pieces, limit, life }) => [
      setCode,
      name,
      pieces,
      limit,
      LIFE_STATE_WORDS[life.state],
      life.sentence,
    ]),
  };
}
