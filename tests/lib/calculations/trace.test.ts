import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculations } from '@/lib/calculations/registry';
import { traceInput } from '@/lib/calculations/trace/schema';
import { trace } from '@/lib/calculations/trace/trace';
import { countTouched } from '@/lib/loads/touched';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const EXAMPLES = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8')).trace as {
  id: string;
  expect: Record<string, never>;
}[];
const expected = (id: string) => EXAMPLES.find((one) => one.id === id)?.expect as Record<string, unknown>;

type Told = ['in', number, string | null] | ['out', number, string | null, string];
function answerOf(told: readonly Told[], lot: string) {
  const events = told.map(([kind, quantity, its, ref], atMs) =>
    kind === 'in' ? { kind, atMs, quantity, lot: its } : { kind, atMs, quantity, lot: its, case: ref },
  );
  const said = trace(traceInput.parse({ lot, events }));
  if (said.outcome !== 'answered') throw new Error('it always answers');
  return said.answer;
}
const boundsOf = (told: readonly Told[], lot: string) => {
  const { destinations, now, cases } = answerOf(told, lot);
  return Object.fromEntries([
    ...destinations.map((one) => [one.case, [one.lo, one.hi]]),
    ['now', [now.lo, now.hi]],
    ['cases', [cases.lo, cases.hi]],
  ]);
};

const Q1: Told[] = [
  ['in', 6, 'A'],
  ['out', 2, null, 'c1'],
  ['in', 2, 'B'],
  ['out', 3, null, 'c2'],
  ['in', 3, 'C'],
  ['out', 2, null, 'c3'],
];

describe('worked examples', () => {
  it('Q1, lot B: case 1 excluded, cases 2 and 3 possible, together at most 2, four to hold', () => {
    const { recallB } = expected('Q1') as { recallB: Record<string, unknown> };
    const answer = answerOf(Q1, 'B');
    const [one, two, three] = answer.destinations;
    expect(one).toMatchObject({ standing: recallB.case1, lo: 0, hi: 0 });
    expect(one?.reasons).toEqual(['2 pieces left before any of lot B can have been there.']);
    expect([two?.lo, two?.hi]).toEqual(recallB.case2);
    expect([three?.lo, three?.hi]).toEqual(recallB.case3);
    expect(`at most ${answer.cases.hi}`).toBe(recallB.together);
    expect(answer.now.toHold).toBe(recallB.inSlotToHold);
  });

  it('Q1, lot A: two confirmed, at least one confirmed, possible', async () => {
    const { recallA } = expected('Q1') as { recallA: Record<string, unknown> };
    expect(recallA).toEqual({ case1: '2 confirmed', case2: 'at least 1 confirmed (1-3)', case3: [0, 2] });
    const { destinations } = answerOf(Q1, 'A');
    expect(destinations.map(({ lo, hi, standing }) => [standing, lo, hi])).toEqual([
      ['confirmed', 2, 2],
      ['confirmed', 1, 3],
      ['possible', 0, 2],
    ]);
  });

  it('Q2: ten packs in doubt, two of them gone already, eight to hold', () => {
    const pack = (fate: 'used' | 'here') => ({ fate });
    // of load 0147 sets A-03 (gone), A-07, K-12 and five pouches; of load 0146 set A-01 and a pouch (gone)
    const packs = [
      pack('used'),
      ...Array.from({ length: 7 }, () => pack('here')),
      pack('here'),
      pack('used'),
    ];
    const { packs: all, used, toHold } = countTouched(packs);
    expect({ packs: all, alreadyUsed: used, toHold }).toEqual(expected('Q2'));
  });
});

