import { describe, expect, it } from 'vitest';
import type { Construct, PlannedLength } from '@/lib/plans/plan';
import { accountOfUse } from '@/lib/usage/account';
import type { UseEntry } from '@/lib/usage/act';
import { lengthAsPlanned, planDifferences } from '@/lib/usage/differences';
import { questionsOf, questionText } from '@/lib/usage/questions';
import { stateOfUse } from '@/lib/usage/state';
import { differenceSentences } from '@/lib/wording/usage';
import { piece, reasonFor } from './entries';

const exact = (mm: number): PlannedLength => ({ kind: 'exact', mm });
const screw = (length: PlannedLength, acceptLongerMm = 0) => ({
  screwFamily: 'Cortical 3.5',
  cortices: 2 as const,
  length,
  acceptLongerMm,
});
const PLAN = {
  region: 'forearmShaft',
  limb: 'left',
  bone: 'normal',
  plates: [
    {
      key: 'P1',
      plateItemId: 'item_plate',
      zone: null,
      principle: null,
      fills: {
        h1: { purpose: 'neutral', ...screw(exact(16), 2) },
        h2: { purpose: 'empty' },
        h3: { purpose: 'temporaryWire', wireItemId: 'item_wire' },
        h10: { purpose: 'neutral', ...screw(exact(18)) },
      },
    },
  ],
  freeScrews: [{ key: 'L1', ...screw(exact(24)), washerItemId: null }],
  sharedLengthSdMm: null,
  note: null,
} as unknown as Construct;

const ITEMS: Record<
  string,
  { itemId: string; kind: string; screwFamily: string | null; lengthUm: number | null }
> = {
  item_plate: { itemId: 'item_plate', kind: 'plate', screwFamily: null, lengthUm: null },
  item_other: { itemId: 'item_other', kind: 'plate', screwFamily: null, lengthUm: null },
  item_16: { itemId: 'item_16', kind: 'screw', screwFamily: 'Cortical 3.5', lengthUm: 16_000 },
  item_20: { itemId: 'item_20', kind: 'screw', screwFamily: 'Cortical 3.5', lengthUm: 20_000 },
  item_24: { itemId: 'item_24', kind: 'screw', screwFamily: 'Cortical 3.5', lengthUm: 24_000 },
  item_lock: { itemId: 'item_lock', kind: 'screw', screwFamily: 'Locking 3.5', lengthUm: 16_000 },
  item_bare: { itemId: 'item_bare', kind: 'screw', screwFamily: 'Cortical 3.5', lengthUm: null },
};
const SLOT = { setId: 'set_a', lineId: 'line_a' };
const put = (
  itemId: string,
  place: object | null,
  outcome: 'implanted' | 'openedNotImplanted' = 'implanted',
) => piece(SLOT, outcome, { itemId: itemId as never, place: place as never });
const hole = (id: string) => ({ kind: 'hole', plate: 'P1', hole: id });
const AS_PLANNED = [
  put('item_plate', { kind: 'plate', plate: 'P1' }),
  put('item_16', hole('h1')),
  put('item_24', { kind: 'free', screw: 'L1' }),
];
const kindsOf = (entries: Parameters<typeof stateOfUse>[0]) =>
  planDifferences(PLAN, stateOfUse(entries).pieces, (id) => ITEMS[id] ?? null).map((one) =>
    'at' in one && one.at.kind === 'hole' ? `${one.kind} ${one.at.hole}` : one.kind,
  );

describe('differences from the plan', () => {
  it('are everything planned while nothing is recorded, in the order of the holes', () => {
    expect(kindsOf([])).toEqual([
      'plateNotUsed',
      'plannedNotFilled h1',
      'plannedNotFilled h10',
      'plannedNotFilled',
    ]);
  });

  it.each([
    ['a hole left empty that was planned', AS_PLANNED, ['plannedNotFilled h10']],
    ['another length', [...AS_PLANNED, put('item_20', hole('h10'))], ['otherLength h10']],
    ['another family', [...AS_PLANNED, put('item_lock', hole('h10'))], ['otherItem h10']],
    [
      'a screw with no length stated',
      [...AS_PLANNED, put('item_bare', hole('h10'))],
      ['lengthNotEstablished h10'],
    ],
    [
      'a screw in a hole to be left empty',
      [...AS_PLANNED, put('item_16', hole('h2'))],
      ['extraScrew h2', 'plannedNotFilled h10'],
    ],
    [
      'a screw where only a wire was to hold',
      [...AS_PLANNED, put('item_16', hole('h3'))],
      ['extraScrew h3', 'plannedNotFilled h10'],
    ],
    [
      'a screw in a hole the plan says nothing of',
      [...AS_PLANNED, put('item_16', hole('h4'))],
      ['extraScrew h4', 'plannedNotFilled h10'],
    ],
    [
      'two for one hole',
      [...AS_PLANNED, put('item_16', hole('h1'))],
      ['severalHere h1', 'plannedNotFilled h10'],
    ],
    [
      'another plate',
      [put('item_other', { kind: 'plate', plate: 'P1' }), ...AS_PLANNED.slice(1)],
      ['otherPlate', 'plannedNotFilled h10'],
    ],
    [
      'a screw with no place said',
      [...AS_PLANNED, put('item_16', null)],
      ['plannedNotFilled h10', 'noPlace'],
    ],
    [
      'what was tried and not implanted is none',
      [...AS_PLANNED, put('item_20', null, 'openedNotImplanted')],
      ['plannedNotFilled h10'],
    ],
  ] as const)('%s', (_why, entries, expected) => {
    expect(kindsOf(entries)).toEqual(expected);
  });

  it.each([
    // as the plan says it: exact, with so much longer accepted
    [exact(16), 0, 16_000, true],
    [exact(16), 2, 18_000, true],
    [exact(16), 2, 20_000, false],
    [exact(16), 2, 14_000, false],
    // a spread says no one length: worth a look beyond two of its standard deviations
    [{ kind: 'spread', meanMm: 21.7, sdMm: 2.6, sourceNote: null }, 0, 26_000, true],
    [{ kind: 'spread', meanMm: 21.7, sdMm: 2.6, sourceNote: null }, 0, 28_000, false],
    [{ kind: 'notStated' }, 0, 16_000, null],
    [exact(16), 0, null, null],
  ] as const)('%j and up to %i mm longer: %s is %s', (length, acceptLongerMm, um, expected) => {
    expect(lengthAsPlanned({ length, acceptLongerMm }, um)).toBe(expected);
  });

  it('are gathered by plate while holes wait', () => {
    const all = planDifferences(PLAN, [], () => null);
    expect(differenceSentences(all, (id) => id)).toEqual([
      'P1: item_plate was planned, and no plate is recorded.',
      'P1: planned, and nothing recorded, in holes h1 and h10.',
      'Planned, and nothing recorded: free screw L1.',
    ]);
  });
});

