import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareFacts } from '@/lib/changes/facts';
import { lacksAndOver, refittedStore } from '@/lib/changes/refitted';
import { compareTrials, type Trial, trialsAgree, turnOf } from '@/lib/changes/trial';
import { versionWarnings } from '@/lib/changes/versionWarnings';
import { itemId, lineId, setId } from '@/lib/identity/ids';
import type { Store } from '@/lib/kits/store';
import type { ConfigurationLine, MustHaveClass } from '@/lib/sets/configuration';
import type { HeldLine } from '@/lib/sets/holdings';
import { lookedSentence } from '@/lib/wording/changes';

const fact = fc.record({
  about: fc.constantFrom('kit', 'sets', 'short'),
  say: fc.constantFrom('a', 'b', 'c', 'd'),
});

describe('comparing facts', () => {
  it('finds nothing in the same facts, in whatever order and however often they are said', () => {
    fc.assert(
      fc.property(fc.array(fact), fc.infiniteStream(fc.nat()), (facts, numbers) => {
        const shuffled = [...facts, ...facts]
          .map((one) => ({ one, at: numbers.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ one }) => one);
        expect(compareFacts(facts, shuffled)).toEqual([]);
      }),
    );
  });

  it('turns round when before and after change places, and says both sides of each', () => {
    fc.assert(
      fc.property(fc.array(fact), fc.array(fact), (before, after) => {
        const there = compareFacts(before, after);
        const back = new Map(compareFacts(after, before).map((one) => [one.about, one]));
        expect(there).toHaveLength(back.size);
        for (const one of there)
          expect(back.get(one.about)).toEqual({ about: one.about, before: one.after, after: one.before });
      }),
    );
  });

  it('says only what differs about a thing', () => {
    const before = ['a', 'b'].map((say) => ({ about: 'short', say }));
    const after = ['b', 'c'].map((say) => ({ about: 'short', say }));
    expect(compareFacts(before, after)).toEqual([{ about: 'short', before: 'a', after: 'c' }]);
    expect(compareFacts([], after)).toEqual([{ about: 'short', before: null, after: 'b; c' }]);
  });
});

const bit = itemId.parse('item_bit');
const plate = itemId.parse('item_plate');
const screw = itemId.parse('item_screw');
let lines = 0;
const line = (
  item: typeof bit,
  expected: number,
  mustHaveClass: MustHaveClass,
  more = {},
): ConfigurationLine => ({
  id: lineId.parse(`line_${++lines}`),
  itemId: item,
  layer: 1,
  row: 1,
  slot: lines,
  rackItemId: null,
  expected,
  minimum: Math.min(1, expected),
  mustHaveClass,
  substitutes: [],
  ...more,
});
const kinds = (before: ConfigurationLine[], after: ConfigurationLine[]) =>
  versionWarnings(before, after, (id) => id).map(({ kind, itemId: id }) => [kind, id]);

describe('what a version asks less of', () => {
  it('names a back-up taken out, and fewer of them, by itself; a convenience is nobody’s warning', () => {
    expect(kinds([line(bit, 2, 3)], [])).toEqual([['backUpRemoved', bit]]);
    expect(kinds([line(bit, 2, 3)], [line(bit, 1, 3)])).toEqual([['backUpFewer', bit]]);
    expect(kinds([line(bit, 2, 4)], [])).toEqual([]);
  });

  it('names a must-have taken out, a spare fewer, a lower minimum and every change of a class', () => {
    expect(kinds([line(bit, 1, 1)], [])).toEqual([['mustHaveRemoved', bit]]);
    expect(kinds([line(bit, 2, 1)], [line(bit, 1, 1)])).toEqual([['spareFewer', bit]]);
    expect(kinds([line(bit, 2, 1)], [line(bit, 2, 1, { minimum: 0 })])).toEqual([['minimumLower', bit]]);
    expect(kinds([line(bit, 1, 1)], [line(bit, 1, 3)])).toEqual([['classWeaker', bit]]);
    expect(kinds([line(bit, 1, 3)], [line(bit, 1, 1)])).toEqual([['classStronger', bit]]);
  });

  it('is by item: a line moved or split changes nothing, nor does one that is added', () => {
    expect(kinds([line(bit, 2, 3)], [line(bit, 1, 3, { layer: 2 }), line(bit, 1, 3)])).toEqual([]);
    expect(kinds([line(bit, 2, 3)], [line(bit, 2, 3), line(screw, 9, 1)])).toEqual([]);
  });

  it('names substitutes that come and go', () => {
    const withOne = [line(bit, 1, 2, { substitutes: [screw] })];
    expect(kinds(withOne, [line(bit, 1, 2)])).toEqual([['substituteRemoved', bit]]);
    expect(kinds([line(bit, 1, 2)], withOne)).toEqual([['substituteAdded', bit]]);
  });
});

