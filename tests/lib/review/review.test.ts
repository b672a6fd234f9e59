import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '@/lib/catalogue/item';
import { type ItemId, lineId, setId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { lineDemands } from '@/lib/review/lineDemand';
import { evidenceOf, type PastCase } from '@/lib/review/pastCase';
import { askedMonths, periodUntil } from '@/lib/review/period';
import { askedSince, newlyShort, removedItems, shortCases } from '@/lib/review/shortCases';
import { overlapOf, setUses } from '@/lib/review/wholeSets';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import { bit, cortical, id, WORLD } from '../../fixtures/kitWorld';

const screw = cortical(16);
const drill = bit('REVIEW-25', 2_500);
const ITEMS = new Map<ItemId, Item>([...WORLD, screw, drill].map((item) => [item.id, item]));

let made = 0;
function line(itemId: ItemId, more: Partial<ConfigurationLine> = {}): ConfigurationLine {
  made += 1;
  return {
    id: lineId.parse(`line_review-${made}`),
    itemId,
    layer: 1,
    row: 1,
    slot: made,
    rackItemId: null,
    expected: 2,
    minimum: 0,
    mustHaveClass: 2,
    substitutes: [],
    ...more,
  };
}

const SET = setId.parse('set_one');
let counted = 0;
function past(more: Partial<PastCase> = {}): PastCase {
  counted += 1;
  return {
    caseId: `case_${counted}`,
    reference: `LM-26-${counted}`,
    on: plainDate.parse('2026-01-10'),
    setIds: [SET],
    used: new Map(),
    fromPacks: new Map(),
    usedSets: new Set(),
    construct: null,
    couldServe: null,
    ...more,
  };
}
const using = (pieces: number, item: ItemId = screw.id) => past({ used: new Map([[item, pieces]]) });

describe('what past cases asked of a line', () => {
  it('implants are counted as recorded, instruments as the plan could be served by them, the rest not at all', () => {
    expect(evidenceOf(screw)).toBe('recorded');
    expect(evidenceOf(drill)).toBe('planned');
    expect(evidenceOf({ kind: 'drillBit', use: 'singleUse' })).toBe('recorded');
    expect(evidenceOf({ kind: 'reductionForceps', use: 'reprocessable' })).toBe('none');
    expect(evidenceOf({ kind: 'generalInstrument', use: 'reprocessable' })).toBe('none');
  });

  it('a case of which nobody recorded what was used is not a case without a use', () => {
    const [demand] = lineDemands([line(screw.id)], ITEMS, [using(1), past({ used: null }), using(0)]);
    expect(demand).toMatchObject({ cases: 2, usedIn: [{ pieces: 1, cases: 1 }] });
  });

  it('an instrument counts over cases with a confirmed plan alone', () => {
    const cases = [past({ couldServe: new Set([drill.id]) }), past({ couldServe: new Set() }), past()];
    const [demand] = lineDemands([line(drill.id)], ITEMS, cases);
    expect(demand).toMatchObject({ evidence: 'planned', cases: 2, usedIn: [{ pieces: 1, cases: 1 }] });
  });

  it('of two lines of one item the back-up is asked last, wherever it lies', () => {
    const backUp = line(screw.id, { mustHaveClass: 3, layer: 1, expected: 1 });
    const first = line(screw.id, { mustHaveClass: 2, layer: 2, expected: 2 });
    const found = lineDemands([backUp, first], ITEMS, [using(1), using(2), using(4)]);
    expect(found.map(({ line: { id: one }, usedIn }) => [one, usedIn])).toEqual([
      [backUp.id, [{ pieces: 2, cases: 1 }]],
      [
        first.id,
        [
          { pieces: 1, cases: 1 },
          { pieces: 2, cases: 2 },
        ],
      ],
    ]);
  });

  it('no piece is lost or counted twice over the lines of an item', () => {
    const lines = fc.array(fc.record({ expected: fc.integer({ min: 1, max: 6 }), back: fc.boolean() }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(lines, fc.array(fc.nat(20), { maxLength: 12 }), (raw, uses) => {
        const all = raw.map(({ expected, back }) =>
          line(screw.id, { expected, mustHaveClass: back ? 3 : 1 }),
        );
        const found = lineDemands(
          all,
          ITEMS,
          uses.map((pieces) => using(pieces)),
        );
        const pieces = found
          .flatMap(({ usedIn }) => usedIn ?? [])
          .reduce((sum, one) => sum + one.pieces * one.cases, 0);
        expect(pieces).toBe(uses.reduce((sum, one) => sum + one, 0));
        for (const { cases } of found) expect(cases).toBe(uses.length);
      }),
    );
  });
});

describe('cases that would have run short', () => {
  const none = () => new Map<string, string>();
  const six = [line(screw.id, { expected: 4 }), line(screw.id, { expected: 2 })];
  const three = [line(screw.id, { expected: 3 })];

  it('are those that used more than all lines of the item hold together', () => {
    const cases = [using(6), using(7), using(3)];
    expect(shortCases(six, cases, none)).toEqual([
      expect.objectContaining({ caseId: cases[1]?.caseId, ranOut: [{ itemId: screw.id, used: 7, held: 6 }] }),
    ]);
  });

  it('newly short is what the version in force would have held', () => {
    const cases = [using(6), using(7), using(3)];
    const [before, after] = [shortCases(six, cases, none), shortCases(three, cases, none)];
    expect(after.map(({ caseId }) => caseId)).toEqual([cases[0]?.caseId, cases[1]?.caseId]);
    // the case of seven was short already, and is short of more now
    expect(newlyShort(before, after).map(({ caseId }) => caseId)).toEqual([
      cases[0]?.caseId,
      cases[1]?.caseId,
    ]);
    expect(newlyShort(after, after)).toEqual([]);
    expect(newlyShort(after, before)).toEqual([]);
  });

  it('a need of the plan that the lines do not meet counts too, once it is new', () => {
    const planned = past({ construct: {} as PastCase['construct'] });
    const unmet =
      (...names: string[]) =>
      () =>
        new Map(names.map((name) => [name, name]));
    const before = shortCases(six, [planned], unmet('wire'));
    const after = shortCases(six, [planned], unmet('wire', 'drilling'));
    expect(newlyShort(before, after)).toMatchObject([{ unmet: ['drilling'], ranOut: [] }]);
  });

  it('holding more never makes a case short that was not', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(12), { maxLength: 10 }), fc.nat(8), fc.nat(4), (uses, held, more) => {
        const cases = uses.map((pieces) => using(pieces));
        const of = (expected: number) => shortCases([{ itemId: screw.id, expected }], cases, none);
        expect(of(held).length).toBe(uses.filter((pieces) => pieces > held).length);
        expect(newlyShort(of(held), of(held + more))).toEqual([]);
      }),
    );
  });
});

