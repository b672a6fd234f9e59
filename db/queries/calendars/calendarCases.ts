import { and, asc, eq, inArray, max, min } from 'drizzle-orm';
import type { CalendarCase, CalendarNeed } from '@/lib/calendar/entries';
import { groupBy } from '@/lib/lists/groupBy';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { promiseTimes } from '@/lib/theatre/promise';
import { mayRead, type Reading } from '../../reader';
import { ledger, ledgerThings, setPromises, sets, theatres } from '../../schema';
import { type ListedCase, listCases } from '../cases';
import { readSetting } from '../settings';

/** Cases from one date up to, but without, another, of one theatre or of all. */
export interface CasesWithin {
  from: PlainDate;
  before: PlainDate;
  theatreId: string | null;
}

/** Cases as a calendar may know them, those that were cancelled among them. */
export async function calendarCases(db: Reading, within: CasesWithin): Promise<CalendarCase[]> {
  mayRead(db, 'readHospital');
  const listed = (await listCases(db, within.from, within.before)).filter(
    ({ theatreId }) => within.theatreId === null || theatreId === within.theatreId,
  );
  const [changedAt, { nameSurgeon }] = await Promise.all([
    lastChanges(db, listed),
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

/**
 * When each case was last changed: its latest entry in the ledger, for every write has one. A case without an entry of its
 * own came with others, and is as old as the first entry that names it; one that none names came with the hospital.
 */
async function lastChanges(
  { read }: Reading,
  listed: readonly Pick<ListedCase, 'id'>[],
): Promise<(id: string) => string> {
  const ids = listed.map(({ id }) => id);
  const [own, naming, [first]] = await Promise.all([
    read
      .select({ id: ledger.subjectId, at: max(ledger.enteredAt) })
      .from(ledger)
      .where(and(eq(ledger.subjectKind, 'case'), inArray(ledger.subjectId, ids)))
      .groupBy(ledger.subjectId),
    read
      .select({ id: ledgerThings.thing, at: min(ledger.enteredAt) })
      .from(ledgerThings)
      .innerJoin(ledger, eq(ledger.seq, ledgerThings.seq))
      .where(inArray(ledgerThings.thing, ids))
      .groupBy(ledgerThings.thing),
    read.select({ at: min(ledger.enteredAt) }).from(ledger),
  ]);
  const [latest, earliest] = [own, naming].map((rows) => new Map(rows.map(({ id, at }) => [id, at])));
  return (id) => latest?.get(id) ?? earliest?.get(id) ?? first?.at ?? BEFORE_ALL;
}

const BEFORE_ALL = '1970-01-01T00:00:00.000Z';
