import { describe, expect, it } from 'vitest';
import { aboveTolerance, differenceOf, stageOfCount, standingFigure } from '@/lib/stock/stockCount';

const NONE = { closedAt: null, recountBegunAt: null, recountClosedAt: null, abandonedAt: null, lines: [] };
const line = (difference: number | null, recount = false, decision: string | null = null) => ({
  difference,
  recount,
  decision,
});

describe('a count of the shelves', () => {
  it('goes from counting over counting again and deciding to its end', () => {
    expect(stageOfCount(NONE)).toBe('counting');
    expect(stageOfCount({ ...NONE, abandonedAt: 'now' })).toBe('abandoned');
    const closed = { ...NONE, closedAt: 'now' };
    expect(stageOfCount({ ...closed, lines: [line(0), line(null)] })).toBe('done');
    expect(stageOfCount({ ...closed, lines: [line(-1)] })).toBe('toDecide');
    expect(stageOfCount({ ...closed, lines: [line(-1, true)] })).toBe('toRecount');
    expect(stageOfCount({ ...closed, recountBegunAt: 'now', lines: [line(-1, true)] })).toBe('recounting');
    const again = { ...closed, recountBegunAt: 'now', recountClosedAt: 'now' };
    expect(stageOfCount({ ...again, lines: [line(0, true)] })).toBe('done');
    expect(stageOfCount({ ...again, lines: [line(-1, true), line(2)] })).toBe('toDecide');
    expect(stageOfCount({ ...again, lines: [line(-1, true, 'accepted'), line(2, false, 'left')] })).toBe(
      'done',
    );
  });

  it('goes by the last figure of the second count, else of the first', () => {
    const figure = (round: 1 | 2, pieces: number) => ({ round, pieces, expected: 10 });
    expect(standingFigure([])).toBeNull();
    expect(standingFigure([figure(1, 4), figure(1, 5)])).toMatchObject({ pieces: 5 });
    expect(standingFigure([figure(1, 4), figure(2, 9), figure(2, 8), figure(1, 5)])).toMatchObject({
      pieces: 8,
    });
    expect(differenceOf(figure(1, 8))).toBe(-2);
  });

  it('is counted again above the larger of so many pieces and such a share', () => {
    const off = (pieces: number, expected: number, tolerance: { pieces: number; percent: number }) =>
      aboveTolerance({ pieces, expected }, tolerance);
    expect(off(9, 10, { pieces: 0, percent: 0 })).toBe(true);
    expect(off(10, 10, { pieces: 0, percent: 0 })).toBe(false);
    expect(off(9, 10, { pieces: 1, percent: 0 })).toBe(false);
    expect(off(8, 10, { pieces: 1, percent: 0 })).toBe(true);
    // 2 % of 400 are 8 pieces
    expect(off(392, 400, { pieces: 1, percent: 2 })).toBe(false);
    expect(off(391, 400, { pieces: 1, percent: 2 })).toBe(true);
    expect(off(409, 400, { pieces: 1, percent: 2 })).toBe(true);
    // nothing was expected: any share of it is nothing
    expect(off(1, 0, { pieces: 0, percent: 50 })).toBe(true);
  });
});
