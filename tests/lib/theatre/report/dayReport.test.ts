import { describe, expect, it } from 'vitest';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import { caseId, itemId, setId, stockId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import type { CaseToServe, PlanningFacts } from '@/lib/theatre/planning/facts';
import { dayReport } from '@/lib/theatre/report/dayReport';
import type { DayCaseFacts, DayReportFacts, DaySetFacts, ShelfFacts } from '@/lib/theatre/report/facts';
import { askLines } from '@/lib/wording/day-asks';
import {
  bucketFigures,
  expectedWords,
  lineMargin,
  lineStanding,
  marginWords,
} from '@/lib/wording/day-report';
import { stepLines } from '@/lib/wording/day-steps';

/*
 * A worked morning, by hand: a lead of 60 minutes, a wanted margin of 30, and it is 06:30 on a winter's day, when the wall
 * clock of the hospital is UTC.
 */
const NOW = '2026-01-14T06:30:00.000Z';
const DAY = plainDate.parse('2026-01-14');
const at = (time: string) => `2026-01-14T${time}:00.000Z`;
const ms = (time: string) => Date.parse(at(time));
const minutes = (from: string, to: string) => (ms(to) - ms(from)) / 60_000;
const SCREW = itemId.parse('item_screw-16');
const names = {
  now: NOW,
  item: (id: string) => (id === SCREW ? 'Screw 3.5 × 16' : id),
  pouch: () => 'a driver',
};

type SetOf = Partial<DaySetFacts> & { readyAt?: [p50: string, p90: string] | null };
const setOf = (code: string, { readyAt: _, ...more }: SetOf = {}): DaySetFacts => ({
  id: setId.parse(`set_${code.toLowerCase()}`),
  code,
  configuration: code.slice(0, 3),
  step: 'inSterileStore',
  since: at('05:00'),
  heldBecause: null,
  useBy: plainDate.parse('2026-06-01'),
  act: null,
  load: null,
  count: null,
  stops: [],
  screws: new Map(),
  mustHaveShort: false,
  ...more,
});
const caseOf = (name: string, time: string, more: Partial<DayCaseFacts> = {}): DayCaseFacts => ({
  id: caseId.parse(`case_${name.toLowerCase()}`),
  reference: `LM-26-${name}`,
  theatreId: 'theatre_1',
  theatre: 'Theatre 1',
  startsAt: at(time),
  endsAt: new Date(ms(time) + 2 * 3_600_000).toISOString(),
  caseDate: DAY,
  surgeon: 'Tobias Wray',
  cancelled: null,
  plan: { confirmedVersion: 1, draftVersion: null },
  promised: [],
  ...more,
});
const promised = (code: string, more: object = {}) => ({
  setId: `set_${code.toLowerCase()}`,
  code,
  inUse: false,
  outOfService: false,
  ...more,
});

interface Given {
  code: string;
  readyAt: string;
  needBy: string;
  afterCase?: string;
  pouches?: string[];
  backAt?: string;
}

/** The day as loaded: sets with when they are ready, cases with what planning gives them or what is in the way. */
function day(world: {
  cases: DayCaseFacts[];
  sets: [string, SetOf][];
  gives?: Record<string, Given[]>;
  unserved?: SetTurnaroundOutput['unserved'];
  ways?: Record<string, CaseToServe['ways']>;
  left?: string[];
}): DayReportFacts {
  const sets = world.sets.map(([code, more]) => setOf(code, more));
  const planning: PlanningFacts = {
    now: NOW,
    cases: world.cases
      .filter(({ reference }) => !(world.left ?? []).includes(reference))
      .map((one) => ({
        id: one.id,
        reference: one.reference,
        revision: 1,
        theatreId: one.theatreId,
        startsAt: one.startsAt,
        endsAt: one.endsAt,
        leadMinutes: 60,
        urgency: 'booked',
        confirmed: one.plan.confirmedVersion !== null,
        ways:
          world.ways?.[one.reference] !== undefined
            ? (world.ways[one.reference] ?? null)
            : one.plan.confirmedVersion === null && one.plan.draftVersion === null
              ? null
              : { outcome: 'canBeMet', ways: [], all: true, missing: [], outOfReach: [] },
      })),
    configurations: [],
    sets: sets.map(({ id, code, configuration, step }, index) => {
      const ready = world.sets[index]?.[1].readyAt;
      return {
        id,
        code,
        revision: 1,
        configuration,
        readyMinutes:
          step === 'inSterileStore'
            ? { p50: 0, p90: 0 }
            : ready
              ? { p50: minutes('06:30', ready[0]), p90: minutes('06:30', ready[1]) }
              : null,
        inStore: step === 'inSterileStore',
      };
    }),
    pouches: [],
    promises: [],
    rule: { planBy: 'p90', marginMinutes: 30 },
  };
  const assignments = Object.entries(world.gives ?? {}).map(([reference, list]) => ({
    case: reference,
    needByMs: ms(list[0]?.needBy ?? '07:30'),
    way: 0,
    sets: list.map(({ code, readyAt, needBy, afterCase, backAt }) => ({
      set: code,
      afterCase: afterCase ?? null,
      readyAtMs: ms(readyAt),
      marginMinutes: minutes(readyAt, needBy),
      inTime: 'nineInTen' as const,
      backAtMs: ms(backAt ?? '18:00'),
    })),
    pouches: list.flatMap(({ pouches }) => pouches ?? []),
  }));
  const answer = {
    copies: [],
    served: assignments.length,
    of: world.cases.length,
    assignments,
    unserved: world.unserved ?? [],
    clashes: [],
    movedPromises: [],
    slipsInOrder: [],
    repairs: [],
  } as unknown as SetTurnaroundOutput;
  return { now: NOW, day: DAY, cases: world.cases, planning, answer, sets };
}
const kindsOf = (facts: DayReportFacts) => dayReport(facts, null).steps.map(({ kind }) => kind);

describe('figures and the table by theatre', () => {
  const facts = day({
    cases: [
      caseOf('LATE', '12:00'),
      caseOf('REDY', '08:30'),
      caseOf('DRFT', '09:00', {
        theatreId: 'theatre_2',
        theatre: 'Theatre 2',
        plan: { confirmedVersion: null, draftVersion: 1 },
      }),
      caseOf('NONE', '11:00', {
        theatreId: 'theatre_10',
        theatre: 'Theatre 10',
        plan: { confirmedVersion: null, draftVersion: null },
      }),
      caseOf('SHRT', '13:00', { theatreId: 'theatre_2', theatre: 'Theatre 2' }),
      caseOf('GONE', '15:00', { cancelled: {} }),
      caseOf('WENT', '07:00', { promised: [promised('AAA-04', { inUse: true })] }),
      caseOf('OVER', '04:00', { promised: [promised('AAA-05')] }),
    ],
    left: ['LM-26-WENT', 'LM-26-OVER'],
    sets: [
      ['AAA-01', {}],
      ['AAA-02', { step: 'washing', act: 'endWash', readyAt: ['09:30', '10:10'] }],
      ['AAA-03', {}],
      ['AAA-04', { step: 'inTheatre', act: 'receive', readyAt: ['13:00', '14:00'] }],
      ['AAA-05', {}],
    ],
    gives: {
      'LM-26-REDY': [
        { code: 'AAA-01', readyAt: '06:30', needBy: '07:30', pouches: [stockId.parse('stock_1')] },
      ],
      'LM-26-LATE': [{ code: 'AAA-02', readyAt: '10:10', needBy: '11:00' }],
      'LM-26-DRFT': [{ code: 'AAA-03', readyAt: '06:30', needBy: '08:00' }],
    },
    ways: {
      'LM-26-SHRT': {
        outcome: 'short',
        ways: [],
        all: true,
        missing: [],
        outOfReach: [],
      },
    },
  });
  const report = dayReport(facts, null);

  it('every case on the list is counted once; those cancelled are not', () => {
    expect(report.counts).toEqual({
      ready: 1,
      waiting: 1,
      short: 1,
      notPlanned: 1,
      notConfirmed: 1,
      begun: 1,
      over: 1,
      notKnown: 0,
    });
    expect(bucketFigures(report.counts).map(({ label, value }) => `${label} ${value}`)).toEqual([
      'Cases 7',
      'Ready 1',
      'Waiting for a set 1',
      'Short, or no set free 1',
      'Not planned 1',
      'Plan not confirmed 1',
      'Begun 1',
      'Over 1',
    ]);
  });

  it('theatres follow by number and cases by time, with need-by and margin; what is not known is said', () => {
    const rows = report.lines.map((line) => [
      line.facts.theatre,
      line.facts.reference.slice(6),
      lineStanding(line, names).word,
      line.needByAt?.slice(11, 16) ?? null,
      lineMargin(line),
    ]);
    expect(rows).toEqual([
      ['Theatre 1', 'OVER', 'Over', null, 'past'],
      ['Theatre 1', 'WENT', 'Begun', null, 'past'],
      ['Theatre 1', 'REDY', 'Ready with a pouch', '07:30', '1 h'],
      ['Theatre 1', 'LATE', 'Waiting until 10:10', '11:00', '50 min'],
      ['Theatre 2', 'DRFT', 'Plan not confirmed', '08:00', '1 h 30 min'],
      ['Theatre 2', 'SHRT', 'Short', '12:00', 'not known'],
      ['Theatre 10', 'NONE', 'Not planned', '10:00', 'not known'],
    ]);
  });

  it('a set on its way is told with half of the time and nine times in ten; one in theatre for its own case is not', () => {
    expect(report.onTheWay).toMatchObject([
      {
        set: { code: 'AAA-02' },
        expected: { p50At: at('09:30'), p90At: at('10:10') },
        needByAt: at('11:00'),
        marginMinutes: 50,
        by: [{ reference: 'LM-26-LATE' }],
      },
    ]);
  });

  it('what keeps a case from being ready comes in the order in which sets are needed, and what has time enough is left out', () => {
    expect(report.steps.map(({ kind, needByAt }) => [kind, needByAt?.slice(11, 16)])).toEqual([
      ['confirmPlan', '08:00'],
      ['plan', '10:00'],
      ['shortOf', '12:00'],
    ]);
  });
});

describe('what to do first about a set', () => {
  const one = (set: SetOf, more: object = {}) =>
    day({
      cases: [caseOf('ONE', '08:30', { promised: [promised('AAA-01')], ...more })],
      sets: [['AAA-01', set]],
      gives: {
        'LM-26-ONE': [{ code: 'AAA-01', readyAt: set.readyAt?.[1] ?? '06:30', needBy: '07:30' }],
      },
    });
  const said = (facts: DayReportFacts) => stepLines(dayReport(facts, null).steps, names)[0];

  it.each<[string, SetOf, string[]]>([
    ['in the store: nothing', {}, []],
    [
      'on its way with time enough: nothing',
      { step: 'packed', act: 'load', readyAt: ['06:40', '07:00'] },
      [],
    ],
    [
      'within the wanted margin: hurry',
      { step: 'packed', act: 'load', readyAt: ['06:40', '07:01'] },
      ['hurry'],
    ],
    [
      'nobody can say when it is ready: hurry',
      { step: 'inTheatre', act: 'receive', readyAt: null },
      ['hurry'],
    ],
    [
      'held',
      { step: 'held', act: 'liftHold', heldBecause: 'disputedCount', readyAt: null },
      ['promiseNotKept'],
    ],
    ['past use-by on the day', { useBy: plainDate.parse('2026-01-13') }, ['promiseNotKept']],
    [
      'waiting for a decision',
      { step: 'shortAwaitingDecision', act: 'decideShort', readyAt: null },
      ['decideShort'],
    ],
    [
      'in a load to be accepted, however much time there is',
      {
        step: 'awaitingAcceptance',
        act: 'accept',
        load: { id: 'load_1', number: '460' },
        readyAt: ['06:35', '06:40'],
      },
      ['acceptLoad'],
    ],
    [
      'a count that nobody closed',
      {
        step: 'onBench',
        act: 'count',
        count: { by: 'Wren Adeyemi', beganAt: at('05:50') },
        readyAt: ['06:35', '06:40'],
      },
      ['closeCount'],
    ],
    [
      'short of what the case needs',
      {
        stops: [
          {
            kind: 'case',
            caseId: 'case_one',
            reference: 'LM-26-ONE',
            startsAt: at('08:30'),
            stopped: [],
            shortItems: [SCREW],
          },
        ],
      },
      ['shortStops'],
    ],
    [
      'short of what another day’s case needs: not here',
      {
        stops: [
          {
            kind: 'case',
            caseId: 'case_two',
            reference: 'LM-26-TWO',
            startsAt: at('08:30'),
            stopped: [],
            shortItems: [SCREW],
          },
        ],
      },
      [],
    ],
  ])('%s', (_what, set, expected) => {
    expect(kindsOf(one(set))).toEqual(expected);
  });

  it('says by when it must be back, when it is ready, and by how much that misses', () => {
    expect(said(one({ step: 'packed', act: 'load', readyAt: ['07:10', '07:50'] }))).toMatchObject({
      tone: 'stop',
      word: 'Hurry: put in a load',
      about: 'AAA-01',
      href: '/loads',
      needBy: 'today 07:30',
      sentence:
        'It must be back today 07:30; ready today 07:10 half of the time, today 07:50 nine times in ten: 20 min too late.',
    });
    expect(said(one({ step: 'inTheatre', act: 'receive', readyAt: null }))?.sentence).toBe(
      'It must be back today 07:30; when it is ready is not known.',
    );
    expect(marginWords(null)).toBe('not known');
  });

  it('a set whose usual time is over and that nobody moved on is not in the store, and its case is not ready', () => {
    const facts = one({ step: 'packed', act: 'load', readyAt: ['06:30', '06:30'] });
    const { lines, onTheWay } = dayReport(facts, null);
    expect(lines[0]?.bucket).toBe('waiting');
    expect(expectedWords(onTheWay[0]?.expected ?? null, NOW).p90).toBe('its usual time is over');
    expect(expectedWords({ p50At: NOW, p90At: at('06:50') }, NOW)).toEqual({
      p50: 'any minute',
      p90: 'today 06:50',
    });
  });

  it('a promise that is not kept says why', () => {
    expect(
      said(one({ step: 'held', act: 'liftHold', heldBecause: 'disputedCount', readyAt: null })),
    ).toMatchObject({
      word: 'Promise not kept: held',
      href: '/sets/set_aaa-01#hold',
      sentence: 'It is promised to LM-26-ONE and held, because its count is disputed.',
    });
  });

  it('one load with two sets is one thing to do, for the case that needs it first', () => {
    const load = { id: 'load_1', number: '460' };
    const waits: SetOf = { step: 'awaitingAcceptance', act: 'accept', load, readyAt: ['06:35', '06:40'] };
    const facts = day({
      cases: [caseOf('ONE', '08:30'), caseOf('TWO', '08:00')],
      sets: [
        ['AAA-01', waits],
        ['AAA-02', waits],
      ],
      gives: {
        'LM-26-ONE': [{ code: 'AAA-01', readyAt: '06:40', needBy: '07:30' }],
        'LM-26-TWO': [{ code: 'AAA-02', readyAt: '06:40', needBy: '07:00' }],
      },
    });
    const { steps } = dayReport(facts, null);
    expect(steps).toMatchObject([{ kind: 'acceptLoad', needByAt: at('07:00') }]);
    expect(steps[0]?.cases.map(({ reference }) => reference).sort()).toEqual(['LM-26-ONE', 'LM-26-TWO']);
  });

  it('where no set is free, the one that misses by the least is to be hurried', () => {
    const obstacle = (set: string, missesMinutes: number) => ({
      set,
      kind: 'notReady' as const,
      byCase: null,
      atMs: ms('07:30') + missesMinutes * 60_000,
      pouch: null,
      missesMinutes,
    });
    const facts = day({
      cases: [caseOf('ONE', '08:30')],
      sets: [
        ['AAA-01', { step: 'washing', act: 'endWash', readyAt: ['08:00', '09:30'] }],
        ['AAA-02', { step: 'packed', act: 'load', readyAt: ['07:20', '07:40'] }],
      ],
      unserved: [
        {
          case: 'LM-26-ONE',
          needByMs: ms('07:30'),
          ways: [{ way: 0, obstacles: [obstacle('AAA-01', 120), obstacle('AAA-02', 10)] }],
          slipMinutes: 10,
          startAtMs: ms('08:40'),
        },
      ],
    });
    const steps = stepLines(dayReport(facts, null).steps, names);
    expect(steps.map(({ word, about }) => [word, about])).toEqual([
      ['No set free', 'LM-26-ONE'],
      ['Hurry: put in a load', 'AAA-02'],
    ]);
  });
});

describe('sets between two cases, and sets short or held', () => {
  it('a set that serves two cases is told with what lies between, tight or not', () => {
    const facts = day({
      cases: [caseOf('ONE', '08:00'), caseOf('TWO', '16:30')],
      sets: [['AAA-01', {}]],
      gives: {
        'LM-26-ONE': [{ code: 'AAA-01', readyAt: '06:30', needBy: '07:00' }],
        'LM-26-TWO': [{ code: 'AAA-01', readyAt: '15:10', needBy: '15:30', afterCase: 'LM-26-ONE' }],
      },
    });
    const { turned, steps } = dayReport(facts, null);
    expect(turned).toMatchObject([
      {
        code: 'AAA-01',
        first: 'LM-26-ONE',
        second: 'LM-26-TWO',
        firstEndsAt: at('10:00'),
        backAt: at('15:10'),
        needByAt: at('15:30'),
        marginMinutes: 20,
        tight: true,
      },
    ]);
    expect(steps.map(({ kind }) => kind)).toEqual(['hurryBetween']);
  });

  it('held and short sets of a kind that a plan asks for are told, those counted on first, others not', () => {
    const facts = day({
      cases: [caseOf('ONE', '08:30'), caseOf('TWO', '09:30', { promised: [promised('BBB-01')] })],
      sets: [
        ['AAA-01', {}],
        ['AAA-02', { step: 'held', heldBecause: 'recall', act: 'liftHold' }],
        ['BBB-01', { mustHaveShort: true }],
        ['CCC-01', { step: 'held', heldBecause: 'recall', act: 'liftHold' }],
      ],
      gives: { 'LM-26-ONE': [{ code: 'AAA-01', readyAt: '06:30', needBy: '07:30' }] },
    });
    expect(
      dayReport(facts, null).lacking.map(({ set, counting, askingForKind }) => [
        set.code,
        counting,
        askingForKind,
      ]),
    ).toEqual([
      ['BBB-01', ['LM-26-TWO'], []],
      ['AAA-02', [], ['LM-26-ONE']],
    ]);
  });
});

describe('what must be asked for the day before', () => {
  const heap = (more: Partial<ShelfFacts>): ShelfFacts => ({
    itemId: SCREW,
    form: 'sterilePacked',
    quantity: 2,
    lot: 'L1',
    useBy: plainDate.parse('2026-06-01'),
    place: 'Pouch rack 1',
    heldBecause: null,
    ...more,
  });
  const facts = day({
    cases: [
      caseOf('ONE', '08:30', { promised: [promised('AAA-01')] }),
      caseOf('TWO', '09:30', { plan: { confirmedVersion: null, draftVersion: 1 } }),
      caseOf('TRE', '10:30', { plan: { confirmedVersion: 1, draftVersion: 2 } }),
      caseOf('FOR', '11:30', { plan: { confirmedVersion: null, draftVersion: null } }),
    ],
    sets: [['AAA-01', { useBy: plainDate.parse('2026-01-13') }]],
  });
  const takes = (name: string, pieces: number) => ({
    caseId: caseId.parse(`case_${name}`),
    implants: [{ itemId: SCREW, what: 'screw' as const, pieces }],
    serves: new Set([SCREW]),
  });
  const ask = (planned: number[], shelf: ShelfFacts[]) =>
    dayReport(facts, { planned: planned.map((pieces, at) => takes(at === 0 ? 'one' : 'two', pieces)), shelf })
      .ask;

  it('names each plan to ask for, each confirmation, each set past use-by on the day', () => {
    const asked = ask([], []);
    expect(asked && askLines(asked, names).map(({ word, about }) => [word, about])).toEqual([
      ['Plan', 'LM-26-FOR'],
      ['Confirmation', 'LM-26-TWO'],
      ['Confirmation', 'LM-26-TRE'],
      ['Set past use-by', 'AAA-01'],
    ]);
    expect(dayReport(facts, null).ask).toBeNull();
  });

  it('screws are low where the racks would lie below their minimum and the shelf can’t fill them again', () => {
    const shelf = [heap({}), heap({ form: 'unsterile', useBy: null })];
    // none in the sets, four on the shelf
    expect(ask([2, 2], shelf)?.lowScrews).toEqual([]);
    expect(ask([3, 2], shelf)?.lowScrews).toEqual([
      {
        itemId: SCREW,
        planned: 5,
        inSets: 0,
        minimum: 0,
        sterile: 2,
        unsterile: 2,
        references: ['LM-26-ONE', 'LM-26-TWO'],
      },
    ]);
    // six in the rack, at least two should lie there: four may go before anything has to come from the shelf
    const racked = (found: number | null) => [[SCREW, { found, minimum: 2 }]] as const;
    const withRack = (found: number | null, planned: number, heaps: ShelfFacts[]) =>
      dayReport(
        { ...facts, sets: facts.sets.map((set) => ({ ...set, screws: new Map(racked(found)) })) },
        { planned: [takes('one', planned)], shelf: heaps },
      ).ask?.lowScrews.length;
    expect(withRack(6, 4, [])).toBe(0);
    expect(withRack(6, 5, [])).toBe(1);
    expect(withRack(6, 5, [heap({ quantity: 1 })])).toBe(0);
    // a rack that nobody has counted is not taken to hold anything
    expect(withRack(null, 1, [heap({ quantity: 2 })])).toBe(1);
    expect(withRack(null, 1, [heap({ quantity: 3 })])).toBe(0);
  });

  it('what is held or past use-by on the day of the case is on no shelf; a use-by is good to the end of its day', () => {
    const onDay = heap({ useBy: DAY });
    const past = heap({ useBy: plainDate.parse('2026-01-13') });
    expect(ask([2], [onDay])?.lowScrews).toEqual([]);
    expect(ask([2], [onDay])?.packsPastUseBy).toEqual([]);
    expect(ask([2], [past])?.lowScrews).toHaveLength(1);
    expect(ask([2], [past])?.packsPastUseBy).toMatchObject([{ references: ['LM-26-ONE'] }]);
    expect(ask([2], [heap({ heldBecause: 'recall' })])?.lowScrews).toHaveLength(1);
  });
});
