import { and, eq, ne } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { nextOperatingDay } from '@/db/queries/theatre/dayReportFacts';
import { cases, sets, theatreSessions } from '@/db/schema';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { askLines } from '@/lib/wording/day-asks';
import { lineStanding } from '@/lib/wording/day-report';
import { stepLines } from '@/lib/wording/day-steps';
import { reportAt } from '../../fixtures/demoReport';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
const TOMORROW = '2026-01-15';
let db: Database;
beforeEach(async () => {
  db = await demoDatabase();
});

it('counts every case of the day once, and says of each how it stands', async () => {
  const { report, names } = await reportAt(db, 'morning', TOMORROW, NOW);
  const booked = await db.read.select().from(cases).where(eq(cases.caseDate, TOMORROW));
  expect(report.lines.map(({ facts }) => facts.reference).sort()).toEqual(
    booked.map(({ reference }) => reference).sort(),
  );
  expect(Object.values(report.counts).reduce((sum, count) => sum + count, 0)).toBe(booked.length);
  for (const line of report.lines) expect(lineStanding(line, names).word).not.toBe('');
  expect(report.ask).toBeNull();
});

it('a set on its way is never told to be in the store, and every one that a case gets is told', async () => {
  const { report } = await reportAt(db, 'morning', TOMORROW, NOW);
  const away = await db.read
    .select({ code: sets.code })
    .from(sets)
    .where(and(ne(sets.step, 'inSterileStore'), ne(sets.step, 'held')));
  const codes = new Set(away.map(({ code }) => code));
  const got = report.lines.flatMap((line) => line.sets.map(({ code }) => code));
  expect(got.filter((code) => codes.has(code)).length).toBeGreaterThan(0);
  expect(new Set(report.onTheWay.map(({ set }) => set.code))).toEqual(
    new Set(got.filter((code) => codes.has(code))),
  );
  // an hour after its usual time nobody has accepted the load: its set is still on its way
  const later = new Date(DEMO_NOW.getTime() + 3_600_000).toISOString();
  const { report: after } = await reportAt(db, 'morning', TOMORROW, later);
  const waits = after.lines.find((line) => line.sets.some(({ code }) => code === 'PHT-L1'));
  expect(waits?.bucket).toBe('waiting');
  expect(after.onTheWay.map(({ set }) => set.code)).toContain('PHT-L1');
});

it('names what the demo has to be seen to: a load, a set held that is promised, a shortage that stops a case', async () => {
  const said = async (day: string) => {
    const { report, names } = await reportAt(db, 'morning', day, NOW);
    return stepLines(report.steps, names).map(({ word, about }) => `${word} ${about}`);
  };
  const tomorrow = await said(TOMORROW);
  expect(tomorrow).toContain('Promise not kept: held DFF-01');
  expect(tomorrow.some((one) => one.startsWith('Decide on the load'))).toBe(true);
  expect(await said('2026-01-16')).toContain('Fill it again MFS-01');
  expect(await said('2026-01-19')).toContain('Ask for a plan LM-26-S8HU');
});

it('the day before names plans, past use-by and low screws instead, each with the cases it is for', async () => {
  const { report, names } = await reportAt(db, 'dayBefore', '2026-01-16', NOW);
  if (report.ask === null) throw new Error('nothing was looked for');
  const asks = askLines(report.ask, names);
  expect(asks.map(({ word }) => word)).toEqual(
    expect.arrayContaining(['Confirmation', 'Pouch past use-by', 'Screws low on the shelf']),
  );
  for (const { references } of asks) expect(references.length).toBeGreaterThan(0);
  for (const { useBy } of report.ask.packsPastUseBy) expect(useBy < '2026-01-16').toBe(true);
  expect(report.steps.some(({ kind }) => kind === 'plan' || kind === 'confirmPlan')).toBe(false);
});

it('the next operating day is the next with a case that is on, or a session', async () => {
  const last = plainDate.parse('2026-02-20');
  expect(await nextOperatingDay(db, plainDate.parse('2026-01-14'))).toBe('2026-01-15');
  expect(await nextOperatingDay(db, last)).toBe(addDays(last, 1));
  await db.tx((write) =>
    write.insert(theatreSessions).values({
      id: 'theatreSession_one',
      theatreId: 'theatre_1',
      sessionDate: '2026-03-02',
      startsAt: '2026-03-02T08:00:00.000Z',
      endsAt: '2026-03-02T12:00:00.000Z',
      revision: 1,
    }),
  );
  expect(await nextOperatingDay(db, last)).toBe('2026-03-02');
});
