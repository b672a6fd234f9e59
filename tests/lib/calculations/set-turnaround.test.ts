import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { highsSolver } from '@/app/_server/solver/highs';
import { calculations } from '@/lib/calculations/registry';
import { setTurnaroundCalculation } from '@/lib/calculations/setTurnaround/calculation';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { plainDate } from '@/lib/quantities/plainDate';
import { instantOfWall } from '@/lib/time/zone';

type Input = z.input<typeof setTurnaroundInput>;

const ports = { solver: highsSolver };
const ask = (input: Input) => setTurnaround(setTurnaroundInput.parse(input), ports);
async function answerTo(input: Input): Promise<SetTurnaroundOutput> {
  const said = await ask(input);
  if (said.outcome !== 'answered') throw new Error(JSON.stringify(said.missing));
  return said.answer;
}

/** Invented cases, worked by hand and recomputed independently; see the file. */
const EXAMPLES = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))[
  'set-turnaround'
];
const MINUTE = 60_000;
const MIDNIGHT = Date.UTC(2026, 0, 14);
const at = (time: string) => MIDNIGHT + (Number(time.slice(0, 2)) * 60 + Number(time.slice(3))) * MINUTE;
const ready = (time: string) => ({ p50AtMs: at(time), p90AtMs: at(time) });
const turn = (minutes: number) => [{ stage: 'turn', p50Minutes: minutes, p90Minutes: minutes }];

describe('S1: four cases of a day on copies of one configuration', () => {
  const [example] = EXAMPLES as {
    cases: string[];
    leadMinutes: number;
    expect: { turnaroundHours: number; copies?: number; copiesNeeded?: number; slipsMinutes?: number[] }[];
  }[];
  if (!example) throw new Error('S1 is in the file');
  const list = (turnaroundHours: number, copies: number): Input => ({
    cases: example.cases.map((times, place) => ({
      case: `case ${place + 1}`,
      startAtMs: at(times.slice(0, 5)),
      endAtMs: at(times.slice(6)),
      leadMinutes: example.leadMinutes,
      ways: [{ parts: [{ configurations: ['A'] }] }],
    })),
    configurations: [{ configuration: 'A', stages: turn(turnaroundHours * 60) }],
    sets: Array.from({ length: copies }, (_, copy) => ({
      set: `A-0${copy + 1}`,
      configuration: 'A',
      ready: ready('00:00'),
    })),
  });

  it.each(example.expect)('turnaround $turnaroundHours h', async (expected) => {
    const copies = expected.copies ?? 3;
    const answer = await answerTo(list(expected.turnaroundHours, copies));
    if (expected.copiesNeeded !== undefined) {
      // the first three overlap from 13:00, when the third needs its set, to 14:00, when the first is back
      expect(answer.copies).toEqual([
        {
          configurations: ['A'],
          needed: expected.copiesNeeded,
          present: copies,
          fromMs: at('13:00'),
          toMs: at('14:00'),
          cases: ['case 1', 'case 2', 'case 3'],
        },
      ]);
      expect(answer).toMatchObject({ served: 4, of: 4, unserved: [] });
    }
    if (expected.slipsMinutes)
      expect(answer.slipsInOrder.map(({ slipMinutes }) => slipMinutes)).toEqual(expected.slipsMinutes);
  });

  it('with two copies and four hours, one goes without; it is said which sets are where, and what would help', async () => {
    const answer = await answerTo(list(4, 2));
    expect(answer).toMatchObject({ served: 3, of: 4, proof: { kind: 'optimal' } });
    const [without] = answer.unserved;
    expect(without?.ways[0]?.obstacles.every(({ kind }) => kind === 'inUse' || kind === 'neededNext')).toBe(
      true,
    );
    const repairs = answer.repairs.find(({ case: one }) => one === without?.case)?.repairs ?? [];
    expect(repairs.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['quickerTurn', 'laterSlot', 'borrow', 'loan', 'otherSets']),
    );
    // what leaves nobody else without comes first
    const costs = repairs.map(({ cost }) => cost.unserved.length);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    expect(repairs.filter(({ kind }) => kind === 'borrow' || kind === 'loan')).toEqual([
      expect.objectContaining({ missing: ['A'], inTime: 'notEstablished' }),
      expect.objectContaining({ missing: ['A'], inTime: 'notEstablished' }),
    ]);
  });
});

