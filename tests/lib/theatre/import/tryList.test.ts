import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDate } from '@/lib/quantities/plainDate';
import { findColumns, statedRows } from '@/lib/theatre/import/columns';
import { readCsv } from '@/lib/theatre/import/csv';
import type { ImportFault } from '@/lib/theatre/import/faults';
import type { ListNow } from '@/lib/theatre/import/match';
import type { ListedCase } from '@/lib/theatre/import/outcome';
import type { RowChoices } from '@/lib/theatre/import/settle';
import { tryList } from '@/lib/theatre/import/tryList';
import { wallTimes } from '@/lib/theatre/import/wallTime';
import { importProblemOf } from '@/lib/wording/list-import';

const NOW = '2026-01-14T07:00:00.000Z';
const THEATRES = [
  { id: 'theatre_1', name: 'Theatre 1' },
  { id: 'theatre_3', name: 'Theatre 3, trauma' },
];
const NONE: RowChoices = { dateOrder: null, repeatedHour: null, urgencyWhereNone: null };
const HEAD = [
  'Theatre',
  'Date',
  'Start',
  'End',
  'Minutes',
  'Region',
  'Side',
  'Surgeon',
  'Urgency',
  'Case reference',
  'Row id',
];
type Cells = Partial<Record<string, string>>;
const GOOD: Cells = {
  Theatre: 'theatre 1',
  Date: '2026-01-20',
  Start: '08:30',
  Minutes: '90',
  Region: 'distal radius',
  Side: 'L',
  Surgeon: 'Mr Tobias Wray',
  Urgency: 'Booked',
};
const LISTED: ListedCase = {
  id: 'case_a',
  reference: 'LM-26-AAAA',
  theatreId: 'theatre_1',
  startsAt: '2026-01-20T12:00:00.000Z',
  endsAt: '2026-01-20T13:00:00.000Z',
  region: 'ankle',
  limb: 'right',
  surgeonId: 'person_b',
  surgeon: 'Ines Halloran',
  urgency: 'booked',
  revision: 3,
  cancelled: false,
  setInTheatre: null,
};

interface World {
  zone?: string;
  today?: string;
  now?: string;
  choices?: Partial<RowChoices>;
  cases?: ListedCase[];
  known?: [string, string][];
}

function tried(
  rows: Cells[],
  {
    zone = 'Europe/London',
    today = '2026-01-14',
    now = NOW,
    choices,
    cases = [LISTED],
    known = [],
  }: World = {},
) {
  const quoted = (cell = '') => `"${cell}"`;
  const csv = [HEAD, ...rows.map((row) => HEAD.map((name) => row[name]))].map((cells) =>
    cells.map(quoted).join(','),
  );
  const read = readCsv(csv.join('\n'));
  if (!read.ok) throw new Error(read.why);
  const columns = findColumns(read.rows, {});
  if (!columns) throw new Error('no columns');
  const list: ListNow = { now, cases, caseOfRowId: new Map(known), theatres: THEATRES };
  return tryList(
    { rows: statedRows(read.rows, columns), understood: { format: 'csv', separator: ',', columns } },
    {
      wall: wallTimes(zone),
      today: plainDate.parse(today),
      theatres: THEATRES,
      surgeons: [
        { id: 'person_a', name: 'Tobias Wray' },
        { id: 'person_b', name: 'Ines Halloran' },
        { id: 'person_c', name: 'Sam Twin' },
        { id: 'person_d', name: 'Sam Twin' },
      ],
      others: ['Wren Adeyemi'],
    },
    list,
    { ...NONE, ...choices },
  );
}
const one = (row: Cells, world?: World) => {
  const { outcomes, problems } = tried([{ ...GOOD, ...row }], world);
  return {
    outcome: outcomes[0],
    problems,
    codes: problems.map(({ field, fault }) => `${field}: ${fault.code}`),
  };
};

