import { asc, eq, inArray } from 'drizzle-orm';
import type { CalendarCase, CalendarNeed } from '@/lib/calendar/entries';
import { groupBy } from '@/lib/lists/groupBy';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { promiseTimes } from '@/lib/theatre/promise';
import { mayRead, type Reading } from '../../reader';
import { setPromises, sets, theatres } from '../../schema';
import { listCases } from '../cases';
import { readSetting } from '../settings';
import { lastChanges } from './lastChanges';

/** Cases from one date up to, but without, another, of one theatre or of all. */
export interface CasesWithin {
  from: PlainDate;
  before: PlainDate;
  theatreId: string | null;
}

/** Cases as a calendar may know them, those that were cancelled among them. */
export async function calendarCases(db: Reading, within: CasesWithin): Promise<CalendarCase[]> {
  mayRead(db, 'readHospital');
  const listed = (await listCases(db, within.from, within.before, { cancelledToo: true })).filter(
    ({ theatreId }) => within.theatreId === null || theatreId === within.theatreId,
  );
  const [changedAt, { nameSurgeon }] = await Promise.all([
    lastChanges(
      db,
      'case',
      listed.map(({ id }) => id),
    ),
    readSetting(db.read, 'calendars'),
  ]);
  return listed.map((one) => ({
    id: one.id,
    reference: one.reference,
    theatre: one.theatre,
    region: one.region,
    limb: one.limb,
    startsAt: one.startsAt,
    endsAt: one.endsAt,
    revision: one.revision,
    changedAt: changedAt(one.id),
    cancelled: one.cancelled !== null,
    surgeon: nameSurgeon ? one.surgeon : null,
  }));
}

/** The same cases with what sterile services need of them. */
export async function calendarNeeds(db: Reading, within: CasesWithin): Promise<CalendarNeed[]> {
  mayRead(db, 'readHospital');
  const booked = await calendarCases(db, within);
  const ids = booked.map(({ id }) => id);
  const [rooms, promised, { leadMinutes }] = await Promise.all([
    db.read.select({ name: theatres.name, lead: theatres.leadMinutes }).from(theatres),
    db.read
      .select({ caseId: setPromises.caseId, fromAt: setPromises.fromAt, code: sets.code })
      .from(setPromises)
      .innerJoin(sets, eq(sets.id, setPromises.setId))
      .where(inArray(setPromises.caseId, ids))
      .orderBy(asc(sets.code)),
    readSetting(db.read, 'stages'),
  ]);
  const promisesOf = groupBy(promised, ({ caseId }) => caseId);
  const leadOf = new Map(rooms.map(({ name, lead }) => [name, lead ?? leadMinutes]));
  return booked.map((one) => {
    const its = promisesOf.get(one.id) ?? [];
    const { fromAt } = promiseTimes(one, leadOf.get(one.theatre) ?? leadMinutes, 0);
    return {
      ...one,
      // sets promised with another lead are needed when they were promised from
      needBy: [fromAt, ...its.map((promise) => promise.fromAt)].sort()[0] ?? fromAt,
      sets: its.map(({ code }) => code),
    };
  });
}
