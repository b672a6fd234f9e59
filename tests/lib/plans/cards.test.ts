import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chosenVersions } from '@/app/plans/_parts/chosen-versions';
import { itemId, startId } from '@/lib/identity/ids';
import { type CardBody, checkCard, mayBeExtra } from '@/lib/plans/card';
import { compareCards } from '@/lib/plans/compareCards';
import type { Construct, PlannedPlate } from '@/lib/plans/plan';
import { startUseFigures } from '@/lib/plans/startUse';
import { startUseSentence } from '@/lib/wording/cards';
import { fillGroups } from '@/lib/wording/fillGroups';

const A = itemId.parse('item_a');
const B = itemId.parse('item_b');
const CARD: CardBody = {
  startIds: [startId.parse('start_one'), startId.parse('start_two')],
  extras: [
    { itemId: A, quantity: 2, note: null },
    { itemId: B, quantity: 1, note: 'at hand' },
  ],
  note: null,
};

describe('a card', () => {
  it('never asks for an implant, or for what holds instruments', () => {
    for (const kind of ['plate', 'screw', 'washer', 'rack', 'basket', 'container'] as const)
      expect(mayBeExtra(kind)).toBe(false);
    for (const kind of [
      'generalInstrument',
      'consumable',
      'reductionForceps',
      'guideWire',
      'driver',
    ] as const)
      expect(mayBeExtra(kind)).toBe(true);
  });

  it('is refused with every fault', () => {
    const wrong = checkCard({
      startIds: ['case_one'],
      extras: [{ itemId: A, quantity: 0, note: null, price: 1 }],
      note: 'x'.repeat(1_001),
    });
    expect(wrong.ok ? [] : wrong.problems.map(({ path }) => path.join('.')).sort()).toEqual([
      'extras.0',
      'extras.0.quantity',
      'note',
      'startIds.0',
    ]);
    expect(checkCard(CARD)).toEqual({ ok: true, value: CARD });
  });

  it('differs from itself in nothing, in whatever order it is written', () => {
    expect(
      compareCards(CARD, {
        ...CARD,
        startIds: [...CARD.startIds].reverse(),
        extras: [...CARD.extras].reverse(),
      }),
    ).toEqual([]);
  });

  it('differs in what was added, taken out and changed', () => {
    const after: CardBody = {
      startIds: [startId.parse('start_two'), startId.parse('start_three')],
      extras: [{ itemId: B, quantity: 3, note: null }],
      note: 'Arm table',
    };
    expect(compareCards(CARD, after)).toEqual([
      { kind: 'startAdded', startId: 'start_three' },
      { kind: 'startRemoved', startId: 'start_one' },
      { kind: 'quantity', itemId: B, before: 1, after: 3 },
      { kind: 'extraNote', itemId: B, before: 'at hand', after: null },
      { kind: 'extraRemoved', extra: CARD.extras[0] },
      { kind: 'note', before: null, after: 'Arm table' },
    ]);
  });

  const extra = fc.record({
    itemId: fc.constantFrom('item_a', 'item_b', 'item_c', 'item_d').map((id) => itemId.parse(id)),
    quantity: fc.integer({ min: 1, max: 3 }),
    note: fc.constantFrom(null, 'x', 'y'),
  });
  const anyCard: fc.Arbitrary<CardBody> = fc.record({
    startIds: fc.uniqueArray(fc.constantFrom('start_a', 'start_b', 'start_c').map((id) => startId.parse(id))),
    extras: fc.uniqueArray(extra, { selector: (one) => one.itemId }),
    note: fc.constantFrom(null, 'x'),
  });
  it('and the changes, applied to the one, give the other', () => {
    fc.assert(
      fc.property(anyCard, anyCard, (before, after) => {
        const starts = new Set(before.startIds);
        const extras = new Map(before.extras.map((one) => [one.itemId, one]));
        let { note } = before;
        for (const change of compareCards(before, after)) {
          if (change.kind === 'startAdded') starts.add(change.startId);
          else if (change.kind === 'startRemoved') starts.delete(change.startId);
          else if (change.kind === 'extraAdded') extras.set(change.extra.itemId, change.extra);
          else if (change.kind === 'extraRemoved') extras.delete(change.extra.itemId);
          else if (change.kind === 'note') note = change.after;
          else {
            const old = extras.get(change.itemId);
            if (!old) throw new Error('a change of what was not there');
            extras.set(
              change.itemId,
              change.kind === 'quantity'
                ? { ...old, quantity: change.after }
                : { ...old, note: change.after },
            );
          }
        }
        expect(starts).toEqual(new Set(after.startIds));
        expect(extras).toEqual(new Map(after.extras.map((one) => [one.itemId, one])));
        expect(note).toBe(after.note);
      }),
    );
  });
});