const held = (one: ConfigurationLine, found: number | null): HeldLine => ({
  ...one,
  found,
  unsound: 0,
  condition: 'sound',
});

describe('a set by another version', () => {
  it('lacks what is asked and not counted, and has over what is counted and not asked', () => {
    const [bits, screws] = [line(bit, 2, 1), line(screw, 6, 1)];
    const version = { lines: [line(bit, 3, 1), line(plate, 1, 1)] };
    expect(lacksAndOver([held(bits, 2), held(screws, 5)], version)).toEqual({
      lacks: [
        { itemId: bit, pieces: 1 },
        { itemId: plate, pieces: 1 },
      ],
      over: [{ itemId: screw, pieces: 5 }],
      notCounted: 0,
    });
    expect(lacksAndOver([held(bits, null)], { lines: [bits] })).toMatchObject({ notCounted: 1 });
  });

  it('gains what the version adds and loses what it takes out; a shortage of now stays one', () => {
    const id = setId.parse('set_one');
    const [bits, screws] = [line(bit, 2, 1), line(screw, 6, 1)];
    const contents = [
      { itemId: bit, found: 1, expected: 2, mustHaveClass: 1 as const },
      { itemId: screw, found: 6, expected: 6, mustHaveClass: 1 as const },
    ];
    const store = { sets: [{ id, contents, massGrams: 100 }], packs: [] } as unknown as Store;
    const follower = { id, code: 'ONE', follows: 1, lines: [held(bits, 1), held(screws, 6)] };
    const heldBy = (version: ConfigurationLine[], followers = new Map([[id, follower]])) => {
      const [set] = refittedStore(store, followers, { lines: version }, new Map()).sets;
      return new Map(set?.contents.map((one) => [one.itemId, one.found]));
    };
    expect(heldBy([bits, screws])).toEqual(
      new Map([
        [bit, 1],
        [screw, 6],
      ]),
    );
    expect(heldBy([line(bit, 4, 1)])).toEqual(new Map([[bit, 3]]));
    expect(heldBy([line(screw, 2, 1), line(plate, 1, 1)])).toEqual(
      new Map([
        [screw, 2],
        [plate, 1],
      ]),
    );
    expect(heldBy([line(plate, 1, 1)], new Map())).toEqual(
      new Map([
        [bit, 1],
        [screw, 6],
      ]),
    );
    // the mass of what comes or goes is not stated, so neither is the set's
    const [heavier] = refittedStore(
      store,
      new Map([[id, follower]]),
      { lines: [line(bit, 4, 1)] },
      new Map(),
    ).sets;
    expect(heavier?.massGrams).toBeNull();
  });
});

const standing = (tone: 'good' | 'stop' | 'unknown') => ({ tone, word: tone });
const trial = (...changed: Trial['changed']): Trial => ({
  looked: { cases: 2, unplanned: 1, starts: 0, promises: 1 },
  pairs: null,
  version: null,
  changed,
});
const change = (label: string): Trial['changed'][number] => ({
  kind: 'case',
  label,
  href: null,
  before: standing('good'),
  after: standing('stop'),
  turn: 'worse',
  changes: [{ about: 'The kit', before: 'Ready', after: 'Short' }],
});

describe('two trials of one change', () => {
  it('agree only where they say the same, and name what is new and what is gone', () => {
    expect(trialsAgree(compareTrials(trial(change('A')), trial(change('A'))))).toBe(true);
    const difference = compareTrials(trial(change('A'), change('B')), trial(change('B'), change('C')));
    expect(trialsAgree(difference)).toBe(false);
    expect(difference.onlyBefore.map(({ label }) => label)).toEqual(['A']);
    expect(difference.onlyAfter.map(({ label }) => label)).toEqual(['C']);
  });

  it('weigh which way a standing turns, and say how much was looked at', () => {
    expect(turnOf(standing('good'), standing('unknown'))).toBe('worse');
    expect(turnOf(standing('stop'), standing('unknown'))).toBe('better');
    expect(turnOf(standing('good'), standing('good'))).toBe('otherwise');
    expect(lookedSentence(trial())).toBe(
      'Of 2 booked cases with a plan, 0 saved starts and 1 promised construct: nothing differs in any of them. 1 more case has no plan yet, so nothing can be said of it.',
    );
  });
});