describe('a row of a theatre list', () => {
  it('is a new case where it is known by nothing', () => {
    const { outcome, problems } = one({});
    expect(problems).toEqual([]);
    expect(outcome).toMatchObject({
      kind: 'new',
      row: 2,
      to: {
        theatre: { id: 'theatre_1' },
        startsAt: '2026-01-20T08:30:00.000Z',
        endsAt: '2026-01-20T10:00:00.000Z',
      },
      region: 'distalRadius',
      limb: 'left',
      surgeon: { id: 'person_a' },
      urgency: 'booked',
    });
  });

  it.each<[string, Cells, string]>([
    ['an unknown theatre', { Theatre: 'Theatre 9' }, 'theatre: theatre-unknown'],
    ['no theatre', { Theatre: '' }, 'theatre: needed'],
    ['a surgeon who is not here', { Surgeon: 'Jo Nobody' }, 'surgeon: surgeon-unknown'],
    ['a surgeon of whom there are two', { Surgeon: 'Sam Twin' }, 'surgeon: surgeon-ambiguous'],
    ['somebody who is no surgeon', { Surgeon: 'Wren Adeyemi' }, 'surgeon: not-a-surgeon'],
    ['an ambiguous date', { Date: '03/04/2026' }, 'date: date-either-order'],
    ['a day that never comes', { Date: '31.04.2026' }, 'date: no-such-day'],
    ['a date of birth', { Date: '1951-04-02' }, 'date: date-far-off'],
    ['no date', { Date: '' }, 'date: needed'],
    ['a decimal time', { Start: '8.30' }, 'start: not-a-time'],
    ['no start', { Start: '' }, 'start: needed'],
    ['neither end nor minutes', { Minutes: '' }, 'minutes: needed'],
    ['minutes with a unit', { Minutes: '90 min' }, 'minutes: not-minutes'],
    ['too few minutes', { Minutes: '9' }, 'minutes: minutes-out-of-range'],
    ['too many minutes', { Minutes: '1441' }, 'minutes: minutes-out-of-range'],
    ['end and minutes that differ', { End: '09:30' }, 'minutes: end-and-minutes-differ'],
    ['an end at its start', { End: '08:30', Minutes: '' }, 'end: end-not-after-start'],
    ['another region', { Region: 'Shoulder' }, 'region: region-unknown'],
    ['both sides', { Side: 'Bilateral' }, 'side: both-sides'],
    ['another side', { Side: 'Medial' }, 'side: side-unknown'],
    ['no urgency', { Urgency: '' }, 'urgency: needed'],
    ['another urgency', { Urgency: 'Elective' }, 'urgency: urgency-unknown'],
    ['a hospital number as its id', { 'Row id': 'P7654321' }, 'rowId: looks-like-a-patient-number'],
    ['a national number as its id', { 'Row id': '943 476 5919' }, 'rowId: looks-like-a-patient-number'],
    ['a counter as its id', { 'Row id': '12' }, 'rowId: row-counter'],
    ['a reference that is none', { 'Case reference': '4711' }, 'caseReference: not-a-reference'],
    ['a reference that is not here', { 'Case reference': 'LM-26-ZZZZ' }, 'caseReference: no-such-case'],
    ['a day gone by', { Date: '2026-01-13' }, 'start: is-over'],
    ['a theatre that is taken', { Start: '11:30' }, 'start: theatre-taken'],
    ['the error of a formula', { Minutes: '#DIV/0!' }, 'minutes: not-minutes'],
  ])('with %s is a problem at its cell', (_, row, code) => {
    const { codes, problems, outcome } = one(row);
    expect(codes).toEqual([code]);
    const [problem] = problems;
    expect(problem?.row).toBe(2);
    expect(problem ? importProblemOf(problem).message : '').toMatch(/^Row 2, [A-Z].*: .{10,}\.$/);
    if (code !== 'start: theatre-taken') expect(outcome).toBeUndefined();
  });

  it('says all its problems at once', () => {
    expect(
      one({ Theatre: 'X', Date: 'soon', Region: '?', Side: '?', Surgeon: '?', Urgency: '?' }).codes,
    ).toEqual([
      'theatre: theatre-unknown',
      'date: not-a-date',
      'region: region-unknown',
      'side: side-unknown',
      'surgeon: surgeon-unknown',
      'urgency: urgency-unknown',
    ]);
  });

  it('says what it lacks together with what it says wrongly', () => {
    expect(
      one({ Theatre: '', Date: '', Start: '', Region: '', Side: '?', Surgeon: '', Urgency: '' }).codes,
    ).toEqual([
      'theatre: needed',
      'date: needed',
      'start: needed',
      'region: needed',
      'side: side-unknown',
      'surgeon: needed',
      'urgency: needed',
    ]);
  });

  it('is never repeated where it looks like a patient’s data', () => {
    for (const [row, cell] of [
      [{ Region: 'Penelope Quillfeather' }, 'Quillfeather'],
      [{ Surgeon: 'Mrs Penelope Quillfeather' }, 'Quillfeather'],
      [{ Date: '02/04/1951' }, '1951'],
      [{ Side: '943 476 5919' }, '943'],
      [{ 'Row id': 'P7654321' }, 'P7654321'],
      [{ Theatre: 'A123456' }, 'A123456'],
    ] as const) {
      const { problems } = one(row);
      expect(problems.length).toBeGreaterThan(0);
      expect(problems.some(({ withheld }) => withheld)).toBe(true);
      expect(JSON.stringify([problems, problems.map(importProblemOf)])).not.toContain(cell);
    }
    expect(one({ Theatre: 'Theatre 9' }).problems[0]).toMatchObject({ value: 'Theatre 9', withheld: false });
    expect(one({ Region: 'x'.repeat(50) }).problems[0]?.value).toBe(`${'x'.repeat(30)}…`);
  });

  it('ends on the day after where its end is before its start, and says so', () => {
    const { outcome } = one({ Start: '22:00', End: '01:30', Minutes: '' });
    expect(outcome).toMatchObject({
      to: { endsAt: '2026-01-21T01:30:00.000Z' },
      remarks: [{ code: 'past-midnight' }],
    });
  });

  it('takes the urgency a person chose where it states none, and the order of dates', () => {
    expect(one({ Urgency: '' }, { choices: { urgencyWhereNone: 'soon' } }).outcome).toMatchObject({
      urgency: 'soon',
      remarks: [{ code: 'urgency-from-choice' }],
    });
    const april = { Date: '03/04/2026' };
    expect(one(april, { choices: { dateOrder: 'dayFirst' } }).outcome).toMatchObject({
      to: { startsAt: '2026-04-03T07:30:00.000Z' },
    });
    expect(one(april, { choices: { dateOrder: 'monthFirst' } }).outcome).toMatchObject({
      to: { startsAt: '2026-03-04T08:30:00.000Z' },
    });
  });
});