describe('how a start fared', () => {
  const plate: PlannedPlate = {
    key: 'P1',
    plateItemId: A,
    zone: null,
    principle: null,
    fills: { S1: { purpose: 'empty' }, S2: { purpose: 'empty' } },
  };
  const start: Construct = {
    region: 'ankle',
    limb: null,
    bone: 'normal',
    plates: [plate],
    freeScrews: [],
    sharedLengthSdMm: null,
    note: null,
  };
  const forCase = (change: Partial<Construct> = {}): Construct => ({
    ...start,
    limb: 'left',
    note: 'for a case',
    ...change,
  });
  const wire = (hole: string) => ({
    plates: [
      { ...plate, fills: { ...plate.fills, [hole]: { purpose: 'temporaryWire' as const, wireItemId: B } } },
    ],
  });

  it('counts cases, and of those with a confirmed plan the ones that differ', () => {
    const figures = startUseFigures([
      { begunFrom: start, confirmed: forCase() },
      { begunFrom: start, confirmed: forCase({ ...wire('S1'), bone: 'poor' }) },
      { begunFrom: start, confirmed: forCase(wire('S1')) },
      { begunFrom: start, confirmed: null },
    ]);
    expect(figures).toEqual({
      used: 4,
      confirmed: 3,
      changed: 2,
      mostChanged: [
        { about: 'Plate P1, hole S1', cases: 2 },
        { about: 'Bone', cases: 1 },
      ],
    });
    expect(startUseSentence(figures)).toBe(
      '4 cases began from it; 3 of them have a confirmed plan, and 2 of 3 were changed.',
    );
  });

  it('takes side and note for the case’s own', () => {
    expect(startUseFigures([{ begunFrom: { ...start, limb: 'right' }, confirmed: forCase() }])).toMatchObject(
      { changed: 0 },
    );
  });

  it('says nothing where there is nothing to say', () => {
    expect(startUseSentence(startUseFigures([]))).toBe('No case has begun from it yet.');
    expect(startUseSentence(startUseFigures([{ begunFrom: start, confirmed: null }]))).toBe(
      'One case began from it; none has a confirmed plan yet.',
    );
    expect(startUseSentence(startUseFigures([{ begunFrom: start, confirmed: forCase() }]))).toBe(
      'One case began from it; its plan is confirmed, and was not changed.',
    );
  });
});

it('says holes that take the same together', () => {
  const fills = {
    S10: { purpose: 'empty' },
    S2: { purpose: 'empty' },
    S1: { purpose: 'temporaryWire', wireItemId: B },
  } as const;
  expect(fillGroups(fills, () => 'Wire 1.6')).toEqual([
    'S1: temporary wire, Wire 1.6',
    'S2 and S10: left empty',
  ]);
});

describe('two versions asked for in an address', () => {
  const versions = [{ version: 3 }, { version: 2 }, { version: 1 }];
  it.each([
    [{}, 2, 3],
    [{ from: '1' }, 1, 3],
    [{ from: '3', to: '1' }, 3, 1],
    [{ from: '9', to: 'x' }, 2, 3],
  ])('%o', (asked, before, after) => {
    expect(chosenVersions(versions, asked)).toEqual({
      before: { version: before },
      after: { version: after },
    });
  });
  it('of one there is only itself, and of none nothing', () => {
    expect(chosenVersions([{ version: 1 }], {})).toEqual({ before: { version: 1 }, after: { version: 1 } });
    expect(chosenVersions([], {})).toBeNull();
  });
});
