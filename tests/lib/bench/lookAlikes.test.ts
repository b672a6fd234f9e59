import { describe, expect, it } from 'vitest';
import { likeness, lookAlikesOf } from '@/lib/bench/lookAlikes';
import { routesFor } from '@/lib/bench/routes';
import { type Item, item } from '@/lib/catalogue/item';
import { catalogueEntries } from '@/seed/catalogue/catalogue';

/** Common practice, no source: what is easily taken for what at the bench. */
const catalogue: Item[] = catalogueEntries().map((entry) => item.parse(entry));
const of = (code: string): Item => {
  const found = catalogue.find((one) => one.code === code);
  if (!found) throw new Error(`the demo has no ${code}`);
  return found;
};

describe('look-alikes', () => {
  it.each([
    {
      why: 'a left and a right plate of one length',
      a: 'SF-DR27-R-03',
      b: 'SF-DR27-L-03',
      because: 'otherSide',
    },
    {
      why: 'screws of one family, two millimetres apart',
      a: 'CR-C35-16',
      b: 'CR-C35-18',
      because: 'nextLength',
    },
    { why: 'screws of one family, four apart', a: 'CR-C35-16', b: 'CR-C35-20', because: null },
    { why: 'screws of unlike families', a: 'CR-C35-16', b: 'SF-L35-24', because: null },
    { why: 'a plate and a screw', a: 'SF-DR27-R-03', b: 'CR-C35-16', because: null },
  ])('$why', ({ a, b, because }) => {
    expect(likeness(of(a), of(b))).toBe(because);
    expect(likeness(of(b), of(a))).toBe(because);
  });

  it('codes that read alike: letters for digits, and 6 and 9 upside down', () => {
    const hammer = of('PT-X-HAMMER');
    const coded = (code: string) => ({ ...hammer, id: `item_${code}` as never, code });
    expect(likeness(coded('SFS-06'), coded('SFS-09'))).toBe('codeReadsAlike');
    expect(likeness(coded('X-B0'), coded('X-8O'))).toBe('codeReadsAlike');
    expect(likeness(coded('X-1'), coded('X-2'))).toBeNull();
  });

  it('is mutual over the whole demo catalogue, and never of a thing with itself', () => {
    for (const one of catalogue.filter(({ kind }) => kind === 'plate' || kind === 'drillBit')) {
      for (const { item: other } of lookAlikesOf(one, catalogue)) {
        expect(other.id).not.toBe(one.id);
        expect(
          lookAlikesOf(other, catalogue).map(({ item: back }) => back.id),
          `${one.code} ${other.code}`,
        ).toContain(one.id);
      }
    }
  });
});

it('an implant and a single-use piece are discarded; nothing is straightened', () => {
  expect(routesFor({ kind: 'plate', use: 'reprocessable' })).toEqual(['discard']);
  expect(routesFor({ kind: 'drillBit', use: 'singleUse' })).toEqual(['discard']);
  expect(routesFor({ kind: 'drillBit', use: 'reprocessable' })).toEqual(['repair', 'discard']);
});
