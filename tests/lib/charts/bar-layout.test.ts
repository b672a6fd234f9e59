import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barShares, type ChartBox, stackedColumns } from '@/app/_ui/charts/bar-layout';

const BOX: ChartBox = { width: 700, height: 280, left: 60, right: 10, top: 20, bottom: 30 };
const rows = fc.array(
  fc.record({
    label: fc.string(),
    values: fc.array(fc.option(fc.integer({ min: 0, max: 90_000 })), { maxLength: 5 }),
  }),
  { minLength: 1, maxLength: 40 },
);

describe('stacked columns', () => {
  it('stand on the floor, touch from piece to piece and are as high as their values', () => {
    fc.assert(
      fc.property(rows, (given) => {
        const { columns, floor, ticks } = stackedColumns(given, BOX, 60);
        const [low, high] = [ticks[0], ticks.at(-1)];
        if (!low || !high || high.value === low.value) return;
        const perUnit = (low.at - high.at) / (high.value - low.value);
        columns.forEach(({ pieces }, at) => {
          let bottom = floor;
          for (const piece of pieces) {
            expect(Math.abs(piece.y + piece.height - bottom)).toBeLessThan(0.3);
            bottom = piece.y;
            expect(piece.y).toBeGreaterThanOrEqual(BOX.top - 0.1);
            const value = given[at]?.values[piece.series] ?? 0;
            expect(Math.abs(piece.height - (value ?? 0) * perUnit)).toBeLessThan(0.5);
          }
          expect(pieces.length).toBe(given[at]?.values.filter((value) => (value ?? 0) > 0).length);
        });
      }),
    );
  });

  it('labels never touch, and the last is always named', () => {
    const twoYears = Array.from({ length: 24 }, (_, at) => ({ label: `M${at}`, values: [1] }));
    const { columns } = stackedColumns(twoYears, BOX, 60);
    const named = columns.filter((column) => column.named).map(({ x }) => x);
    expect(columns.at(-1)?.named).toBe(true);
    for (const [at, x] of named.entries())
      if (at > 0) expect(x - (named[at - 1] ?? 0)).toBeGreaterThanOrEqual(60);
  });

  it('nothing known draws nothing and does not fail', () => {
    expect(stackedColumns([{ label: 'a', values: [null] }], BOX, 60).columns[0]?.pieces).toEqual([]);
    expect(barShares([null, 0])).toEqual([null, 0]);
    expect(barShares([5, 10, null])).toEqual([0.5, 1, null]);
  });
});