describe('S2: a locking construct at 02:10', () => {
  const example = structuredClone(setTurnaroundCalculation.example) as Input;
  const without = (...sets: string[]): Input => ({
    ...example,
    sets: example.sets.filter(({ set }) => !sets.includes(set)),
    cases: example.cases.map((one) => ({
      ...one,
      ways: one.ways
        .map((way) => ({
          ...way,
          parts: way.parts.map((part) => ({ sets: (part.sets ?? []).filter((set) => !sets.includes(set)) })),
        }))
        .filter(({ parts }) => parts.every((part) => part.sets.length > 0)),
    })),
  });

  it('A-01 with the limiter pouch keeps the promise; A-05 now sends the morning to A-07', async () => {
    const answer = await answerTo(example);
    expect(answer.assignments).toMatchObject([
      { case: 'emergency', sets: [{ set: 'A-01' }], pouches: ['torque limiter'] },
      { case: 'morning', sets: [{ set: 'A-05' }] },
    ]);
    expect(answer.repairs).toMatchObject([
      {
        case: 'emergency',
        repairs: [
          {
            kind: 'otherSets',
            sets: ['A-05'],
            cost: { unserved: [], moved: [{ case: 'morning', from: 'A-05', to: ['A-07'] }] },
          },
        ],
      },
    ]);
  });

  it('without A-01: A-05 now, and the morning on A-07 with a margin of 2 h 20 min', async () => {
    const answer = await answerTo(without('A-01'));
    expect(answer.assignments).toMatchObject([
      { case: 'emergency', sets: [{ set: 'A-05' }] },
      { case: 'morning', sets: [{ set: 'A-07', marginMinutes: 140, inTime: 'nineInTen' }] },
    ]);
    expect(answer.movedPromises).toEqual([
      { case: 'morning', from: 'A-05', to: ['A-07'], because: 'betterPlan' },
    ]);
  });

  it('A-05 back at 04:30 and four hours more cannot make 08:00', async () => {
    const input = without('A-01', 'A-07');
    const answer = await answerTo({
      ...input,
      configurations: [{ configuration: 'A', stages: turn(240) }],
      repairsFor: ['morning'],
    });
    expect(answer.assignments.map(({ case: one }) => one)).toEqual(['emergency']);
    expect(answer.unserved).toMatchObject([
      {
        case: 'morning',
        slipMinutes: 30,
        ways: [
          {
            obstacles: [
              { set: 'A-05', kind: 'inUse', byCase: 'emergency', atMs: at('08:30'), missesMinutes: 30 },
            ],
          },
        ],
      },
    ]);
    // the emergency goes first whatever it costs; half an hour quicker, or later, and both are served
    expect(answer.repairs[0]?.repairs).toMatchObject([
      {
        kind: 'quickerTurn',
        set: 'A-05',
        afterCase: 'emergency',
        byMinutes: 30,
        readyByMs: at('08:00'),
        halfTheTime: false,
      },
      { kind: 'laterSlot', slipMinutes: 30, startAtMs: at('09:00') },
      { kind: 'borrow', neededByMs: at('08:00'), inTime: 'notEstablished' },
      { kind: 'loan', neededByMs: at('08:00'), inTime: 'notEstablished' },
      // and the morning’s own set for it, with the emergency left without
      { kind: 'otherSets', cost: { unserved: ['emergency'] } },
    ]);
  });
});

describe('what is not known', () => {
  const one: Input = {
    cases: [
      {
        case: 'one',
        startAtMs: at('08:30'),
        endAtMs: at('10:00'),
        ways: [{ parts: [{ sets: ['A-01', 'A-02'] }] }],
      },
    ],
    configurations: [{ configuration: 'A', stages: turn(240) }],
    sets: [
      { set: 'A-01', configuration: 'A', ready: null },
      { set: 'A-02', configuration: 'A', ready: ready('07:00') },
    ],
  };

  it('a set nobody knows the time of matters only where a case goes without', async () => {
    expect((await ask(one)).outcome).toBe('answered');
    const late = { ...one, sets: one.sets.map((set) => ({ ...set, ready: set.ready && ready('09:00') })) };
    expect(await ask(late)).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['sets', 0, 'ready'], what: 'when A-01 will be ready' }],
      known: { served: 0, unserved: [{ case: 'one', slipMinutes: 90 }] },
    });
  });

  it('or where it was promised', async () => {
    expect(await ask({ ...one, promises: [{ case: 'one', set: 'A-01' }] })).toMatchObject({
      outcome: 'notEstablished',
      known: { served: 1, movedPromises: [{ from: 'A-01', to: ['A-02'], because: 'notReady' }] },
    });
  });
});

