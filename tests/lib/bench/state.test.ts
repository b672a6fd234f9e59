import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BenchAct, BenchEntry } from '@/lib/bench/act';
import { benchAct } from '@/lib/bench/act';
import { abandoningProblems, closingProblems, progressOf } from '@/lib/bench/closing';
import { differencesOf } from '@/lib/bench/compare';
import { digestText } from '@/lib/bench/digest';
import { asideOf, inOrder, refilledOf, stateOf, takenHomeOf } from '@/lib/bench/state';

const LINES = ['line_a', 'line_b', 'line_c'];
const layers = [
  { id: 'line_a', layer: 1, expected: 2 },
  { id: 'line_b', layer: 1, expected: 4 },
  { id: 'line_c', layer: 2, expected: 1 },
];

const pieces = fc.integer({ min: 1, max: 9 });
const lineId = fc.constantFrom(...LINES);
const home = fc.constant({ kind: 'elsewhere', where: 'general stores' });
const act = fc.oneof(
  fc.record({ kind: fc.constant('found'), lineId, pieces: fc.integer({ min: 0, max: 20 }) }),
  fc.record({ kind: fc.constant('oneMore'), lineId, serial: fc.constantFrom(null, 'S1', 'S2') }),
  fc.record({
    kind: fc.constant('fault'),
    lineId,
    pieces,
    condition: fc.constantFrom('bent', 'blunt'),
    route: fc.constantFrom('repair', 'discard'),
  }),
  fc.record({
    kind: fc.constant('refill'),
    lineId,
    pieces,
    from: fc.constant({ kind: 'other', where: 'spare' }),
  }),
  fc.record({ kind: fc.constant('surplusHome'), lineId, pieces, home }),
  fc.record({
    kind: fc.constant('foreign'),
    itemId: fc.constantFrom('item_x', 'item_y'),
    pieces,
    note: fc.constant(null),
  }),
  fc.record({ kind: fc.constant('foreignHome'), itemId: fc.constantFrom('item_x', 'item_y'), pieces, home }),
  fc.record({ kind: fc.constant('looked'), layer: fc.integer({ min: 1, max: 2 }) }),
);

/** Entries as a screen makes them: each later than the one before; some undo an earlier one. */
const history = fc
  .array(fc.tuple(act, fc.option(fc.nat(30), { nil: undefined, freq: 6 })), { maxLength: 30 })
  .map((made) =>
    made.map(([one, undoes], at): BenchEntry => {
      const undo = undoes !== undefined && undoes < at;
      return {
        id: `entry_${at}`,
        act: benchAct.parse(undo ? { kind: 'undo', entryId: `entry_${undoes}` } : one),
        doneAt: new Date(Date.parse('2026-01-14T08:00:00Z') + at).toISOString(),
      };
    }),
  );

const shuffled = history.chain((entries) =>
  fc
    .shuffledSubarray([...entries, ...entries.slice(0, 5)], { minLength: entries.length })
    .map((some) => ({ entries, arrived: [...some, ...entries] })),
);

describe('what the entries of a count come to', () => {
  it('is the same whatever order they arrive in, and however often', () => {
    fc.assert(
      fc.property(shuffled, ({ entries, arrived }) => {
        expect(stateOf(arrived)).toEqual(stateOf(entries));
        expect(digestText('count_1', 'person_a', arrived)).toBe(digestText('count_1', 'person_a', entries));
      }),
    );
  });

  it('loses no piece: what lay there and what was put in is what is found, put aside and taken home', () => {
    fc.assert(
      fc.property(history, (entries) => {
        for (const line of stateOf(entries).lines.values()) {
          if (line.found === null) continue;
          expect((line.there ?? 0) + refilledOf(line)).toBe(line.found + asideOf(line) + takenHomeOf(line));
        }
      }),
    );
  });

  it('counts a line only where somebody said a figure of it or scanned a piece of it', () => {
    fc.assert(
      fc.property(history, (entries) => {
        const { lines, standing } = stateOf(entries);
        for (const [id, { found }] of lines) {
          const said = standing.some(
            ({ act: one }) => (one.kind === 'found' || one.kind === 'oneMore') && one.lineId === id,
          );
          expect(found !== null).toBe(said);
        }
      }),
    );
  });

  it('is what it was before an entry once that is undone', () => {
    fc.assert(
      fc.property(history, act, (entries, more) => {
        const at = (ms: number) => new Date(Date.parse('2026-01-14T09:00:00Z') + ms).toISOString();
        const extra: BenchEntry = { id: 'entry_more', act: benchAct.parse(more), doneAt: at(1) };
        const undo: BenchEntry = {
          id: 'entry_undo',
          act: benchAct.parse({ kind: 'undo', entryId: 'entry_more' }),
          doneAt: at(2),
        };
        expect(stateOf([...entries, extra, undo])).toEqual(stateOf(entries));
      }),
    );
  });

  it('an entry of another count changes the digest, and so does a changed figure', () => {
    const entries = entriesOf([{ kind: 'found', lineId: 'line_a', pieces: 2 }]);
    const digest = digestText('count_1', 'person_a', entries);
    const other = entriesOf([{ kind: 'found', lineId: 'line_a', pieces: 3 }]);
    expect(digestText('count_1', 'person_a', other)).not.toBe(digest);
    expect(digestText('count_2', 'person_a', entries)).not.toBe(digest);
    expect(digestText('count_1', 'person_b', entries)).not.toBe(digest);
  });
});

function entriesOf(acts: object[]): BenchEntry[] {
  return acts.map((one, at) => ({
    id: `entry_${at}`,
    act: benchAct.parse(one) as BenchAct,
    doneAt: `2026-01-14T08:00:00.${String(at).padStart(3, '0')}Z`,
  }));
}

