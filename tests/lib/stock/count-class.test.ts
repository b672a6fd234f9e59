import { describe, expect, it } from 'vitest';
import { type ClassFacts, classesByMustHave, classesByValue } from '@/lib/stock/countClass';

const fact = (itemId: string, used: number, unitPence: number | null): ClassFacts => ({
  itemId,
  used,
  unitPence,
  mustHaveClass: null,
});

// classes at 80 % and 95 % of the value of use: common practice, no source
describe('classes by value of use', () => {
  it('are A up to 80 % of the value, B up to 95 %, and C, each item with the border it reaches over', () => {
    const classes = classesByValue([
      fact('a', 70, 100),
      // from 70 to 85 %: reaches over 80 %
      fact('b', 15, 100),
      // from 85 to 95 %
      fact('c', 10, 100),
      // from 95 %
      fact('d', 5, 100),
      fact('unused', 0, 100_000),
    ]);
    expect(Object.fromEntries(classes)).toEqual({ a: 'A', b: 'A', c: 'B', d: 'C', unused: 'C' });
  });

  it('make the one item that is all of it A, and nothing A where nothing was used', () => {
    expect(Object.fromEntries(classesByValue([fact('a', 1, 1), fact('b', 0, 1)]))).toEqual({
      a: 'A',
      b: 'C',
    });
    expect(Object.fromEntries(classesByValue([fact('a', 0, 1)]))).toEqual({ a: 'C' });
  });

  it('count what was used and has no stated price as often as A, without taking a share of the value', () => {
    const classes = classesByValue([fact('unpriced', 1, null), fact('idle', 0, null), fact('a', 1, 10)]);
    expect(Object.fromEntries(classes)).toEqual({ unpriced: 'A', idle: 'C', a: 'A' });
  });
});

describe('classes by must-have class', () => {
  it('are A for 1, B for 2, and C for the rest', () => {
    const facts = ([1, 2, 3, 4, null] as const).map((mustHaveClass) => ({
      ...fact(String(mustHaveClass), 1, 1),
      mustHaveClass,
    }));
    expect([...classesByMustHave(facts).values()]).toEqual(['A', 'B', 'C', 'C', 'C']);
  });
});
