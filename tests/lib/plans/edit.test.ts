import { describe, expect, it } from 'vitest';
import { itemId } from '@/lib/identity/ids';
import { applyEdit, emptyConstruct, MOST_PLATES } from '@/lib/plans/edit';
import { beginHistory, edited, redone, undone } from '@/lib/plans/history';
import { construct as schema } from '@/lib/plans/plan';
import { readLength, writeLength } from '@/lib/plans/readLength';
import { constructOf, neutral } from './building';

const A = itemId.parse('item_plate');

describe('editing a plan', () => {
  it('gives a plate the lowest free key, so that one removed and added again has its place back', () => {
    let plan = emptyConstruct('ankle', 'left');
    for (let count = 0; count < 3; count += 1) plan = applyEdit(plan, { do: 'addPlate', plateItemId: A });
    plan = applyEdit(plan, { do: 'removePlate', plateKey: 'P2' });
    plan = applyEdit(plan, { do: 'addPlate', plateItemId: A });
    expect(plan.plates.map(({ key }) => key)).toEqual(['P1', 'P3', 'P2']);
    expect(schema.safeParse(plan).success).toBe(true);
  });

  it('never grows past what can be saved', () => {
    let plan = emptyConstruct('ankle', 'left');
    for (let count = 0; count < MOST_PLATES + 3; count += 1)
      plan = applyEdit(plan, { do: 'addPlate', plateItemId: A });
    expect(schema.safeParse(plan).success).toBe(true);
    expect(plan.plates).toHaveLength(MOST_PLATES);
  });

  it('changes one value of several screws and leaves holes without a screw alone', () => {
    const plan = constructOf({ S1: neutral(14), S2: { purpose: 'empty' }, S3: neutral(18) });
    const after = applyEdit(plan, {
      do: 'changeScrews',
      plateKey: 'P1',
      holeIds: ['S1', 'S2'],
      part: { cortices: 1 },
    });
    expect(after.plates[0]?.fills).toEqual({
      S1: { ...neutral(14), cortices: 1 },
      S2: { purpose: 'empty' },
      S3: neutral(18),
    });
  });

  it('keeps the fills of holes that the exchanged plate has too, and no zone', () => {
    const plan = applyEdit(constructOf({ S1: neutral(14), S3: neutral(18) }), {
      do: 'setZone',
      plateKey: 'P1',
      zone: { fromUm: 1, toUm: 2 },
    });
    const after = applyEdit(plan, {
      do: 'exchangePlate',
      plateKey: 'P1',
      plateItemId: A,
      holeIds: ['S1', 'S2'],
    });
    expect(after.plates[0]).toMatchObject({ zone: null, fills: { S1: neutral(14) } });
  });

  it('lays a start on the limb of the case, whatever limb it was saved for', () => {
    const after = applyEdit(emptyConstruct('ankle', 'right'), {
      do: 'layStart',
      start: constructOf({}, { limb: 'left' }),
    });
    expect(after.limb).toBe('right');
  });
});

describe('undo', () => {
  const fill = (mm: number) =>
    ({ do: 'fillHoles', plateKey: 'P1', holeIds: ['S1'], fill: neutral(mm) }) as const;

  it('goes back and forth step by step', () => {
    const begun = beginHistory(constructOf({}));
    const twice = edited(edited(begun, fill(14)), fill(16));
    expect(undone(twice).present.plates[0]?.fills).toEqual({ S1: neutral(14) });
    expect(undone(undone(undone(twice))).present).toEqual(begun.present);
    expect(redone(undone(twice)).present).toEqual(twice.present);
  });

  it('takes a run of one gesture back at once', () => {
    const dragged = [10, 11, 12].reduce(
      (history, mm) => edited(history, fill(mm), 'drag'),
      beginHistory(constructOf({})),
    );
    expect(undone(dragged).present).toEqual(constructOf({}));
  });
});

describe('a length as typed', () => {
  const cases = [
    { typed: '16', read: { kind: 'exact', mm: 16 }, why: 'a number is exact' },
    {
      typed: '2,5 mm',
      read: { kind: 'exact', mm: 2.5 },
      why: 'a decimal comma and the unit are what people type',
    },
    {
      typed: '21.7±2.6',
      read: { kind: 'spread', meanMm: 21.7, sdMm: 2.6, sourceNote: null },
      why: 'mean and spread',
    },
    {
      typed: '21.7 +- 2.6',
      read: { kind: 'spread', meanMm: 21.7, sdMm: 2.6, sourceNote: null },
      why: 'without a ± key',
    },
    { typed: ' ', read: { kind: 'notStated' }, why: 'nothing is not stated, never zero' },
    { typed: '0', read: null, why: 'no screw is 0 mm long' },
    { typed: '-4', read: null, why: 'nor less' },
    { typed: '900', read: null, why: 'nor a metre' },
    { typed: 'sixteen', read: null, why: 'words are no number' },
  ];
  for (const { typed, read, why } of cases) {
    it(`${JSON.stringify(typed)}: ${why}`, () => {
      const result = readLength(typed);
      expect(result.ok ? result.length : null).toEqual(read);
      if (result.ok) expect(readLength(writeLength(result.length))).toEqual(result);
    });
  }
});
