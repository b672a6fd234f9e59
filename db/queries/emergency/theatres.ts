import { and, asc, count, gt, inArray, isNull, lt } from 'drizzle-orm';
import { freeFrom } from '@/lib/emergency/freeTheatre';
import { type TheatreId, theatreId } from '@/lib/identity/ids';
import { mayRead, type Reading } from '../../reader';
import { cases, theatres } from '../../schema';
import { readSetting } from '../settings';

/** A theatre, and when it is free for an emergency. */
export interface TheatreForEmergency {
  id: TheatreId;
  name: string;
  /** How long before a case its sets stand in it. */
  leadMinutes: number;
  freeFrom: string;
}

const DAY_MS = 86_400_000;

/**
 * Every theatre with the first instant from which it is free for so long, the soonest first; of those free as soon, the one that
 * urgent cases are booked in most.
 */
export async function theatresForEmergency(
  db: Reading,
  fromAt: string,
  minutes: number,
): Promise<TheatreForEmergency[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const until = new Date(Date.parse(fromAt) + 7 * DAY_MS).toISOString();
  const [rooms, uses, urgent, { leadMinutes }] = await Promise.all([
    read.select().from(theatres).orderBy(asc(theatres.name)),
    read
      .select({ theatreId: cases.theatreId, startsAt: cases.startsAt, endsAt: cases.endsAt })
      .from(cases)
      .where(and(isNull(cases.cancelledAt), gt(cases.endsAt, fromAt), lt(cases.startsAt, until))),
    read
      .select({ theatreId: cases.theatreId, booked: count() })
      .from(cases)
      .where(inArray(cases.urgency, ['now', 'today']))
      .groupBy(cases.theatreId),
    readSetting(read, 'stages'),
  ]);
  const urgentIn = (id: string) => urgent.find((room) => room.theatreId === id)?.booked ?? 0;
  return rooms
    .map(({ id, name, leadMinutes: own }) => ({
      id: theatreId.parse(id),
      name,
      leadMinutes: own ?? leadMinutes,
      freeFrom: freeFrom(
        uses.filter((use) => use.theatreId === id),
        fromAt,
        minutes,
      ),
    }))
    .sort(
      (a, b) =>
        a.freeFrom.localeCompare(b.freeFrom) ||
        urgentIn(b.id) - urgentIn(a.id) ||
        a.name.localeCompare(b.name),
    );
}
