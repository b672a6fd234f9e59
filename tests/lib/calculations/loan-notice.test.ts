import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loanNotice } from '@/lib/calculations/loanNotice/loanNotice';
import { loanNoticeInput } from '@/lib/calculations/loanNotice/schema';
import { calculations } from '@/lib/calculations/registry';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const EXAMPLES = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))[
  'loan-notice'
] as {
  id: string;
  expect: Record<string, unknown>;
}[];
const expected = (id: string) => EXAMPLES.find((one) => one.id === id)?.expect ?? {};

const DAY = [{ from: '08:00', to: '18:00' }];
const WEEK = {
  monday: DAY,
  tuesday: DAY,
  wednesday: DAY,
  thursday: DAY,
  friday: DAY,
  saturday: [],
  sunday: [],
};
const HOURS = { week: WEEK, holidays: [] as string[] };
const wall = (text: string) => ({ date: text.slice(0, 10), time: text.slice(11) });
const clock48 = { kind: 'clockHours', hours: 48 };

function answerOf(input: Record<string, unknown>) {
  const said = loanNotice(
    loanNoticeInput.parse({ zone: 'Europe/London', rule: clock48, arrivedAt: null, ...input }),
  );
  if (said.outcome !== 'answered') throw new Error(JSON.stringify(said.missing));
  return said.answer;
}

describe('worked examples', () => {
  it('N1: arrived Tuesday 15:30 for Thursday 08:00, 48 clock hours', () => {
    // 13 and 15 January 2026 are a Tuesday and a Thursday
    const answer = answerOf({ caseAt: wall('2026-01-15 08:00'), arrivedAt: wall('2026-01-13 15:30') });
    const { hours, lateHours } = expected('N1') as { hours: number; lateHours: number };
    expect(answer).toMatchObject({
      outcome: 'late',
      noticeMinutes: hours * 60,
      lateMinutes: lateHours * 60,
      due: { written: '2026-01-13T08:00:00+00:00' },
    });
  });

  it('N2: arrived Friday 16:00 for Monday 08:00: in time by the clock, late by working days', () => {
    const times = { caseAt: wall('2026-01-19 08:00'), arrivedAt: wall('2026-01-16 16:00'), hours: HOURS };
    const { clockHours, workingHours08to18 } = expected('N2') as Record<string, number>;
    expect(answerOf(times)).toMatchObject({
      outcome: 'inTime',
      noticeMinutes: (clockHours as number) * 60,
      noticeWorkingMinutes: (workingHours08to18 as number) * 60,
      lateMinutes: 0,
    });
    for (const rule of [
      { kind: 'workingDays', days: 2 },
      { kind: 'workingDays', days: 2, dueBy: 'endOfWork' },
      { kind: 'workingHours', hours: 20 },
    ])
      expect(answerOf({ ...times, rule }).outcome).toBe('late');
  });

  it('N3: trays above each limit', () => {
    const { overLimit } = expected('N3') as { overLimit: Record<string, number> };
    const answer = answerOf({
      caseAt: wall('2026-01-15 08:00'),
      arrivedAt: wall('2026-01-12 08:00'),
      trays: [8_200, 9_600, 12_100].map((massGrams, at) => ({ tray: `tray ${at + 1}`, massGrams })),
    });
    expect(
      Object.fromEntries(answer.overLimit.map(({ limitGrams, trays }) => [limitGrams / 1000, trays.length])),
    ).toEqual(Object.fromEntries(Object.entries(overLimit).map(([kg, count]) => [Number(kg), count])));
  });
});

