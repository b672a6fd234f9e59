import { describe, expect, test } from 'vitest';
import type { ItemId, StockId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { HeldLine } from '@/lib/sets/holdings';
import { type Approver, type ShortRule, shortAsk, shortLinesOf } from '@/lib/sets/short/ask';
import {
  type Lapse,
  lapsesOf,
  type NamedCase,
  notCovered,
  type ShortDecision,
  shortDecision,
  whyNotForCase,
} from '@/lib/sets/short/decision';
import { checkStandIns, choicesFor, type Pouch, type StandIn } from '@/lib/sets/short/standIns';
import { lineOf } from './fixtures';

type Held = Partial<HeldLine>;

/** A line that holds what it should unless said otherwise. */
const held = (item: string, change: Held): HeldLine => {
  const line = lineOf(item, change);
  return { ...line, found: line.expected, unsound: 0, condition: 'sound', ...change };
};
const item = (name: string) => `item_${name}` as ItemId;
const pouch = (name: string, quantity = 1): Pouch => ({
  stockId: `stock_${name}` as StockId,
  itemId: item(name),
  quantity,
  useBy: '2026-12-31' as PlainDate,
});

const WHOLE = held('plate', { mustHaveClass: 1 });
const sleeve = (change: Held) => held('sleeve', { mustHaveClass: 1, expected: 2, minimum: 1, ...change });
const bit = (change: Held) =>
  held('bit', { mustHaveClass: 2, expected: 2, minimum: 2, substitutes: [item('long-bit')], ...change });
const spare = (change: Held) => held('spare', { mustHaveClass: 3, expected: 2, minimum: 0, ...change });
const tray = (change: Held) => held('tray', { mustHaveClass: 4, expected: 1, minimum: 0, ...change });

/** Domain.md §5, "When a set may go": each row, where it applies and where it does not. */
const TABLE: {
  why: string;
  lines: HeldLine[];
  foreign?: { itemId: ItemId; quantity: number }[];
  pouches?: Pouch[];
  asks: ReturnType<typeof shortAsk>['asks'];
  approvers?: Approver[];
  rules: ShortRule[];
}[] = [
  { why: 'nothing is short', lines: [WHOLE, bit({}), spare({})], asks: 'nothing', rules: [] },
  {
    why: 'class 3 short: a technician may pack',
    lines: [WHOLE, spare({ found: 1 })],
    asks: 'technician',
    approvers: ['technician'],
    rules: ['backUp'],
  },
  {
    why: 'class 3 all gone: still a technician, for nothing stops',
    lines: [WHOLE, spare({ found: 0 })],
    asks: 'technician',
    approvers: ['technician'],
    rules: ['backUp'],
  },
  {
    why: 'class 4 short: a technician may pack',
    lines: [WHOLE, tray({ found: 0 })],
    asks: 'technician',
    approvers: ['technician'],
    rules: ['backUp'],
  },
  {
    why: 'class 1 below what is expected but at its minimum: the step does not stop',
    lines: [sleeve({ found: 1 })],
    asks: 'technician',
    approvers: ['technician'],
    rules: ['backUp'],
  },
  {
    why: 'class 2 at its minimum: nothing has to stand in',
    lines: [bit({ found: 2, expected: 3 })],
    asks: 'technician',
    approvers: ['technician'],
    rules: ['backUp'],
  },
  {
    why: 'class 2 below its minimum: the decontamination lead, with a pouch of the named substitute',
    lines: [bit({ found: 1 })],
    pouches: [pouch('long-bit')],
    asks: 'approvers',
    approvers: ['decontaminationLead'],
    rules: ['classTwo'],
  },
  {
    why: 'class 2 with nothing to stand in: the same row, so it waits',
    lines: [bit({ found: 1 })],
    asks: 'approvers',
    approvers: ['decontaminationLead'],
    rules: ['classTwo'],
  },
  {
    why: 'class 1 below its minimum: theatre lead and operating surgeon',
    lines: [sleeve({ found: 0 })],
    asks: 'approvers',
    approvers: ['theatreLead', 'operatingSurgeon'],
    rules: ['classOne'],
  },
  {
    why: 'a pouch of a class 1 piece changes nothing: the table names no substitute for class 1',
    lines: [sleeve({ found: 0 })],
    pouches: [pouch('sleeve')],
    asks: 'approvers',
    approvers: ['theatreLead', 'operatingSurgeon'],
    rules: ['classOne'],
  },
  {
    why: 'class 1 and class 2: each row asks for its own people',
    lines: [sleeve({ found: 0 }), bit({ found: 0 }), spare({ found: 0 })],
    asks: 'approvers',
    approvers: ['decontaminationLead', 'theatreLead', 'operatingSurgeon'],
    rules: ['classOne', 'classTwo', 'backUp'],
  },
  {
    why: 'a surplus piece: not complete until its home is found',
    lines: [spare({ found: 3 })],
    asks: 'nobody',
    rules: ['homeless'],
  },
  {
    why: 'a foreign piece: the same',
    lines: [WHOLE],
    foreign: [{ itemId: item('stranger'), quantity: 1 }],
    asks: 'nobody',
    rules: ['homeless'],
  },
  {
    why: 'a surplus never makes up for what is short, and neither hides the other',
    lines: [spare({ found: 3 }), sleeve({ found: 0 })],
    asks: 'nobody',
    rules: ['homeless', 'classOne'],
  },
  {
    why: 'a line nobody has counted: never goes, whatever its class',
    lines: [WHOLE, tray({ found: null })],
    asks: 'nobody',
    rules: ['notEstablished'],
  },
  {
    why: 'a must-have nobody has counted is not short, it is not established',
    lines: [sleeve({ found: null }), spare({ found: 0 })],
    asks: 'nobody',
    rules: ['notEstablished', 'backUp'],
  },
];

test.each(TABLE)('$why', ({ lines, foreign = [], pouches = [], asks, approvers = [], rules }) => {
  for (const given of [lines, [...lines].reverse()]) {
    const ask = shortAsk({ lines: given, foreign, pouches });
    expect(ask.asks).toBe(asks);
    expect(ask.approvers).toEqual(approvers);
    expect(ask.findings.map(({ rule }) => rule)).toEqual(rules);
    expect(ask.oneCase).toBe(rules.includes('classOne'));
  }
});

test('class 1 that would be there but for damaged pieces says so', () => {
  const damaged = (line: HeldLine) =>
    shortAsk({ lines: [line], foreign: [], pouches: [] }).findings.map(
      (one) => one.rule === 'classOne' && one.damaged,
    );
  expect(damaged(sleeve({ found: 0, unsound: 1, condition: 'bent' }))).toEqual([true]);
  expect(damaged(sleeve({ found: 0 }))).toEqual([false]);
});

describe('what may stand in for class 2', () => {
  const long = held('long-bit', { mustHaveClass: 3, minimum: 0, expected: 1 });
  const chosenPouch = (line: HeldLine, name: string): StandIn => ({
    lineId: line.id,
    itemId: item(name),
    from: { kind: 'pouch', stockId: `stock_${name}` as StockId },
  });
  const name = (id: ItemId) => id;
  const short = bit({ found: 1 });

  test.each([
    { why: 'a pouch of the named substitute', pouches: [pouch('long-bit')], chosen: 'long-bit', codes: [] },
    { why: 'a pouch of the item itself', pouches: [pouch('bit')], chosen: 'bit', codes: [] },
    {
      why: 'a pouch of anything else',
      pouches: [pouch('drill')],
      chosen: 'drill',
      codes: ['not-approved'],
    },
    { why: 'a pouch that is gone', pouches: [], chosen: 'long-bit', codes: ['not-at-hand'] },
  ])('$why', ({ pouches, chosen, codes }) => {
    const found = checkStandIns([chosenPouch(short, chosen)], [short], pouches, name);
    expect(found.map(({ code }) => code)).toEqual(codes);
  });

  test('substitutes stand in one way', () => {
    const other = held('long-bit', { mustHaveClass: 2, expected: 1, minimum: 1, found: 0 });
    const found = checkStandIns([chosenPouch(other, 'bit')], [other], [pouch('bit')], name);
    expect(found.map(({ code }) => code)).toEqual(['not-approved']);
  });

  test('one piece stands in once', () => {
    const both = bit({ found: 0 });
    const chosen = [chosenPouch(both, 'long-bit'), chosenPouch(both, 'long-bit')];
    expect(checkStandIns(chosen, [both], [pouch('long-bit', 1)], name).map(({ code }) => code)).toEqual([
      'too-few',
    ]);
    expect(checkStandIns(chosen, [both], [pouch('long-bit', 2)], name)).toEqual([]);
  });

  test('every missing piece needs one, and no more', () => {
    const both = bit({ found: 0 });
    const codes = (chosen: StandIn[]) =>
      checkStandIns(chosen, [both], [pouch('long-bit', 9)], name).map(({ code }) => code);
    expect(codes([])).toEqual(['stand-ins-needed']);
    expect(codes([chosenPouch(both, 'long-bit')])).toEqual(['stand-ins-needed']);
    expect(codes(Array(3).fill(chosenPouch(both, 'long-bit')))).toEqual(['stand-ins-needed']);
  });

  test('a piece of another line stands in only beyond what that line must hold', () => {
    const inSet: StandIn = {
      lineId: short.id,
      itemId: long.itemId,
      from: { kind: 'inSet', lineId: long.id },
    };
    expect(checkStandIns([inSet], [short, long], [], name)).toEqual([]);
    const needed = { ...long, mustHaveClass: 1 as const, minimum: 1 };
    expect(checkStandIns([inSet], [short, needed], [], name).map(({ code }) => code)).toEqual([
      'not-at-hand',
    ]);
  });

  test('what is offered to choose from is what is accepted', () => {
    const pouches = [pouch('drill'), pouch('long-bit'), pouch('bit')];
    const offered = choicesFor(short, [short, long], pouches);
    expect(offered.map(({ itemId, from }) => `${itemId} ${from.kind}`)).toEqual([
      'item_bit pouch',
      'item_long-bit inSet',
      'item_long-bit pouch',
    ]);
    for (const { pieces: _pieces, ...one } of offered)
      expect(checkStandIns([one], [short, long], pouches, name)).toEqual([]);
  });

  test('given out to best effect: two lines, each with the one the other can do without', () => {
    const a = bit({});
    const one = { ...a, found: 1, substitutes: [item('x'), item('y')] };
    const two = held('bit-two', {
      mustHaveClass: 2,
      expected: 1,
      minimum: 1,
      found: 0,
      substitutes: [item('x')],
    });
    const { findings } = shortAsk({ lines: [one, two], foreign: [], pouches: [pouch('x'), pouch('y')] });
    const given = findings.flatMap((finding) =>
      finding.rule === 'classTwo' ? [finding.standIns.length] : [],
    );
    expect(given).toEqual([1, 1]);
  });
});

const CASE: NamedCase = {
  id: 'case_a',
  reference: 'LM-26-TEST',
  startsAt: '2026-01-14T09:00:00Z',
  endsAt: '2026-01-14T11:00:00Z',
  surgeonId: 'person_surgeon',
};
const approved = (as: Approver, personId: string) => ({
  as,
  personId,
  name: personId,
  method: 'pin' as const,
  at: '2026-01-14T07:00:00Z',
});
const decisionOf = (change: Partial<Record<keyof ShortDecision, unknown>> = {}): ShortDecision =>
  shortDecision.parse({
    id: 'decision_a',
    setId: 'set_a',
    turnId: 'turn_a',
    kind: 'oneCase',
    lines: shortLinesOf(shortAsk({ lines: [sleeve({ found: 0 })], foreign: [], pouches: [] }).findings),
    substitutes: [],
    reason: 'no other set',
    caseId: 'case_a',
    approvals: [approved('theatreLead', 'person_lead'), approved('operatingSurgeon', 'person_surgeon')],
    decidedAt: '2026-01-14T07:00:00Z',
    lapsesAt: CASE.endsAt,
    lapsedAt: null,
    ...change,
  });

describe('when a decision lapses', () => {
  const NOW = '2026-01-14T08:00:00Z';
  const table: { why: string; named: NamedCase | null; now?: string; change?: object; lapses: Lapse[] }[] = [
    { why: 'the case is still to come, and hers', named: CASE, lapses: [] },
    { why: 'the last moment of the case', named: CASE, now: '2026-01-14T10:59:59Z', lapses: [] },
    { why: 'the case has ended', named: CASE, now: '2026-01-14T11:00:00Z', lapses: ['caseOver'] },
    {
      why: 'the case was put off: the decision was for the day it was made for',
      named: { ...CASE, endsAt: '2026-01-20T11:00:00Z' },
      now: '2026-01-14T12:00:00Z',
      lapses: ['caseOver'],
    },
    {
      why: 'the case was brought forward, and is over',
      named: { ...CASE, endsAt: '2026-01-14T07:30:00Z' },
      lapses: ['caseOver'],
    },
    { why: 'the case is no longer booked', named: null, lapses: ['caseGone'] },
    {
      why: 'another surgeon operates',
      named: { ...CASE, surgeonId: 'person_other' },
      lapses: ['anotherSurgeon'],
    },
    { why: 'it was ended', named: CASE, change: { lapsedAt: NOW }, lapses: ['ended'] },
    {
      why: 'with a substitute it goes for any case, and nothing ends it',
      named: null,
      change: { kind: 'withSubstitute', caseId: null, lapsesAt: null },
      now: '2027-01-01T00:00:00Z',
      lapses: [],
    },
  ];
  test.each(table)('$why', ({ named, now = NOW, change = {}, lapses }) => {
    expect(lapsesOf(decisionOf(change), named, now)).toEqual(lapses);
  });

  test('a set let go for one case serves that case and no other', () => {
    const why = (forCase: string | null, named: NamedCase | null = CASE) =>
      whyNotForCase(decisionOf(), named, forCase, NOW);
    expect(why('case_a')).toBeNull();
    expect(why('case_b')).toEqual({ kind: 'otherCase', reference: 'LM-26-TEST' });
    expect(why(null)).toEqual({ kind: 'otherCase', reference: 'LM-26-TEST' });
    expect(why('case_a', { ...CASE, surgeonId: 'person_other' })).toEqual({
      kind: 'lapsed',
      because: 'anotherSurgeon',
    });
  });
});

describe('what a decision covers', () => {
  const open = (lines: HeldLine[], decision = decisionOf(), pouches: Pouch[] = []) =>
    notCovered(decision, shortAsk({ lines, foreign: [], pouches }), lines, pouches);

  test('what was decided, and less', () => {
    expect(open([sleeve({ found: 0 })])).toEqual([]);
    expect(open([sleeve({ found: 1 })])).toEqual([]);
    expect(open([sleeve({ found: 0 }), spare({ found: 0 })])).toEqual([]);
  });

  test('not what has become short since, nor more of it', () => {
    const plate = held('plate', { mustHaveClass: 1, found: 0 });
    expect(open([sleeve({ found: 0 }), plate])).toEqual([{ kind: 'moreIsShort', itemId: 'item_plate' }]);
    const two = sleeve({ found: 0, expected: 3, minimum: 2 });
    expect(open([two])).toEqual([{ kind: 'moreIsShort', itemId: 'item_sleeve' }]);
  });

  const lines = [bit({ found: 1 })];
  const withPouch = decisionOf({
    kind: 'withSubstitute',
    caseId: null,
    lapsesAt: null,
    lines: shortLinesOf(shortAsk({ lines, foreign: [], pouches: [] }).findings),
    substitutes: [
      { lineId: lines[0]?.id, itemId: item('long-bit'), from: { kind: 'pouch', stockId: 'stock_long-bit' } },
    ],
    approvals: [approved('decontaminationLead', 'person_lead')],
  });

  test('a substitute has to be at hand still', () => {
    expect(open(lines, withPouch, [pouch('long-bit')])).toEqual([]);
    expect(open(lines, withPouch, [])).toEqual([{ kind: 'standIns' }]);
  });

  test('a substitute for what has been refilled is not asked for', () => {
    expect(open([bit({})], withPouch, [])).toEqual([]);
  });

  test('class 2 that comes on top asks for its own person', () => {
    const both = [sleeve({ found: 0 }), bit({ found: 1 })];
    expect(open(both, decisionOf(), [pouch('long-bit')]).map(({ kind }) => kind)).toEqual([
      'moreIsShort',
      'standIns',
      'approverLacking',
    ]);
  });
});