it('the order in which cases, sets and promises are given changes nothing', async () => {
  const input: Input = {
    cases: ['08:30', '09:00', '09:00', '11:00', '13:15', '14:00'].map((time, place) => ({
      case: `case ${place}`,
      startAtMs: at(time),
      endAtMs: at(time) + 70 * MINUTE,
      urgency: place === 3 ? 'soon' : 'booked',
      ways: [{ parts: [{ sets: ['A-01', 'A-02'] }] }, { parts: [{ sets: ['B-01'] }], penalty: 1 }],
    })),
    configurations: ['A', 'B'].map((configuration) => ({ configuration, stages: turn(200) })),
    sets: ['A-01', 'A-02', 'B-01'].map((set) => ({
      set,
      configuration: set.slice(0, 1),
      ready: ready('06:00'),
    })),
    promises: [
      { case: 'case 1', set: 'A-01' },
      { case: 'case 2', set: 'A-01' },
    ],
    repairsFor: [],
  };
  const turned = {
    ...input,
    cases: input.cases.toReversed(),
    sets: input.sets.toReversed(),
    promises: input.promises?.toReversed(),
  };
  const { movedPromises, clashes, ...answer } = await answerTo(input);
  expect(await answerTo(turned)).toMatchObject(answer);
  // two promises of one set at one time are one too many
  expect(clashes).toMatchObject([{ set: 'A-01', cases: ['case 1', 'case 2'] }]);
  expect(movedPromises).toHaveLength(1);
});

describe('nights in which the clocks change (IANA time zone database; see the tests of zones)', () => {
  const CHANGES = [
    { zone: 'Europe/London', date: '2026-03-29', lost: 60 },
    { zone: 'Europe/London', date: '2026-10-25', lost: -60 },
    { zone: 'America/New_York', date: '2026-03-08', lost: 60 },
    { zone: 'America/St_Johns', date: '2026-11-01', lost: -60 },
    { zone: 'Australia/Lord_Howe', date: '2026-10-04', lost: 30 },
    { zone: 'Australia/Lord_Howe', date: '2026-04-05', lost: -30 },
    { zone: 'Africa/Casablanca', date: '2026-03-22', lost: 60 },
    { zone: 'Pacific/Chatham', date: '2026-04-05', lost: -60 },
  ];

  // by the wall 8 h lie between 00:00 and 08:00; a turn of 7 h 15 min and a case of 30 min fit unless an hour, or half, is lost
  it.each(CHANGES)(
    '$zone $date: a set has as long as passes, not as the wall says',
    async ({ zone, date, lost }) => {
      const wall = (time: string) => {
        const found = instantOfWall({ date: plainDate.parse(date), time }, zone, {
          skipped: 'refuse',
          repeated: 'first',
        });
        if (found.kind !== 'instant') throw new Error('none of these is skipped');
        return found.ms;
      };
      const answer = await answerTo({
        cases: [
          {
            case: 'night',
            startAtMs: wall('00:00'),
            endAtMs: wall('00:00') + 30 * MINUTE,
            leadMinutes: 0,
            urgency: 'now',
            ways: [{ parts: [{ sets: ['A'] }] }],
          },
          {
            case: 'morning',
            startAtMs: wall('08:00'),
            endAtMs: wall('09:00'),
            leadMinutes: 0,
            ways: [{ parts: [{ sets: ['A'] }] }],
          },
        ],
        configurations: [{ configuration: 'A', stages: turn(435) }],
        sets: [{ set: 'A', configuration: 'A', ready: { p50AtMs: wall('00:00'), p90AtMs: wall('00:00') } }],
        repairsFor: [],
      });
      expect(answer.served).toBe(lost > 0 ? 1 : 2);
      if (lost > 0) expect(answer.unserved).toMatchObject([{ case: 'morning', slipMinutes: lost - 15 }]);
      else expect(answer.assignments[1]?.sets[0]?.marginMinutes).toBe(15 - lost);
    },
  );
});

