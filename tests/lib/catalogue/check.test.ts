import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gs1CheckDigit, hasValidCheckDigit } from '@/lib/calculations/identifier/checkDigits';
import { checkItem } from '@/lib/catalogue/check';
import type { Item } from '@/lib/catalogue/item';
import { missingValues } from '@/lib/catalogue/missing';
import { bitFor, holeFor, plateFor, screwFor, sleeveFor } from '../../fixtures/catalogueItems';

const codes = (item: Item) => checkItem(item).map(({ path, code }) => `${path.join('.')} ${code}`);

describe('GS1 check digits', () => {
  // source: GS1 General Specifications, modulo-10 check digit; worked keys from gs1india.org, gs1.se and the GS1 syntax dictionary
  it.each(['8904000210037', '7300011000017', '1234567890128', '12345678901231', '09521234543213'])(
    '%s is valid',
    (key) => {
      expect(hasValidCheckDigit(key)).toBe(true);
    },
  );
  it.each(['12345673', '1234567890129', '12345678901232'])('%s is not', (key) => {
    expect(hasValidCheckDigit(key)).toBe(false);
  });
  it('finds every single wrong digit', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{13}$/),
        fc.nat(12),
        fc.integer({ min: 1, max: 9 }),
        (body, at, by) => {
          const key = body + gs1CheckDigit(body);
          const wrong = key.slice(0, at) + ((Number(key[at]) + by) % 10) + key.slice(at + 1);
          expect(hasValidCheckDigit(key)).toBe(true);
          expect(hasValidCheckDigit(wrong)).toBe(false);
        },
      ),
    );
  });
});

describe('checkItem', () => {
  it('finds nothing wrong with sound items', () => {
    for (const item of [plateFor(), screwFor(), bitFor(), sleeveFor()]) expect(checkItem(item)).toEqual([]);
  });

  it.each<[string, Item, string]>([
    ['a core as thick as the thread', screwFor({ coreUm: 3_500 }), 'coreUm core-not-below-thread'],
    ['a thread that does not go under the head', screwFor({ headUm: 3_400 }), 'threadUm thread-beyond-head'],
    [
      'a partial thread without a shaft',
      screwFor({ screwKind: 'cancellousPartial', threadLengthUm: 16_000 }),
      'shaftUm partial-thread-without-shaft',
    ],
    [
      'more thread than screw',
      screwFor({ threadLengthUm: 40_000 }),
      'threadLengthUm thread-longer-than-screw',
    ],
    [
      'a locking family on a plain head',
      screwFor({ lockingFamily: 'alder-35' }),
      'lockingFamily family-without-threaded-head',
    ],
    [
      'a locking screw with a plain head',
      screwFor({ screwKind: 'locking' }),
      'head locking-without-threaded-head',
    ],
    [
      'a bore in a solid screw',
      screwFor({ cannulationUm: 1_200 }),
      'cannulationUm cannulation-of-solid-screw',
    ],
    [
      'a hexagon wider than the head',
      screwFor({ drive: { form: 'hexagonSocket', acrossFlatsUm: 6_500 } }),
      'drive.acrossFlatsUm drive-beyond-head',
    ],
    ['a screw of half a metre', screwFor({ lengthUm: 500_000 }), 'lengthUm out-of-range'],
    ['a screw with a side', screwFor({ side: 'left' }), 'side side-of-sideless'],
    ['a straight plate for one side', plateFor({ side: 'left' }), 'side side-of-symmetrical-plate'],
    ['a bit wider than long', bitFor({ diameterUm: 12_000, lengthUm: 11_000 }), 'diameterUm wider-than-long'],
    [
      'a sleeve with its bore in the wall',
      sleeveFor({ ends: [{ ...sleeveEnd(), boreUm: 5_000 }, sleeveEnd()] }),
      'ends.0.boreUm bore-not-below-outside',
    ],
    ['a wrong check digit', bitFor({ gtin: '09521234543214' }), 'gtin gtin-check-digit'],
    [
      'a limit on what is used once',
      plateFor({ reprocessingLimit: 40 }),
      'reprocessingLimit limit-of-single-use',
    ],
    [
      'two holes of one id',
      plateFor({ holes: [holeFor(), holeFor({ alongUm: 30_000 })] }),
      'holes.1.id duplicate-hole-id',
    ],
    [
      'a hole past the plate’s end',
      plateFor({ holes: [holeFor({ alongUm: 98_000 })] }),
      'holes.0.alongUm hole-off-plate',
    ],
    [
      'a hole beside the plate',
      plateFor({ holes: [holeFor({ acrossUm: 6_000 })] }),
      'holes.0.acrossUm hole-off-plate',
    ],
    [
      'a hole through the edge',
      plateFor({ holes: [holeFor({ acrossUm: 3_000, alongUm: 40_000 })] }),
      'holes.0.acrossUm hole-breaks-edge',
    ],
    [
      'two holes that run into each other',
      plateFor({ holes: [holeFor(), holeFor({ id: 'S2', alongUm: 13_000 })] }),
      'holes.1.alongUm holes-overlap',
    ],
    [
      'an opening wider than its seat',
      plateFor({ holes: [holeFor({ openingUm: 7_000 })] }),
      'holes.0.openingUm opening-beyond-seat',
    ],
    [
      'a slot shorter than it is wide',
      plateFor({ holes: [holeFor({ holeClass: 'elongatedSlot', slotUm: 6_000 })] }),
      'holes.0.slotUm slot-shorter-than-opening',
    ],
    [
      'a locking family on a plain hole',
      plateFor({ holes: [holeFor({ lockingFamily: 'alder-35' })] }),
      'holes.0.lockingFamily no-threaded-zone',
    ],
  ])('%s', (_why, item, expected) => {
    expect(codes(item)).toContain(expected);
  });

  it('says nothing about values nobody has stated', () => {
    expect(checkItem(screwFor({ coreUm: null, threadUm: null, headUm: null, lengthUm: null }))).toEqual([]);
    expect(checkItem(plateFor({ widthUm: null, lengthUm: null }))).toEqual([]);
  });

  it('lets a hole move along the middle of a straight plate wherever its edge stays on it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 97_000 }), (alongUm) => {
        const told = codes(plateFor({ holes: [holeFor({ alongUm })] }));
        // the plate's ends are half circles of 5.5 mm; the hole's seat is 3.25 mm about its centre
        expect(told).toEqual(
          alongUm >= 3_260 && alongUm <= 93_740
            ? []
            : alongUm > 3_240 && alongUm < 93_760
              ? told
              : [expect.anything()],
        );
      }),
    );
  });
});

describe('missingValues', () => {
  it('names what a rule may ask for and nobody has stated', () => {
    expect(missingValues(screwFor({ coreUm: null, tip: null }))).toEqual(['coreUm', 'tip']);
    expect(missingValues(plateFor({ side: 'either', holes: [holeFor({ openingUm: null })] }))).toEqual([
      'holes.S1.openingUm',
    ]);
  });
  it('does not ask a solid screw for its cannulation', () => {
    expect(missingValues(screwFor())).toEqual([]);
  });
});

function sleeveEnd() {
  const [end] = sleeveFor().ends;
  if (!end) throw new Error('the fixture sleeve has ends');
  return end;
}
