import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareConstructs } from '@/lib/plans/compare';
import { applyEdit } from '@/lib/plans/edit';
import { planChangeWords } from '@/lib/wording/planChanges';
import { constructOf, neutral } from './building';

const BASE = constructOf({ S1: neutral(14), S2: { purpose: 'empty' } }, { note: 'both trays' });
const words = (after: typeof BASE) =>
  compareConstructs(BASE, after).map((change) => {
    const { about, before, after: now } = planChangeWords(change, (id) => id);
    return `${about}: ${before} → ${now}`;
  });

describe('what changed between two versions, in words', () => {
  const cases: { why: string; after: typeof BASE; said: string[] }[] = [
    {
      why: 'a hole filled that was empty',
      after: applyEdit(BASE, { do: 'fillHoles', plateKey: 'P1', holeIds: ['S2'], fill: neutral(16) }),
      said: ['Plate P1, hole S2: left empty → neutral, cortical 3.5, 16 mm, both cortices'],
    },
    {
      why: 'a hole taken back to not decided',
      after: applyEdit(BASE, { do: 'fillHoles', plateKey: 'P1', holeIds: ['S1'], fill: null }),
      said: ['Plate P1, hole S1: neutral, cortical 3.5, 14 mm, both cortices → not decided'],
    },
    {
      why: 'a plate removed is one change, not one a hole',
      after: applyEdit(BASE, { do: 'removePlate', plateKey: 'P1' }),
      said: ['Plate P1: item_plate → null'],
    },
    {
      why: 'the zone marked',
      after: applyEdit(BASE, { do: 'setZone', plateKey: 'P1', zone: { fromUm: 12_000, toUm: 20_500 } }),
      said: ['Plate P1, fracture zone: not marked → from 12 to 20.5 mm'],
    },
    {
      why: 'bone and note',
      after: { ...BASE, bone: 'poor', note: null },
      said: ['Bone: Normal → Poor', 'Note: both trays → none'],
    },
    {
      why: 'a free screw added',
      after: applyEdit(BASE, {
        do: 'addFreeScrew',
        screw: {
          screwFamily: 'cortical 3.5',
          cortices: 1,
          length: { kind: 'spread', meanMm: 21.7, sdMm: 2.6, sourceNote: null },
          acceptLongerMm: 2,
          washerItemId: null,
        },
      }),
      said: ['Free screw L1: null → cortical 3.5, 21.7 ± 2.6 mm, one cortex, up to 2 mm longer accepted'],
    },
  ];
  for (const { why, after, said } of cases) it(why, () => expect(words(after)).toEqual(said));
});

describe('compareConstructs', () => {
  const fill = fc.constantFrom(neutral(14), neutral(16), { purpose: 'empty' as const });
  const construct = fc
    .tuple(
      fc.dictionary(fc.constantFrom('S1', 'S2', 'S3'), fill),
      fc.constantFrom('normal' as const, 'poor' as const),
    )
    .map(([fills, bone]) => constructOf(fills, { bone }));

  it('says nothing about equal plans, whatever order their holes are written in', () => {
    fc.assert(
      fc.property(construct, (one) => {
        const turned = {
          ...one,
          plates: one.plates.map((plate) => ({
            ...plate,
            fills: Object.fromEntries(Object.entries(plate.fills).reverse()),
          })),
        };
        expect(compareConstructs(one, turned)).toEqual([]);
      }),
    );
  });

  it('finds the same differences from either side', () => {
    fc.assert(
      fc.property(construct, construct, (one, other) => {
        const there = compareConstructs(one, other);
        const back = compareConstructs(other, one);
        expect(back.map(({ kind }) => kind)).toEqual(there.map(({ kind }) => kind));
        expect(there.length === 0).toBe(JSON.stringify(sorted(one)) === JSON.stringify(sorted(other)));
      }),
    );
  });
});

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => [key, sorted(inner)]),
  );
}
