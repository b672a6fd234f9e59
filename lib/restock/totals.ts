import type { Backtest, Replayed } from './backtest';

/** What one way of ordering came to over all items. Shares are 0 to 1; `null` where nothing was asked. */
export interface WayTotals {
  piecesServed: number | null;
  casesServed: number | null;
  timesServed: number | null;
  /** Pieces on the shelf, on average, and what they cost; the latter of items whose price is stated. */
  meanStock: number;
  meanStockPence: number;
  pastUseBy: number;
  pastUseByPence: number;
  orders: number;
  /** Pieces on the shelf at the end of each week. */
  weeks: number[];
}

/** Sums over items of what was replayed, for one of the two ways. */
export function totalsOf(
  items: readonly { unitPence: number | null; result: Backtest }[],
  way: 'reorder' | 'par',
): WayTotals {
  const sum = (value: (one: Replayed, pence: number) => number) =>
    items.reduce((all, { result, unitPence }) => all + value(result[way], unitPence ?? 0), 0);
  const share = (part: number, whole: number) => (whole === 0 ? null : part / whole);
  const longest = Math.max(0, ...items.map(({ result }) => result[way].weeks.length));
  return {
    piecesServed: share(
      sum(({ served }) => served),
      sum(({ asked }) => asked),
    ),
    casesServed: share(
      sum(({ casesServed }) => casesServed),
      sum(({ cases }) => cases),
    ),
    timesServed: share(
      sum(({ timesServed }) => timesServed),
      sum(({ times }) => times),
    ),
    meanStock: sum(({ meanStock }) => meanStock),
    meanStockPence: sum(({ meanStock }, pence) => meanStock * pence),
    pastUseBy: sum(({ pastUseBy }) => pastUseBy),
    pastUseByPence: sum(({ pastUseBy }, pence) => pastUseBy * pence),
    orders: sum(({ orders }) => orders),
    weeks: Array.from({ length: longest }, (_, week) => sum(({ weeks }) => weeks[week] ?? 0)),
  };
}