describe('asked for after it was taken out', () => {
  const versions = (...items: (readonly ItemId[])[]) =>
    items.map((held, at) => ({ version: at + 1, from: `2026-0${at + 1}-01`, items: new Set(held) }));

  it('names the version that took it out, and forgets what came back', () => {
    const [a, b, c] = [id('a'), id('b'), id('c')];
    expect(removedItems(versions([a, b, c], [a, c], [a]))).toEqual([
      { itemId: b, version: 2, since: '2026-02-01' },
      { itemId: c, version: 3, since: '2026-03-01' },
    ]);
    expect(removedItems(versions([a, b], [a], [a, b]))).toEqual([]);
    // taken out, put back, taken out again: it counts from the last time
    expect(removedItems(versions([a, b], [a], [a, b], [a]))).toEqual([
      { itemId: b, version: 4, since: '2026-04-01' },
    ]);
  });

  it('counts cases from that day on, and says where nobody could know', () => {
    const removed = { itemId: screw.id, version: 2, since: '2026-01-10' };
    const cases = [
      { ...using(1), on: plainDate.parse('2026-01-09') },
      { ...using(1), on: plainDate.parse('2026-01-10') },
      { ...using(0), on: plainDate.parse('2026-01-11') },
      { ...past({ used: null }), on: plainDate.parse('2026-01-12') },
    ];
    expect(askedSince(removed, screw, cases)).toMatchObject({
      cases: 2,
      asked: [{ caseId: cases[1]?.caseId }],
    });
    expect(askedSince(removed, undefined, cases)).toBeNull();
  });
});

describe('whole sets', () => {
  it('a set counts as unused only where use and plan are both known', () => {
    const held = new Set([drill.id]);
    const sets = [
      { id: SET, code: 'ONE' },
      { id: setId.parse('set_two'), code: 'TWO' },
    ];
    const cases = [
      past({ couldServe: new Set() }),
      past({ couldServe: new Set([drill.id]) }),
      past({ couldServe: null }),
      past({ used: null, couldServe: new Set() }),
      past({ couldServe: new Set(), usedSets: new Set([SET]) }),
    ];
    expect(setUses(sets, cases, held)).toEqual([
      { setId: SET, code: 'ONE', cases: 5, lastOn: '2026-01-10', unused: 1 },
      { setId: 'set_two', code: 'TWO', cases: 0, lastOn: null, unused: 0 },
    ]);
  });

  it('two configurations are alike both ways round, and wholly only where they hold the same', () => {
    const held = fc.array(
      fc.record({
        itemId: fc.constantFrom(id('a'), id('b'), id('c')),
        expected: fc.integer({ min: 1, max: 5 }),
      }),
      {
        minLength: 1,
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(held, held, (a, b) => {
        const [one, other] = [overlapOf(a, b), overlapOf(b, a)];
        expect(other).toEqual({ ...one, onlyFirst: one.onlySecond, onlySecond: one.onlyFirst });
        expect(one.shared + one.onlyFirst + one.onlySecond).toBe(one.merged);
        expect(overlapOf(a, [...a].reverse()).share).toBe(1);
        expect(one.share === 1).toBe(one.onlyFirst + one.onlySecond === 0);
      }),
    );
  });
});

it('a period ends today and begins so many months before', () => {
  const today = plainDate.parse('2026-01-14');
  expect(periodUntil(today, 12)).toEqual({ from: '2025-01-15', until: '2026-01-14' });
  expect([askedMonths('3'), askedMonths('7'), askedMonths(undefined), askedMonths(['12'])]).toEqual([
    3, 24, 24, 24,
  ]);
});
