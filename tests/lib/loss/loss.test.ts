import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lotsAtRisk, shelfTable } from '@/lib/loss/lossTables';
import { type ShelfOfItem, shelfLoss } from '@/lib/loss/shelf';
import { type SlotMove, slotAge } from '@/lib/loss/slotAge';
import { plainDate } from '@/lib/quantities/plainDate';

const TODAY = plainDate.parse('2026-01-14');
const shelf = (more: Partial<ShelfOfItem> = {}): ShelfOfItem => ({
  itemId: 'item_a',
  code: 'A',
  name: 'Locking screw',
  unitPence: 3_800,
  lots: [
    { stockId: 'stock_1', lot: 'L1', useBy: plainDate.parse('2026-07-16'), units: 4, place: 'Shelf A' },
    { stockId: 'stock_2', lot: 'L1', useBy: plainDate.parse('2027-07-16'), units: 6, place: 'Shelf B' },
  ],
  // half a unit a month, as in the worked example E1; its variance (0.27) is under its mean, so a Poisson
  months: [1, 0, 1, 0, 1, 0, 0, 1, 0, 1, 0, 1],
  ...more,
});

describe('the shelf of an item', () => {
  it('comes to the calculation as the worked example E1, heaps of one lot at two places apart', () => {
    const found = shelfLoss(shelf(), TODAY);
    if (!found) throw new Error('it can be told');
    expect(found.input).toMatchObject({ perMonth: 0.5, varianceToMean: 1 });
    // 183 and 548 days: 6.01 and 18.00 months, so that the sums are E1's within a hundredth
    expect(found.loss.lots.map(({ expectedLost }) => expectedLost)).toEqual([
      expect.closeTo(1.32, 1),
      expect.closeTo(0.85, 1),
    ]);
    const [first, second] = lotsAtRisk([found]);
    expect([first?.stockId, second?.stockId]).toEqual(['stock_1', 'stock_2']);
    expect(shelfTable(lotsAtRisk([found])).rows[0]?.slice(0, 5)).toEqual([
      'Locking screw (A)',
      'L1',
      'Shelf A',
      '2026-07-16',
      4,
    ]);
  });

  it('use that varies more than a Poisson is told so, and that nothing was used too', () => {
    expect(shelfLoss(shelf({ months: [6, 0, 0, 0, 0, 0] }), TODAY)?.input.varianceToMean).toBeCloseTo(6, 12);
    expect(shelfLoss(shelf({ months: [0, 0, 0] }), TODAY)).toMatchObject({
      neverUsed: true,
      loss: { expectedLost: 10 },
    });
    expect(shelfLoss(shelf({ months: [] }), TODAY)).toBeNull();
  });

  it('on its use-by a unit is not yet past it', () => {
    const lots = (useBy: string) => [
      { stockId: 'stock_1', lot: null, useBy: plainDate.parse(useBy), units: 1, place: 'Shelf A' },
    ];
    expect(shelfLoss(shelf({ lots: lots('2026-01-14') }), TODAY)?.loss.lots[0]?.pastUseBy).toBe(false);
    expect(shelfLoss(shelf({ lots: lots('2026-01-13') }), TODAY)?.loss.lots[0]?.pastUseBy).toBe(true);
  });
});

const at = (day: number) => `2026-02-${String(day).padStart(2, '0')}T08:00:00.000Z`;
const into = (day: number, pieces: number, oldAlready = false): SlotMove => ({
  at: at(day),
  pieces,
  oldAlready,
});

const since = (turns: readonly string[]) => (from: string | null) =>
  turns.filter((one) => from === null || one > from).length;

describe('how old the oldest piece of a slot is', () => {
  const sterilised = since([at(3), at(6), at(9), at(12)]);

  it('one piece that was replaced is as old as its replacement', () => {
    expect(slotAge([into(1, 1, true), into(5, -1), into(5, 1)], 1, sterilised)).toEqual({
      least: 3,
      most: 3,
    });
  });

  it('what was there when the record began has had the turns on record at least', () => {
    expect(slotAge([into(1, 1, true)], 1, sterilised)).toEqual({ least: 4, most: null });
  });

  it('of two pieces of which one was replaced, nobody knows which is left', () => {
    expect(slotAge([into(1, 2), into(5, -1), into(7, 1)], 2, sterilised)).toEqual({ least: 4, most: 4 });
    // both may have been replaced in turn, or one of them twice
    expect(slotAge([into(1, 2), into(5, -1), into(5, 1), into(10, -1), into(10, 1)], 2, sterilised)).toEqual({
      least: 3,
      most: 4,
    });
  });

  it('lies between the bounds whichever pieces left', () => {
    const steps = fc.array(fc.record({ kind: fc.constantFrom('in', 'out', 'turn'), pick: fc.nat(9) }), {
      maxLength: 25,
    });
    fc.assert(
      fc.property(steps, fc.nat(3), (story, began) => {
        const pieces: { since: number; old: boolean }[] = Array.from({ length: began }, () => ({
          since: 0,
          old: true,
        }));
        const moves: SlotMove[] = began > 0 ? [into(1, began, true)] : [];
        const turns: string[] = [];
        const stamp = (n: number) => new Date(Date.UTC(2026, 1, 2, 0, n)).toISOString();
        story.forEach(({ kind, pick }, n) => {
          if (kind === 'turn') turns.push(stamp(n));
          else if (kind === 'in') {
            pieces.push({ since: n, old: false });
            moves.push({ at: stamp(n), pieces: 1, oldAlready: false });
          } else if (pieces.length > 0) {
            pieces.splice(pick % pieces.length, 1);
            moves.push({ at: stamp(n), pieces: -1, oldAlready: false });
          }
        });
        if (pieces.length === 0) return;
        const ages = pieces.map(({ since, old }) => ({
          old,
          turns: turns.filter((one) => old || one > stamp(since)).length,
        }));
        const oldest = Math.max(...ages.map((one) => one.turns));
        const { least, most } = slotAge(moves, pieces.length, since(turns));
        expect(oldest).toBeGreaterThanOrEqual(least);
        if (most !== null) expect(oldest).toBeLessThanOrEqual(most);
        // where the most is told, none of what was there at the beginning is left
        if (most !== null) expect(ages.some(({ old }) => old)).toBe(false);
      }),
    );
  });
});
