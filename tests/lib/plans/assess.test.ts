import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '@/lib/catalogue/item';
import { itemId } from '@/lib/identity/ids';
import { assessPlan, stopsOf } from '@/lib/plans/assess';
import type { Construct } from '@/lib/plans/plan';
import { planCatalogueOf } from '@/lib/plans/planCatalogue';
import { planFindingSentence } from '@/lib/wording/planFindings';
import { answering, constructOf, holeOf, neutral, plateOf, screwOf, washerOf, wireOf } from './building';

const BOOKED = { limb: 'left', region: 'forearmShaft' } as const;
const MADE = [screwOf(14), screwOf(16), screwOf(18)];
const FULL = { S1: neutral(14), S2: neutral(16), S3: { purpose: 'empty' } } as const;

const codes = (construct: Construct, items: Item[] = [plateOf(), ...MADE], engine = answering()) =>
  assessPlan(construct, planCatalogueOf(items), engine, BOOKED).map(
    ({ group, code, path }) => `${group} ${code} ${path.join('/')}`,
  );

describe('assessPlan says', () => {
  const withFree = (more: object) =>
    constructOf(FULL, {
      freeScrews: [
        {
          key: 'L1',
          screwFamily: 'cortical 3.5',
          cortices: 2,
          length: { kind: 'exact', mm: 16 },
          acceptLongerMm: 0,
          washerItemId: null,
          ...more,
        },
      ],
    });
  const cases: {
    why: string;
    construct: Construct;
    items?: Item[];
    said: string[];
    engine?: ReturnType<typeof answering>;
  }[] = [
    { why: 'all decided and all fits: nothing', construct: constructOf(FULL), said: [] },
    {
      why: 'an empty plan is not a plan',
      construct: constructOf({}, { plates: [] }),
      said: ['notEstablished nothing-planned '],
    },
    {
      why: 'a hole nobody decided is not established, a wire hole nobody named is simply left',
      construct: constructOf({ S1: neutral(14) }),
      items: [
        plateOf({ holes: [holeOf('S1'), holeOf('S2'), holeOf('S3', { holeClass: 'wireHole' })] }),
        ...MADE,
      ],
      said: ['notEstablished hole-not-decided plates/0/fills/S2'],
    },
    {
      why: 'a length not stated is not established and never guessed',
      construct: constructOf({ ...FULL, S2: neutral(null) }),
      said: ['notEstablished length-not-stated plates/0/fills/S2/length'],
    },
    {
      why: 'a length between two made lengths can not be had',
      construct: constructOf({ ...FULL, S2: neutral(15) }),
      said: ['stop length-not-made plates/0/fills/S2/length'],
    },
    {
      why: 'unless a longer one is accepted',
      construct: constructOf({ ...FULL, S2: { ...neutral(15), acceptLongerMm: 2 } as never }),
      said: ['caution length-only-longer plates/0/fills/S2/length'],
    },
    {
      why: 'a length that exists but is recalled is not to be had',
      construct: constructOf(FULL),
      items: [plateOf(), screwOf(14), screwOf(16, { status: 'recalled' })],
      said: ['stop length-not-current plates/0/fills/S2/length'],
    },
    {
      why: 'a mean outside everything made is worth a caution: the bone may still want what is made',
      construct: constructOf({
        ...FULL,
        S2: { ...neutral(16), length: { kind: 'spread', meanMm: 30, sdMm: 2, sourceNote: null } } as never,
      }),
      said: ['caution spread-beyond-range plates/0/fills/S2/length'],
    },
    {
      why: 'a family the catalogue does not have',
      construct: constructOf({ ...FULL, S1: neutral(14, 'nobody makes it') }),
      said: ['stop family-unknown plates/0/fills/S1/screwFamily'],
    },
    {
      why: 'a family of which every piece is withdrawn',
      construct: constructOf({ ...FULL, S1: neutral(14, 'old') }),
      items: [plateOf(), ...MADE, screwOf(14, { screwFamily: 'old', status: 'withdrawn' })],
      said: ['stop family-not-current plates/0/fills/S1/screwFamily'],
    },
    {
      why: 'a withdrawn plate',
      construct: constructOf(FULL),
      items: [plateOf({ status: 'withdrawn' }), ...MADE],
      said: ['stop item-not-current plates/0/plateItemId'],
    },
    {
      why: 'a plate the catalogue does not have, and nothing about its holes',
      construct: constructOf(FULL),
      items: MADE,
      said: ['stop item-unknown plates/0/plateItemId'],
    },
    {
      why: 'a hole the plate does not have',
      construct: constructOf({ ...FULL, S9: { purpose: 'empty' } }),
      said: ['stop hole-unknown plates/0/fills/S9'],
    },
    {
      why: 'two plates of one name',
      construct: constructOf(FULL, {
        plates: [...constructOf(FULL).plates, ...constructOf(FULL).plates],
      }),
      said: ['stop duplicate-key plates/1/key'],
    },
    {
      why: 'a zone that runs off the plate',
      construct: constructOf(FULL, {
        plates: constructOf(FULL).plates.map((plate) => ({
          ...plate,
          zone: { fromUm: 40_000, toUm: 60_000 },
        })),
      }),
      said: ['stop zone-beyond-plate plates/0/zone/toUm'],
    },
    {
      why: 'the other limb than the case is booked for',
      construct: constructOf(FULL, { limb: 'right' }),
      said: ['stop limb-differs limb'],
    },
    {
      why: 'another region than booked: perhaps meant',
      construct: constructOf(FULL, { region: 'clavicle' }),
      said: ['caution region-differs region'],
    },
    {
      why: 'a wire thicker than the hole opens',
      construct: constructOf({
        ...FULL,
        S3: { purpose: 'temporaryWire', wireItemId: itemId.parse('item_wire') },
      }),
      items: [
        plateOf({ holes: [holeOf('S1'), holeOf('S2'), holeOf('S3', { openingUm: 1600 })] }),
        ...MADE,
        wireOf(2000),
      ],
      said: ['stop wire-too-thick plates/0/fills/S3/wireItemId'],
    },
    {
      why: 'a washer the head falls through (6 mm head, 6 mm opening)',
      construct: withFree({ washerItemId: 'item_washer' }),
      items: [plateOf(), ...MADE, washerOf(6000)],
      said: ['stop washer-does-not-fit freeScrews/0/washerItemId'],
    },
    {
      why: 'a washer of unknown opening is not a washer that fits',
      construct: withFree({ washerItemId: 'item_washer' }),
      items: [plateOf(), ...MADE, washerOf(null)],
      said: ['notEstablished washer-not-established freeScrews/0/washerItemId'],
    },
    {
      why: 'a free screw of a length nobody makes',
      construct: withFree({ length: { kind: 'exact', mm: 60 } }),
      said: ['stop length-not-made freeScrews/0/length'],
    },
    {
      why: 'what the rules refuse is a stop at its hole',
      construct: constructOf({ S1: neutral(14), S2: { purpose: 'empty' }, S3: { purpose: 'empty' } }),
      engine: answering({ seats: 'doesNotFit' }),
      said: ['stop fit plates/0/fills/S1'],
    },
    {
      why: 'what the rules can not answer is not established, never a fit',
      construct: constructOf({ S1: neutral(14), S2: { purpose: 'empty' }, S3: { purpose: 'empty' } }),
      engine: answering({ seats: 'notEstablished' }),
      said: ['notEstablished fit plates/0/fills/S1'],
    },
    {
      why: 'a plate of the other side',
      construct: constructOf(FULL),
      engine: answering({ sides: 'doesNotFit' }),
      said: ['stop fit plates/0/plateItemId'],
    },
    {
      why: 'metals in contact are said once for a family, not once a hole',
      construct: constructOf(FULL),
      engine: answering({ wearsWith: 'notEstablished' }),
      said: ['notEstablished fit plates/0'],
    },
  ];
  for (const { why, construct, items, said, engine } of cases) {
    it(why, () => expect(codes(construct, items, engine)).toEqual(said));
  }

  it('a sentence for every finding, naming the thing', () => {
    for (const { construct, items, engine } of cases) {
      const findings = assessPlan(
        construct,
        planCatalogueOf(items ?? [plateOf(), ...MADE]),
        engine ?? answering(),
        BOOKED,
      );
      for (const finding of findings) expect(planFindingSentence(finding)).toMatch(/^\S.{15,}[.:]?$/s);
    }
  });
});