describe('the reference package', () => {
  // scipy 1.17.1: optimize.milp over x[arrival, end, lot] >= 0 with a row for every arrival and every end, least and most of
  // the sum over a group's variables of the lot; computed once by a model of its own, pieces as whole numbers
  const S2: Told[] = [
    ['in', 2, 'A'],
    ['in', 2, 'B'],
    ['in', 2, 'C'],
    ['out', 3, null, 'c1'],
    ['out', 2, 'B', 'c2'],
    ['in', 2, null],
    ['out', 2, null, 'c3'],
    ['out', 1, 'C', 'c4'],
    ['in', 4, 'A'],
    ['out', 3, null, 'c1'],
  ];
  const S3: Told[] = [
    ['in', 4, 'A'],
    ['out', 1, null, 'c1'],
    ['in', 3, 'B'],
    ['out', 2, 'A', 'c2'],
    ['out', 2, null, 'c3'],
    ['in', 2, null],
    ['out', 1, 'B', 'c4'],
    ['out', 2, null, 'c5'],
    ['in', 5, 'C'],
    ['out', 3, null, 'c6'],
    ['in', 1, 'A'],
    ['out', 2, 'C', 'c7'],
    ['out', 1, null, 'c5'],
    ['in', 2, 'D'],
    ['out', 2, null, 'c8'],
  ];
  it.each([
    // biome-ignore format: as the reference printed them
    ['S1', Q1, 'B', { c1: [0, 0], c2: [0, 2], c3: [0, 2], now: [0, 2], cases: [0, 2] }],
    // biome-ignore format: as above
    ['S1', Q1, 'A', { c1: [2, 2], c2: [1, 3], c3: [0, 2], now: [0, 3], cases: [3, 6] }],
    // biome-ignore format: as above
    ['S1', Q1, 'C', { c1: [0, 0], c2: [0, 0], c3: [0, 2], now: [1, 3], cases: [0, 2] }],
    // biome-ignore format: as above
    ['S2', S2, 'A', { c1: [4, 5], c2: [0, 0], c3: [0, 2], c4: [0, 0], now: [1, 1], cases: [5, 7] }],
    // biome-ignore format: as above
    ['S2', S2, 'B', { c1: [0, 0], c2: [2, 2], c3: [0, 2], c4: [0, 0], now: [0, 0], cases: [2, 4] }],
    // biome-ignore format: as above
    ['S2', S2, 'C', { c1: [1, 2], c2: [0, 0], c3: [0, 2], c4: [1, 1], now: [0, 0], cases: [2, 4] }],
    // biome-ignore format: as above
    ['S3', S3, 'A', { c1: [1, 1], c2: [2, 2], c3: [0, 1], c4: [0, 0], c5: [0, 3], c6: [0, 1], c7: [0, 0], c8: [0, 1], now: [0, 1], cases: [4, 7] }],
    // biome-ignore format: as above
    ['S3', S3, 'B', { c1: [0, 0], c2: [0, 0], c3: [1, 2], c4: [1, 1], c5: [0, 3], c6: [0, 1], c7: [0, 0], c8: [0, 1], now: [0, 1], cases: [2, 5] }],
    // biome-ignore format: as above
    ['S3', S3, 'C', { c1: [0, 0], c2: [0, 0], c3: [0, 0], c4: [0, 0], c5: [0, 3], c6: [2, 3], c7: [2, 2], c8: [0, 1], now: [0, 1], cases: [4, 7] }],
    // biome-ignore format: as above
    ['S3', S3, 'D', { c1: [0, 0], c2: [0, 0], c3: [0, 0], c4: [0, 0], c5: [0, 2], c6: [0, 1], c7: [0, 0], c8: [1, 2], now: [0, 1], cases: [1, 4] }],
  ] as const)('%s, lot of a recall %#', (_, told, lot, bounds) => {
    expect(boundsOf(told, lot)).toEqual(bounds);
  });

  it('S4: how much can be served at all, and what is short', () => {
    // networkx 3.6.1: maximum_flow_value 6 of 7; minimum_cut leaves the arrival of B and the first departure at the sink
    const answer = answerOf(
      [
        ['in', 3, 'A'],
        ['in', 1, 'B'],
        ['out', 2, 'B', 'c1'],
        ['in', 2, null],
        ['out', 2, 'B', 'c2'],
        ['out', 3, null, 'c3'],
      ],
      'A',
    );
    expect(answer.contradiction).toBe(
      'The records contradict themselves. By 1970-01-01, 2 pieces read as lot B went out, and no more than 1 can have come in for them.',
    );
    expect(answer.destinations.map(({ standing }) => standing)).toEqual(['excluded', 'excluded', 'possible']);
  });
});

it('refuses events that are out of order, each with its place', async () => {
  const result = await calculations.trace?.evaluate(
    {
      lot: 'A',
      events: [
        { kind: 'in', atMs: 5, quantity: 1 },
        { kind: 'out', atMs: 4, quantity: 1 },
      ],
    },
    { solver: async () => ({ status: 'infeasible' }) as never },
  );
  expect(result).toMatchObject({
    ok: false,
    problems: [{ path: ['events', 1, 'atMs'], code: 'out-of-order' }],
  });
});