describe('what stays open', () => {
  const sources = [
    { kind: 'slot', ...SLOT, itemId: 'item_16', reusable: false, recorded: 4, counted: null },
    { kind: 'pack', pickId: 'pick_a', itemId: 'item_16', reusable: false, quantity: 2, returns: [] },
  ] as const;
  const openWith = (
    entries: Parameters<typeof stateOfUse>[0],
    more: Partial<Parameters<typeof questionsOf>[0]> = {},
  ) =>
    questionsOf({
      sources: more.sources ?? sources,
      accounts: accountOfUse(more.sources ?? sources, stateOfUse(entries)),
      differences: [],
      countQuestions: more.countQuestions ?? [],
      unopenedSets: more.unopenedSets ?? new Set(),
      pieces: stateOfUse(entries).pieces,
      asksReason: more.asksReason ?? false,
    });

  it('names packs nobody has spoken of, sets nobody has counted, and what was not found', () => {
    expect(openWith([piece({ pickId: 'pick_a' }, 'implanted'), piece(SLOT, 'notFound')])).toEqual([
      { kind: 'notFound', key: 'set_a line_a', pieces: 1 },
      { kind: 'stillOut', key: 'pick_a', pieces: 1 },
      { kind: 'notCounted', key: 'set_a', setId: 'set_a' },
    ]);
  });

  it('asks a count in theatre’s question once, and of an unopened set nothing', () => {
    const asked = [{ id: 'question_a', setId: 'set_a', lineId: 'line_a' }];
    expect(openWith([piece(SLOT, 'notFound')], { countQuestions: asked }).map(({ kind }) => kind)).toEqual([
      'stillOut',
      'notCounted',
      'countQuestion',
    ]);
    expect(openWith([], { unopenedSets: new Set(['set_a']) }).map(({ kind }) => kind)).toEqual(['stillOut']);
  });

  it('asks why something was wasted only where the hospital does, and until somebody has said', () => {
    const dropped = piece(SLOT, 'droppedOrDamaged');
    const kinds = (more: Parameters<typeof openWith>[1], ...entries: UseEntry[]) =>
      openWith([dropped, ...entries], more).flatMap((one) => (one.kind === 'noReason' ? [one] : []));
    expect(kinds({})).toEqual([]);
    expect(kinds({ asksReason: true })).toEqual([{ kind: 'noReason', key: 'set_a line_a', pieces: 1 }]);
    expect(kinds({ asksReason: true }, reasonFor(dropped, 'reason_a'))).toEqual([]);
    expect(
      kinds({ asksReason: true }, reasonFor(dropped, 'reason_a'), reasonFor(dropped, null)),
    ).toHaveLength(1);
    // what is implanted needs none
    expect(
      openWith([piece(SLOT, 'implanted')], { asksReason: true }).some(({ kind }) => kind === 'noReason'),
    ).toBe(false);
  });

  it('is nothing once every piece is accounted for', () => {
    const counted = [
      { ...sources[0], counted: 3 },
      { ...sources[1], quantity: 1 },
    ];
    expect(
      openWith([piece(SLOT, 'implanted'), piece({ pickId: 'pick_a' }, 'implanted')], { sources: counted }),
    ).toEqual([]);
    const off = openWith([piece({ pickId: 'pick_a' }, 'implanted')], { sources: counted });
    expect(off).toEqual([{ kind: 'countDiffers', key: 'set_a line_a', back: 4, counted: 3 }]);
    expect(new Set(off.map(questionText)).size).toBe(1);
  });
});