describe('the night the clocks change', () => {
  // source of the instants: IANA time zone database, as zdump lists it; see the tests of zones
  const changes = [
    { zone: 'Europe/London', spring: '2026-03-29', autumn: '2026-10-25', minutes: 60 },
    { zone: 'America/New_York', spring: '2026-03-08', autumn: '2026-11-01', minutes: 60 },
    { zone: 'America/St_Johns', spring: '2026-03-08', autumn: '2026-11-01', minutes: 60 },
    { zone: 'Australia/Lord_Howe', spring: '2026-10-04', autumn: '2026-04-05', minutes: 30 },
    { zone: 'Pacific/Chatham', spring: '2026-09-27', autumn: '2026-04-05', minutes: 60 },
    { zone: 'Africa/Casablanca', spring: '2026-03-22', autumn: '2026-02-15', minutes: 60 },
  ];
  const dayAfter = (date: string, days: number) =>
    new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
  const written = (minutes: number) =>
    `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

  it.each(changes)('$zone: 48 clock hours before the day after are $minutes min off by the wall', (one) => {
    const due = (date: string) =>
      answerOf({
        zone: one.zone,
        caseAt: { date: dayAfter(date, 1), time: '08:00' },
        arrivedAt: { date: dayAfter(date, -1), time: '08:00' },
      });
    const spring = due(one.spring);
    expect(spring.due.written.slice(0, 16)).toBe(`${dayAfter(one.spring, -1)}T${written(480 - one.minutes)}`);
    expect(spring).toMatchObject({ outcome: 'late', lateMinutes: one.minutes });
    const autumn = due(one.autumn);
    expect(autumn.due.written.slice(0, 16)).toBe(`${dayAfter(one.autumn, -1)}T${written(480 + one.minutes)}`);
    expect(autumn).toMatchObject({ outcome: 'inTime', noticeMinutes: 48 * 60 + one.minutes });
  });

  it.each(changes)('$zone: working days keep the hour of the wall', ({ zone, spring, autumn }) => {
    for (const date of [spring, autumn]) {
      const answer = answerOf({
        zone,
        caseAt: { date: dayAfter(date, 2), time: '08:00' },
        rule: { kind: 'workingDays', days: 2 },
        hours: HOURS,
        now: { date: dayAfter(date, -20), time: '12:00' },
      });
      expect(answer.due.written.slice(11, 16)).toBe('08:00');
      expect(answer.outcome).toBe('notYetDue');
    }
  });

  it('of an hour that comes twice, the stated one is meant', () => {
    const at = (repeatedHour: string) =>
      answerOf({
        caseAt: wall('2026-10-27 08:00'),
        arrivedAt: wall('2026-10-25 01:30'),
        repeatedHour,
      }).noticeMinutes as number;
    expect(at('first') - at('second')).toBe(60);
  });

  it('a time that the clocks skip is refused, wherever it is given', async () => {
    const skipped = wall('2026-03-29 01:30');
    const result = await calculations['loan-notice']?.evaluate(
      { zone: 'Europe/London', caseAt: skipped, arrivedAt: skipped, now: skipped, rule: clock48 },
      { solver: () => Promise.reject(new Error('it asks for none')) },
    );
    expect(result?.ok === false && result.problems.map(({ path }) => path.join('.'))).toEqual([
      'caseAt.time',
      'arrivedAt.time',
      'now.time',
    ]);
  });
});

describe('what is not known', () => {
  it('a loan nobody saw is not called late: the arrival is missing, the due time is said', () => {
    const said = loanNotice(
      loanNoticeInput.parse({
        zone: 'Europe/London',
        caseAt: wall('2026-01-15 08:00'),
        arrivedAt: null,
        rule: clock48,
      }),
    );
    expect(said).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['arrivedAt'] }],
      known: { outcome: 'unknown', due: { written: '2026-01-13T08:00:00+00:00' }, lateMinutes: null },
    });
  });

  it('a tray that was not weighed is named, and counted to no limit', () => {
    const said = loanNotice(
      loanNoticeInput.parse({
        zone: 'Europe/London',
        caseAt: wall('2026-01-15 08:00'),
        arrivedAt: wall('2026-01-12 08:00'),
        rule: clock48,
        trays: [{ tray: 'A', massGrams: null }],
      }),
    );
    expect(said).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['trays', 0, 'massGrams'], what: 'the mass of A' }],
      known: { outcome: 'inTime', overLimit: [{ trays: [], notWeighed: ['A'] }, {}, {}] },
    });
  });

  it('a rule that counts working time asks for the hours', async () => {
    const evaluate = async (hours: unknown) => {
      const result = await calculations['loan-notice']?.evaluate(
        {
          zone: 'Europe/London',
          caseAt: wall('2026-01-15 08:00'),
          arrivedAt: null,
          rule: { kind: 'workingDays', days: 2 },
          hours,
        },
        { solver: () => Promise.reject(new Error('it asks for none')) },
      );
      return result?.ok === false && result.problems.map(({ path }) => path.join('.'));
    };
    expect(await evaluate(null)).toEqual(['hours']);
    expect(
      await evaluate({
        ...HOURS,
        week: { ...WEEK, monday: [], tuesday: [], wednesday: [], thursday: [], friday: [] },
      }),
    ).toEqual(['hours.week']);
  });
});

describe('whatever the times', () => {
  const minute = fc.integer({ min: 0, max: 60 * 24 * 40 });
  const at = (minutes: number) => {
    const text = new Date(Date.parse('2026-05-01T00:00:00Z') + minutes * 60_000).toISOString();
    return { date: text.slice(0, 10), time: text.slice(11, 16) };
  };
  const rule = fc.constantFrom(
    { kind: 'clockHours', hours: 30 },
    { kind: 'workingHours', hours: 15 },
    { kind: 'workingDays', days: 2 },
    { kind: 'workingDays', days: 3, dueBy: 'endOfWork' },
  );

  it('the due instant itself is in time, a minute later is late, and earlier never is', () => {
    fc.assert(
      fc.property(minute, minute, rule, (caseAt, arrivedAt, of) => {
        const ask = (arrived: { date: string; time: string }) =>
          answerOf({
            zone: 'Europe/London',
            caseAt: at(caseAt + 60 * 24 * 10),
            arrivedAt: arrived,
            rule: of,
            hours: HOURS,
          });
        const answer = ask(at(arrivedAt));
        const late = (answer.arrived?.atMs ?? 0) - answer.due.atMs;
        expect(answer.outcome).toBe(late > 0 ? 'late' : 'inTime');
        expect(answer.lateMinutes).toBe(Math.max(0, late / 60_000));
        const due = answer.due.written;
        const atDue = { date: due.slice(0, 10), time: due.slice(11, 16) };
        expect(ask(atDue)).toMatchObject({ outcome: 'inTime', lateMinutes: 0 });
      }),
      { numRuns: 60 },
    );
  });
});