it('bad input gets every problem at once, with its path', async () => {
  const bad: Input = {
    cases: [
      {
        case: 'one',
        startAtMs: at('10:00'),
        endAtMs: at('09:00'),
        ways: [{ parts: [{}, { sets: ['X'] }, { configurations: ['Y'] }], pouches: ['Z'] }],
      },
      { case: 'one', startAtMs: at('10:00'), endAtMs: at('11:00'), ways: [{ parts: [{ sets: ['A-01'] }] }] },
    ],
    configurations: [{ configuration: 'A', stages: [{ stage: 'turn', p50Minutes: 10, p90Minutes: 5 }] }],
    sets: [
      { set: 'A-01', configuration: 'B', ready: { p50AtMs: at('10:00'), p90AtMs: at('09:00') } },
      { set: 'A-01', configuration: 'A', ready: null },
    ],
    promises: [
      { case: 'one', set: 'A-01' },
      { case: 'one', set: 'A-01' },
      { case: 'two', set: 'A-09' },
    ],
    repairsFor: ['three'],
  };
  const result = await calculations['set-turnaround']?.evaluate(bad, ports);
  if (!result || result.ok) throw new Error('it is registered, and refuses');
  expect(result.problems.map(({ path }) => path.join('.')).sort()).toEqual([
    'cases.0.endAtMs',
    'cases.0.ways.0.parts.0',
    'cases.0.ways.0.parts.1.sets.0',
    'cases.0.ways.0.parts.2.configurations.0',
    'cases.0.ways.0.pouches.0',
    'cases.1.case',
    'configurations.0.stages.0.p90Minutes',
    'promises.1',
    'promises.2.case',
    'promises.2.set',
    'repairsFor.0',
    'sets.0.configuration',
    'sets.0.ready.p90AtMs',
    'sets.1.set',
  ]);
});

it('a list too long to be looked through in good time is refused, and says so', async () => {
  const sets = Array.from({ length: 200 }, (_, copy) => ({
    set: `A-${copy}`,
    configuration: 'A',
    ready: ready('06:00'),
  }));
  const cases = (count: number): Input['cases'] =>
    Array.from({ length: count }, (_, place) => ({
      case: `case ${place}`,
      startAtMs: at('08:00'),
      endAtMs: at('09:00'),
      ways: [{ parts: [{ configurations: ['A'] }] }],
    }));
  const evaluate = (count: number) =>
    calculations['set-turnaround']?.evaluate(
      {
        cases: cases(count),
        sets,
        configurations: [{ configuration: 'A', stages: turn(60) }],
        repairsFor: [],
      },
      ports,
    );
  expect((await evaluate(100))?.ok).toBe(true);
  const refused = await evaluate(101);
  expect(refused?.ok === false && refused.problems.map(({ code }) => code)).toEqual(['too-many-pairs']);
  // 50 cases, and 50 more that all fall into the time in which nobody is sure whether a set is back
  const later = cases(50).map((one, place) => ({
    ...one,
    case: `later ${place}`,
    startAtMs: at('12:00'),
    endAtMs: at('13:00'),
  }));
  const uncertain = await calculations['set-turnaround']?.evaluate(
    {
      cases: [...cases(50), ...later],
      sets,
      configurations: [{ configuration: 'A', stages: turn(60) }],
      wantedMarginMinutes: 180,
      repairsFor: [],
    },
    ports,
  );
  expect(uncertain?.ok === false && uncertain.problems.map(({ code }) => code)).toEqual([
    'too-many-early-uses',
  ]);
});

it('takes the list of a hospital of 3,000 sets, hundreds of which could serve a case as well', async () => {
  const sets = Array.from({ length: 3_000 }, (_, at) => ({
    set: `S-${at}`,
    configuration: `kind ${at % 300}`,
    ready: ready('00:00'),
  }));
  const answer = await answerTo({
    cases: Array.from({ length: 40 }, (_, one) => ({
      case: `case ${one}`,
      startAtMs: at('10:00'),
      endAtMs: at('12:00'),
      ways: [{ parts: [{ sets: sets.slice(one, one + 600).map(({ set }) => set) }] }],
    })),
    configurations: Array.from({ length: 300 }, (_, kind) => ({
      configuration: `kind ${kind}`,
      stages: turn(300),
    })),
    sets,
    repairsFor: [],
  });
  expect(answer).toMatchObject({ served: 40, of: 40, proof: { kind: 'optimal' } });
  expect(new Set(answer.assignments.flatMap((one) => one.sets.map(({ set }) => set))).size).toBe(40);
});