describe('the order in which a plan is stated', () => {
  const holes = Array.from({ length: 6 }, (_, index) => holeOf(`S${index + 1}`));
  const plates = ['a', 'b', 'c'].map((letter) =>
    plateOf({ id: itemId.parse(`item_${letter}`), code: letter, holes }),
  );
  const fill = fc.oneof(
    fc.constant({ purpose: 'empty' as const }),
    fc.constantFrom(neutral(14), neutral(15), neutral(null), neutral(16, 'unknown')),
  );
  const planned = fc.tuple(
    fc.constantFrom('item_a', 'item_b', 'item_c', 'item_gone'),
    fc.dictionary(fc.constantFrom('S1', 'S2', 'S3', 'S9'), fill),
  );

  it('never changes what is said about it', () => {
    fc.assert(
      fc.property(fc.array(planned, { maxLength: 4 }), fc.nat(), (stated, turn) => {
        const all = stated.map(([id, fills], index) => ({
          key: `P${index + 1}`,
          plateItemId: itemId.parse(id),
          zone: null,
          principle: null,
          fills,
        }));
        const pivot = all.length === 0 ? 0 : turn % all.length;
        const turned = [...all.slice(pivot), ...all.slice(0, pivot)].map((plate) => ({
          ...plate,
          fills: Object.fromEntries(Object.entries(plate.fills).reverse()),
        }));
        const say = (list: typeof all) =>
          assessPlan(
            constructOf({}, { plates: list }),
            planCatalogueOf([...plates, ...MADE]),
            answering({ seats: 'notEstablished' }),
            BOOKED,
          ).map(({ path: _path, ...finding }) => finding);
        expect(say(turned)).toEqual(say(all));
      }),
    );
  });
});

describe('stopsOf', () => {
  it('keeps the stops alone', () => {
    const findings = assessPlan(
      constructOf({ S1: neutral(15) }),
      planCatalogueOf([plateOf(), ...MADE]),
      answering(),
      BOOKED,
    );
    expect(stopsOf(findings).map(({ code }) => code)).toEqual(['length-not-made']);
    expect(findings.length).toBeGreaterThan(1);
  });
});
