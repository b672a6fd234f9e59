import { describe, expect, it } from 'vitest';
import { unbookedShare } from '@/lib/restock/record';
import { type DemandMove, recordsOf } from '@/lib/restock/uses';

const move = (act: DemandMove['act'], doneOn: string, more: Partial<DemandMove> = {}): DemandMove => ({
  act,
  itemId: 'item_a',
  quantity: 1,
  doneOn,
  caseId: null,
  fromStockId: null,
  slot: 'set_a/line_a',
  ...more,
});

const record = (moves: DemandMove[], known: [string, string][] = []) =>
  recordsOf(moves, { from: '2026-01-01', until: '2026-03-01', knownOn: new Map(known) }).get('item_a');

describe('what was needed, from the journal of pieces', () => {
  it('is one use for each case, however many moves it took', () => {
    const caseId = 'case_a';
    expect(
      record([
        move('implanted', '2026-01-08', { caseId, quantity: 3 }),
        move('wasted', '2026-01-08', { caseId }),
        move('notFound', '2026-01-09', { caseId }),
        move('implanted', '2026-01-08', { caseId: 'case_b', quantity: 2 }),
      ]),
    ).toEqual({
      days: 59,
      uses: [
        { day: 7, pieces: 5, bookedDaysBefore: null },
        { day: 7, pieces: 2, bookedDaysBefore: null },
      ],
    });
  });

  it('is not what went off the shelf without a case: past its use-by, or dropped there', () => {
    const heap = { fromStockId: 'stock_a', slot: null };
    expect(record([move('wasted', '2026-01-08', heap), move('notFound', '2026-01-08', heap)])?.uses).toEqual(
      [],
    );
    // a single pack opened in a case came from no shelf any more
    expect(record([move('wasted', '2026-01-08', { slot: null, caseId: 'case_a' })])?.uses).toHaveLength(1);
  });

  it('is not what was found again, and of what was explained it is the use alone', () => {
    expect(
      record([
        move('notFound', '2026-01-05', { quantity: 2 }),
        move('notFound', '2026-01-06', { slot: 'set_b/line_b' }),
        move('found', '2026-01-07'),
        move('explained', '2026-01-08'),
        move('implanted', '2026-01-08', { caseId: 'case_a' }),
      ])?.uses,
    ).toEqual([
      { day: 5, pieces: 1, bookedDaysBefore: null },
      { day: 7, pieces: 1, bookedDaysBefore: null },
    ]);
  });

  it('counts from the first day on record to the day before today', () => {
    expect(
      record([
        move('discarded', '2025-12-31'),
        move('discarded', '2026-01-01'),
        move('discarded', '2026-02-28'),
        move('discarded', '2026-03-01'),
      ])?.uses.map(({ day }) => day),
    ).toEqual([0, 58]);
  });

  it('knows how long before its day a case’s plan was confirmed; never less than none', () => {
    const moves = [
      move('implanted', '2026-01-20', { caseId: 'case_a' }),
      move('implanted', '2026-01-21', { caseId: 'case_b' }),
    ];
    const known: [string, string][] = [
      ['case_a', '2026-01-10'],
      ['case_b', '2026-01-25'],
    ];
    expect(record(moves, known)?.uses.map(({ bookedDaysBefore }) => bookedDaysBefore)).toEqual([10, 0]);
  });
});

// of the next four days: a case known two days before is unbooked on the last two of them
it('the share not booked, day by day', () => {
  const use = (bookedDaysBefore: number | null, pieces = 1) => ({ day: 0, pieces, bookedDaysBefore });
  expect(unbookedShare([use(2)], 4)).toBe(0.5);
  expect(unbookedShare([use(9)], 4)).toBe(0);
  expect(unbookedShare([use(null)], 4)).toBe(1);
  expect(unbookedShare([use(2, 3), use(null, 1)], 4)).toBe(0.625);
});
