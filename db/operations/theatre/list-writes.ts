import { eq } from 'drizzle-orm';
import { personId, theatreId } from '@/lib/identity/ids';
import { ok, type Result } from '@/lib/identity/result';
import type { RowOutcome } from '@/lib/theatre/import/outcome';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { cases, listRows } from '../../schema';
import { type BookedCase, bookInside } from '../book-case';
import { rowDigest } from './list-facts';
import { type LostPromise, moveInside } from './move-inside';

type Moving = Omit<Parameters<typeof moveInside>[1], 'moves'>;

/** Moves the cases of a list together, as a person would; the sets they could not take along. */
export async function moveRows(
  write: Queries,
  request: Moving,
  outcomes: readonly RowOutcome[],
): Promise<LostPromise[]> {
  const moves = [];
  for (const one of outcomes) {
    if (one.kind !== 'moved') continue;
    const [row] = await write.select().from(cases).where(eq(cases.id, one.listed.id));
    if (!row) throw new Error(`${one.listed.reference} was there a moment ago`);
    const { theatre, startsAt, endsAt } = one.to;
    moves.push({ row, theatreId: theatre.id, startsAt, endsAt });
  }
  if (moves.length === 0) return [];
  const { lost } = await moveInside(write, { ...request, moves });
  return lost;
}

type Booking = Omit<Parameters<typeof bookInside>[1], 'booking'> & { zone?: string };

/** Books the new cases of a list, as a person would; their ids and references by row. */
export async function bookRows(
  write: Queries,
  request: Booking,
  outcomes: readonly RowOutcome[],
): Promise<Result<ReadonlyMap<number, BookedCase>>> {
  const booked = new Map<number, BookedCase>();
  for (const one of outcomes) {
    if (one.kind !== 'new') continue;
    const { region, limb, urgency, to } = one;
    const { date, time } = wallClock(to.startsAt, request.zone);
    const answer = await bookInside(write, {
      ...request,
      booking: {
        theatreId: theatreId.parse(to.theatre.id),
        surgeonId: personId.parse(one.surgeon.id),
        date,
        time,
        minutes: (Date.parse(to.endsAt) - Date.parse(to.startsAt)) / 60_000,
        startsAt: to.startsAt,
        endsAt: to.endsAt,
        region,
        limb,
        urgency,
        startId: null,
      },
    });
    if (!answer.ok) return answer;
    booked.set(one.row, answer.value);
  }
  return ok(booked);
}

/** From now on each row that has an id is known by it. */
export async function linkRows(
  write: Queries,
  now: string,
  outcomes: readonly RowOutcome[],
  booked: ReadonlyMap<number, BookedCase>,
): Promise<number> {
  let linked = 0;
  for (const one of outcomes) {
    if (one.rowId === null || (one.kind === 'unchanged' && !one.links)) continue;
    const caseId = one.kind === 'new' ? booked.get(one.row)?.id : one.listed.id;
    if (caseId === undefined) throw new Error(`row ${one.row} was not booked`);
    const made = await write
      .insert(listRows)
      .values({ rowDigest: rowDigest(one.rowId), caseId, knownSince: now })
      .onConflictDoNothing()
      .returning({ caseId: listRows.caseId });
    linked += made.length;
  }
  return linked;
}