/** The changes of 2026: last Sundays of March and October at 01:00 UTC (Directive 2000/84/EC; UK Summer Time Order 2002). */
describe('daylight saving', () => {
  const spring = { today: '2026-03-20', now: '2026-03-20T07:00:00.000Z', cases: [] };
  const autumn = { today: '2026-10-20', now: '2026-10-20T07:00:00.000Z', cases: [] };
  const march = { Date: '2026-03-29' };
  const october = { Date: '2026-10-25' };

  it('has no case in the hour that is skipped', () => {
    expect(one({ ...march, Start: '01:30' }, spring).codes).toEqual(['start: time-skipped']);
    expect(one({ ...march, Start: '00:30', End: '01:30', Minutes: '' }, spring).codes).toEqual([
      'end: time-skipped',
    ]);
  });

  it('counts minutes on the clock of the instants, not of the wall', () => {
    const over = { ...march, Start: '00:30' };
    // 90 minutes from 00:30 GMT are 02:00 GMT, when the wall shows 03:00
    expect(one({ ...over, Minutes: '90' }, spring).outcome).toMatchObject({
      to: { startsAt: '2026-03-29T00:30:00.000Z', endsAt: '2026-03-29T02:00:00.000Z' },
    });
    expect(one({ ...over, End: '03:00', Minutes: '90' }, spring).codes).toEqual([]);
    expect(one({ ...over, End: '02:00', Minutes: '90' }, spring).codes).toEqual([
      'minutes: end-and-minutes-differ',
    ]);
  });

  it('asks which of two is meant in the hour that comes twice, and takes the one chosen', () => {
    const twice = { ...october, Start: '01:30' };
    expect(one(twice, autumn).codes).toEqual(['start: time-repeated']);
    expect(one(twice, { ...autumn, choices: { repeatedHour: 'first' } }).outcome).toMatchObject({
      to: { startsAt: '2026-10-25T00:30:00.000Z' },
      remarks: [{ code: 'repeated-hour', chosen: 'first' }],
    });
    expect(one(twice, { ...autumn, choices: { repeatedHour: 'second' } }).outcome).toMatchObject({
      to: { startsAt: '2026-10-25T01:30:00.000Z' },
    });
  });

  it('knows an end in the hour that comes twice by its minutes, or by being the only one after the start', () => {
    const row = { ...october, Start: '00:30', End: '01:30' };
    expect(one({ ...row, Minutes: '' }, autumn).codes[0]).toBe('end: time-repeated');
    expect(one({ ...row, Minutes: '60' }, autumn).outcome).toMatchObject({
      to: { endsAt: '2026-10-25T00:30:00.000Z' },
    });
    expect(one({ ...row, Minutes: '120' }, autumn).outcome).toMatchObject({
      to: { endsAt: '2026-10-25T01:30:00.000Z' },
    });
    const late = {
      ...october,
      Start: '2026-10-25T01:50:00+01:00',
      Date: '',
      End: '2026-10-25T01:10:00+00:00',
    };
    expect(one({ ...late, Minutes: '' }, autumn).outcome).toMatchObject({
      to: { startsAt: '2026-10-25T00:50:00.000Z', endsAt: '2026-10-25T01:10:00.000Z' },
    });
  });

  it('gives every row the length it says, in any of five zones, whenever it begins', () => {
    const zones = [
      'Europe/London',
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kolkata',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: 360 }),
        fc.integer({ min: 0, max: 1439 }),
        fc.integer({ min: 10, max: 1440 }),
        fc.constantFrom('first' as const, 'second' as const),
        (zone, days, minute, minutes, repeatedHour) => {
          const date = new Date(Date.UTC(2026, 0, 15 + days)).toISOString().slice(0, 10);
          const start = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
          const { outcome, codes } = one(
            { Date: date, Start: start, Minutes: String(minutes) },
            { zone, cases: [], choices: { repeatedHour } },
          );
          if (outcome?.kind !== 'new') return expect(codes).toEqual(['start: time-skipped']);
          const { startsAt, endsAt } = outcome.to;
          expect(Date.parse(endsAt) - Date.parse(startsAt)).toBe(minutes * 60_000);
          expect(new Date(startsAt).toLocaleString('sv-SE', { timeZone: zone }).slice(0, 16)).toBe(
            `${date} ${start}`,
          );
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('a case that is on the list already', () => {
  const same: Cells = {
    Theatre: 'Theatre 1',
    Date: '2026-01-20',
    Start: '12:00',
    Minutes: '60',
    Region: 'Ankle',
    Side: 'Right',
    Surgeon: 'Ines Halloran',
  };
  const mine = { 'Case reference': 'lm-26-aaaa' };
  const only = (cells: Cells) => ({
    Theatre: '',
    Date: '',
    Start: '',
    Minutes: '',
    Region: '',
    Side: '',
    Surgeon: '',
    Urgency: '',
    ...cells,
  });

  it('is known by saying the same, and stays', () => {
    expect(one(same)).toMatchObject({
      outcome: { kind: 'unchanged', listed: { id: 'case_a' }, links: false },
    });
    expect(one({ ...same, 'Row id': 'list-7' })).toMatchObject({
      outcome: { kind: 'unchanged', links: true },
    });
  });

  it('is known by our reference, and keeps what the row does not say', () => {
    const { outcome } = one(only({ ...mine, Date: '2026-01-21', Start: '09:00' }));
    expect(outcome).toMatchObject({
      kind: 'moved',
      listed: { id: 'case_a', revision: 3 },
      to: {
        theatre: { id: 'theatre_1' },
        startsAt: '2026-01-21T09:00:00.000Z',
        endsAt: '2026-01-21T10:00:00.000Z',
      },
    });
    expect(one(only({ ...mine, Theatre: 'Theatre 3, trauma' })).outcome).toMatchObject({
      kind: 'moved',
      to: { theatre: { id: 'theatre_3' }, startsAt: LISTED.startsAt },
    });
    expect(one(only(mine)).outcome).toMatchObject({ kind: 'unchanged' });
  });

  it('is known by the id the other list gives it, and moves', () => {
    const known: [string, string][] = [['list-7', 'case_a']];
    const { outcome } = one({ ...same, Start: '15:00', 'Row id': 'list-7' }, { known });
    expect(outcome).toMatchObject({
      kind: 'moved',
      listed: { id: 'case_a' },
      to: { startsAt: '2026-01-20T15:00:00.000Z' },
    });
    expect(one({ ...same, 'Row id': 'list-7' }, { known }).outcome).toMatchObject({
      kind: 'unchanged',
      links: false,
    });
    expect(one({ ...same, ...mine, 'Row id': 'list-7' }, { known: [['list-7', 'case_b']] }).codes).toEqual([
      'rowId: row-id-of-another',
    ]);
  });

  it.each<[string, Cells, Partial<ListedCase>, string]>([
    ['another region', { Region: 'Hand' }, {}, 'region: differs-from-case'],
    ['the other side', { Side: 'Left' }, {}, 'side: differs-from-case'],
    ['another surgeon', { Surgeon: 'Tobias Wray' }, {}, 'surgeon: differs-from-case'],
    [
      'a move, though it is cancelled',
      { Start: '15:00' },
      { cancelled: true },
      'caseReference: case-cancelled',
    ],
    [
      'a move, though it is over',
      { Start: '15:00' },
      { startsAt: '2026-01-14T05:00:00.000Z', endsAt: '2026-01-14T06:00:00.000Z' },
      'start: case-over',
    ],
    ['a move into the past', { Date: '2026-01-13' }, {}, 'start: is-over'],
    [
      'another start, though a set is in theatre',
      { Start: '12:30' },
      { setInTheatre: 'SFS-02' },
      'start: case-begun',
    ],
  ])('does not take %s from a row', (_, row, listed, code) => {
    expect(one({ ...same, ...mine, ...row }, { cases: [{ ...LISTED, ...listed }] }).codes).toEqual([code]);
  });

  it('may end later though a set is in theatre for it, and keeps its urgency', () => {
    const { outcome } = one(
      { ...same, ...mine, Minutes: '90', Urgency: 'Now' },
      { cases: [{ ...LISTED, setInTheatre: 'SFS-02' }] },
    );
    expect(outcome).toMatchObject({ kind: 'moved', remarks: [{ code: 'urgency-stays', stands: 'Booked' }] });
  });

  it('that no row names is told, and has no outcome: it is never cancelled by a file', () => {
    const { outcomes, notNamed } = tried([GOOD]);
    expect(outcomes).toHaveLength(1);
    expect(notNamed.map(({ reference }) => reference)).toEqual(['LM-26-AAAA']);
  });
});

describe('rows among each other', () => {
  const at = (Start: string, more: Cells = {}): Cells => ({ ...GOOD, Start, ...more });
  const faults = (rows: Cells[], world?: World) => {
    const { problems } = tried(rows, world);
    return problems.map(({ row, fault }) => [row, fault] as [number, ImportFault]);
  };

  it('do not hold one theatre at the same time; the end itself is free', () => {
    expect(faults([at('08:00'), at('09:30')])).toEqual([]);
    expect(faults([at('08:00'), at('09:29')])).toEqual([
      [2, { code: 'rows-collide', rows: [3] }],
      [3, { code: 'rows-collide', rows: [2] }],
    ]);
  });

  it('may change places with cases that they move themselves', () => {
    const other: ListedCase = {
      ...LISTED,
      id: 'case_b',
      reference: 'LM-26-BBBB',
      startsAt: '2026-01-20T14:00:00.000Z',
      endsAt: '2026-01-20T15:00:00.000Z',
    };
    const swap = (reference: string, Start: string): Cells => ({
      Date: '2026-01-20',
      Start,
      'Case reference': reference,
    });
    const { problems, outcomes } = tried([swap('LM-26-AAAA', '14:00'), swap('LM-26-BBBB', '12:00')], {
      cases: [LISTED, other],
    });
    expect(problems).toEqual([]);
    expect(outcomes.map(({ kind }) => kind)).toEqual(['moved', 'moved']);
    expect(faults([swap('LM-26-AAAA', '14:00')], { cases: [LISTED, other] })).toEqual([
      [2, { code: 'theatre-taken', reference: 'LM-26-BBBB', at: 'Theatre 1' }],
    ]);
  });

  it('are not two about one case, nor two of one id', () => {
    const about = (Start: string): Cells => ({ Date: '2026-01-21', Start, 'Case reference': 'LM-26-AAAA' });
    expect(faults([about('09:00'), about('11:00')]).map(([, { code }]) => code)).toEqual([
      'case-twice',
      'case-twice',
    ]);
    const ids = faults([at('08:00', { 'Row id': 'list-7' }), at('10:00', { 'Row id': 'list-7' })]);
    expect(ids).toEqual([
      [2, { code: 'row-id-twice', rows: [2, 3] }],
      [3, { code: 'row-id-twice', rows: [2, 3] }],
    ]);
  });

  it('have a surgeon in two theatres remarked upon, not stopped', () => {
    const { outcomes, problems } = tried([at('08:00'), at('09:00', { Theatre: 'Theatre 3, trauma' })]);
    expect(problems).toEqual([]);
    expect(outcomes[0]?.remarks).toEqual([{ code: 'surgeon-elsewhere', row: 3, reference: null }]);
  });

  it('never leave the list with two cases in one theatre at once, whatever they say', () => {
    const anyRow = fc.record({
      Theatre: fc.constantFrom('Theatre 1', 'Theatre 3, trauma'),
      Start: fc.integer({ min: 7, max: 18 }).map((hour) => `${String(hour).padStart(2, '0')}:00`),
      Minutes: fc.constantFrom('30', '60', '90', '150'),
      'Case reference': fc.constantFrom('', '', 'LM-26-AAAA'),
    });
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1, maxLength: 5 }), (rows) => {
        const { outcomes, problems } = tried(
          rows.map((row) =>
            row['Case reference'] === '' ? { ...GOOD, ...row } : { ...row, Date: '2026-01-20' },
          ),
        );
        if (problems.length > 0) return;
        const moved = new Set(outcomes.flatMap((o) => (o.kind === 'new' ? [] : [o.listed.id])));
        const held = [
          ...outcomes.map((o) =>
            o.kind === 'unchanged'
              ? { theatre: o.listed.theatreId, s: o.listed.startsAt, e: o.listed.endsAt }
              : { theatre: o.to.theatre.id, s: o.to.startsAt, e: o.to.endsAt },
          ),
          ...(moved.has('case_a')
            ? []
            : [{ theatre: LISTED.theatreId, s: LISTED.startsAt, e: LISTED.endsAt }]),
        ];
        for (const [i, a] of held.entries())
          for (const b of held.slice(i + 1))
            expect(a.theatre === b.theatre && a.s < b.e && b.s < a.e).toBe(false);
      }),
      { numRuns: 200 },
    );
  });
});