const found = (line: string, figure: number) => ({ kind: 'found', lineId: `line_${line}`, pieces: figure });
const fault = (line: string, count: number) => ({
  kind: 'fault',
  lineId: `line_${line}`,
  pieces: count,
  condition: 'bent',
  route: 'discard',
});
const refill = (line: string, count: number) => ({
  kind: 'refill',
  lineId: `line_${line}`,
  pieces: count,
  from: { kind: 'other', where: 'spare' },
});

/** Expected figures follow the project's own rule: a figure says what lies in the slot now; every other act moves pieces. */
const examples = [
  { why: 'a figure is what lies there', acts: [found('a', 2)], line: { found: 2, there: 2 } },
  { why: 'the last figure stands', acts: [found('a', 2), found('a', 1)], line: { found: 1, there: 1 } },
  {
    why: 'a piece put aside after counting leaves the slot',
    acts: [found('a', 2), fault('a', 1)],
    line: { found: 1, there: 2 },
  },
  {
    why: 'a piece put aside before is no part of the figure',
    acts: [fault('a', 1), found('a', 1)],
    line: { found: 1, there: 2 },
  },
  {
    why: 'a piece put aside alone counts nothing',
    acts: [fault('a', 1)],
    line: { found: null, there: null },
  },
  {
    why: 'pieces put in did not lie there before',
    acts: [found('a', 1), refill('a', 1)],
    line: { found: 2, there: 1 },
  },
  {
    why: 'a serial scanned twice is one piece',
    acts: [
      { kind: 'oneMore', lineId: 'line_a', serial: 'S1' },
      { kind: 'oneMore', lineId: 'line_a', serial: 'S1' },
    ],
    line: { found: 1, there: 1 },
  },
  {
    why: 'two scans without a serial are two pieces',
    acts: [
      { kind: 'oneMore', lineId: 'line_a', serial: null },
      { kind: 'oneMore', lineId: 'line_a', serial: null },
    ],
    line: { found: 2, there: 2 },
  },
];

describe('one line', () => {
  it.each(examples)('$why', ({ acts, line }) => {
    expect(stateOf(entriesOf(acts)).lines.get('line_a')).toMatchObject(line);
  });
});

describe('closing', () => {
  const codes = (acts: object[], disputed: ReadonlySet<string> | null = null) =>
    closingProblems(stateOf(entriesOf(acts)), layers, disputed).map(({ code }) => code);

  it.each([
    { why: 'one layer whole is a count', acts: [found('c', 1)], expected: [] },
    { why: 'nothing counted is no count', acts: [], expected: ['nothing-counted'] },
    { why: 'a layer left half-way is no count of it', acts: [found('a', 1)], expected: ['not-counted'] },
    { why: 'a refill alone may be closed', acts: [refill('a', 1)], expected: [] },
    {
      why: 'more put aside than there were',
      acts: [found('c', 0), fault('c', 1)],
      expected: ['more-than-there'],
    },
    {
      why: 'fewer there than were put in',
      acts: [refill('c', 2), found('c', 1)],
      expected: ['put-in-not-there'],
    },
    { why: 'a line of another set', acts: [found('c', 1), found('ghost', 1)], expected: ['unknown-line'] },
  ])('$why', ({ acts, expected }) => {
    expect(codes(acts)).toEqual(expected);
  });

  it('a settling counts exactly the lines in dispute', () => {
    const disputed = new Set(['line_a']);
    expect(codes([found('a', 2)], disputed)).toEqual([]);
    expect(codes([found('c', 1)], disputed)).toEqual(['not-counted', 'not-in-dispute']);
  });

  it('shows how far each layer is, from the top', () => {
    expect(progressOf(stateOf(entriesOf([found('b', 1)])), layers)).toEqual([
      { layer: 1, lines: 2, counted: 1 },
      { layer: 2, lines: 1, counted: 0 },
    ]);
  });

  it('is not got round by giving up: what was moved has moved', () => {
    expect(abandoningProblems(stateOf(entriesOf([found('a', 1), fault('b', 1)])))).toEqual([]);
    expect(abandoningProblems(stateOf(entriesOf([refill('a', 1)]))).map(({ code }) => code)).toEqual([
      'pieces-moved',
    ]);
  });
});

describe('two counts of one set', () => {
  const held = new Map([
    ['line_a', { found: 2, countedBy: 'person_one', countId: 'count_1' }],
    ['line_b', { found: 4, countedBy: null, countId: null }],
  ]);
  it.each([
    { why: 'the same figure is no difference', acts: [found('a', 2)], by: 'person_two', lines: [] },
    { why: 'another figure is', acts: [found('a', 1)], by: 'person_two', lines: ['line_a'] },
    {
      why: 'a piece the second finds bent was there all the same',
      acts: [found('a', 2), fault('a', 1)],
      by: 'person_two',
      lines: [],
    },
    {
      why: 'a piece the second puts in was not',
      acts: [found('a', 2), refill('a', 1)],
      by: 'person_two',
      lines: [],
    },
    { why: 'one’s own second count corrects the first', acts: [found('a', 1)], by: 'person_one', lines: [] },
    {
      why: 'what nobody counted in this turn disputes nothing',
      acts: [found('b', 1)],
      by: 'person_two',
      lines: [],
    },
  ])('$why', ({ acts, by, lines }) => {
    expect(differencesOf(stateOf(entriesOf(acts)), held, by).map((one) => one.lineId)).toEqual(lines);
  });
});

it('entries of one moment have one order', () => {
  const [one] = entriesOf([found('a', 1)]);
  if (!one) throw new Error('there is one');
  const two = { ...one, id: 'entry_1' };
  expect(inOrder([two, one]).map(({ id }) => id)).toEqual(inOrder([one, two]).map(({ id }) => id));
});
