import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { firstOut, freeOf, type HeapFacts, inOrder, notTaken } from '@/lib/stock/firstOut';

const day = (text: string): PlainDate => plainDate.parse(text);
const TODAY = day('2026-01-14');
const heap = (stockId: string, change: Partial<HeapFacts> = {}): HeapFacts => ({
  stockId,
  useBy: null,
  metres: 10,
  quantity: 2,
  onKits: 0,
  travelling: 0,
  heldBecause: null,
  status: 'current',
  ...change,
});

// first expired, first out, and a use-by that counts through its own day: common practice, no source
describe('the order of taking', () => {
  it('is the earliest use-by, then the nearest, then by id; none stated comes last', () => {
    const heaps = [
      heap('e', { useBy: null, metres: 1 }),
      heap('d', { useBy: day('2026-03-01'), metres: 30 }),
      heap('c', { useBy: day('2026-03-01'), metres: 5 }),
      heap('b', { useBy: day('2026-03-01'), metres: 5 }),
      heap('a', { useBy: day('2026-02-01'), metres: 90 }),
    ];
    expect(inOrder(heaps, TODAY).map((one) => [one.heap.stockId, one.turn])).toEqual([
      ['a', 1],
      ['b', 2],
      ['c', 3],
      ['d', 4],
      ['e', 5],
    ]);
  });

  it('leaves out what is held, past its use-by on the day, not current, or all with kits, and says which', () => {
    const heaps = [
      heap('held', { heldBecause: 'wrongLabel', useBy: day('2026-01-20') }),
      heap('past', { useBy: day('2026-01-13') }),
      heap('today', { useBy: TODAY }),
      heap('recalled', { status: 'recalled' }),
      heap('kits', { onKits: 1, travelling: 1 }),
    ];
    const found = inOrder(heaps, TODAY);
    expect(found[0]).toMatchObject({ heap: { stockId: 'today' }, turn: 1, because: null });
    expect(Object.fromEntries(found.map((one) => [one.heap.stockId, one.because]))).toEqual({
      today: null,
      held: 'held',
      past: 'pastUseBy',
      recalled: 'notCurrent',
      kits: 'noneFree',
    });
  });

  it('goes by the day of the case: good on it, and past it the day after', () => {
    const one = heap('a', { useBy: day('2026-01-16') });
    expect(notTaken(one, day('2026-01-16'))).toBeNull();
    expect(notTaken(one, day('2026-01-17'))).toBe('pastUseBy');
  });

  it('is one order whoever asks, and never takes a later use-by before an earlier one', () => {
    const anyHeap = fc.record({
      stockId: fc.stringMatching(/^[a-z]{1,3}$/),
      useBy: fc.option(
        fc.integer({ min: 10, max: 28 }).map((of) => day(`2026-01-${of}`)),
        { nil: null },
      ),
      metres: fc.nat(3),
      quantity: fc.nat(4),
      onKits: fc.nat(2),
      travelling: fc.nat(2),
      heldBecause: fc.constantFrom(null, 'recall'),
      status: fc.constantFrom('current' as const, 'recalled' as const),
    });
    fc.assert(
      fc.property(fc.uniqueArray(anyHeap, { selector: ({ stockId }) => stockId }), (heaps) => {
        const order = inOrder(heaps, TODAY);
        expect(order).toHaveLength(heaps.length);
        expect(inOrder([...heaps].reverse(), TODAY)).toEqual(order);
        const taken = order.filter(({ turn }) => turn !== null).map((one) => one.heap);
        for (const [at, one] of taken.entries()) {
          expect(freeOf(one)).toBeGreaterThan(0);
          const next = taken[at + 1];
          if (next) expect(firstOut(one, next)).toBeLessThan(0);
          if (next?.useBy) expect(one.useBy !== null && one.useBy <= next.useBy).toBe(true);
        }
      }),
    );
  });
});
