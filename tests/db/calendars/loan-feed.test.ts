import { eq } from 'drizzle-orm';
import ICAL from 'ical.js';
import { beforeEach, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { callOffLoan } from '@/db/operations/loans/call-off-loan';
import { feedCalendar } from '@/db/queries/calendars/feedCalendar';
import { listPeople } from '@/db/queries/people';
import { lenders, loans } from '@/db/schema';
import { writeCalendar } from '@/lib/calendar/write';
import { loanId } from '@/lib/identity/ids';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';

let db: Database;
beforeEach(async () => {
  db = await demoDatabase();
});

/** The calendar as another program reads it: ical.js, the reader of a mail program. */
async function readBack() {
  const text = writeCalendar(await feedCalendar(db, { kind: 'loans', theatreId: null, theatre: null }, NOW));
  const events = new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((one) => new ICAL.Event(one));
  return { text, of: (uid: string) => events.find((event) => event.uid === uid), count: events.length };
}

it('tells when each loan comes and goes, by number and lender alone', async () => {
  const rows = await db.read
    .select({ loan: loans, lender: lenders.name })
    .from(loans)
    .innerJoin(lenders, eq(lenders.id, loans.lenderId));
  const { text, of, count } = await readBack();
  let told = 0;
  for (const { loan, lender } of rows) {
    const comes = loan.arrivedAt ?? loan.expectedAt;
    const arrival = of(`${loan.id}.arrival`);
    if (comes === null) expect(arrival).toBeUndefined();
    else if (arrival) {
      told += 1;
      expect(arrival.startDate.toJSDate().toISOString()).toBe(comes);
      expect(arrival.summary).toBe(`Loan arrives: ${loan.number}, ${lender}`);
      expect(arrival.component.getFirstPropertyValue('status')).toBe(
        ['refused', 'calledOff'].includes(loan.state) ? 'CANCELLED' : 'CONFIRMED',
      );
    }
    const goes = of(`${loan.id}.return`);
    if (goes && loan.collectedAt === null) {
      told += 1;
      // no time of day was agreed: RFC 5545, 3.6.1, an event that begins with a DATE lasts that day
      expect(goes.startDate.isDate).toBe(true);
      expect(goes.startDate.toString()).toBe(loan.backBy);
      expect(goes.endDate.toString()).not.toBe(loan.backBy);
    } else if (goes) told += 1;
    // what was asked for is free text
    expect(text).not.toContain(loan.askedFor.slice(0, 20));
  }
  expect(told).toBeGreaterThan(3);
  expect(told).toBe(count);
});

it('keeps a loan that was called off, as cancelled', async () => {
  const [one] = await db.read.select().from(loans).where(eq(loans.state, 'confirmed'));
  if (!one) throw new Error('the demo has no confirmed loan');
  const person = (await listPeople(db)).find(({ role }) => role === 'stockKeeper');
  if (!person) throw new Error('the demo has no stock keeper');
  const called = await callOffLoan({
    db,
    now: NOW,
    newId: (prefix) => `${prefix}_test`,
    person,
    loanId: loanId.parse(one.id),
    baseRevision: one.revision,
    because: 'The case is done with our own set',
  });
  expect(called).toMatchObject({ ok: true });
  const { of } = await readBack();
  expect(of(`${one.id}.arrival`)?.component.getFirstPropertyValue('status')).toBe('CANCELLED');
});
