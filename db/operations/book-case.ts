import { eq } from 'drizzle-orm';
import { type CaseId, caseId, type NewId, planId } from '@/lib/identity/ids';
import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { emptyConstruct } from '@/lib/plans/edit';
import type { Booking } from '@/lib/theatre/booking';
import { caseReferenceFrom } from '@/lib/theatre/caseReference';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { cases, people, plans, theatres } from '../schema';
import { bookedFrom, noteBooking } from './cards/booked-from';
import { theatreTakenBy } from './theatre/promises';

interface BookCase {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  /** Four whole numbers from 0 to 31, drawn at random. */
  draw: () => number[];
  /** Two capital letters of the hospital. */
  hospitalLetters: string;
  person: Person;
  booking: Booking;
}

export interface BookedCase {
  id: CaseId;
  reference: string;
}

/**
 * Books a case under a new reference, with a first draft of its plan when it begins from a saved start.
 * A theatre holds one case at a time; all that is wrong comes back at once.
 */
export async function bookCase(request: BookCase): Promise<Result<BookedCase>> {
  const { db, person } = request;
  if (!may(person, 'bookCase')) {
    return failed({
      path: [],
      code: 'not-permitted',
      message: `${person.name} can’t book a case: a surgeon, a scrub practitioner or a theatre manager can.`,
    });
  }
  return db.tx((write) => bookInside(write, request));
}

/** Books a case inside the caller's transaction, which has seen to it that the person may. */
export async function bookInside(write: Queries, request: Omit<BookCase, 'db'>): Promise<Result<BookedCase>> {
  const { now, newId, person, booking } = request;
  const problems = await problemsWith(write, booking);
  const from = await bookedFrom(write, booking);
  problems.push(...from.problems);
  if (problems.length > 0) return failed(...problems);

  const reference = await freeReference(write, request);
  const id = caseId.parse(newId('case'));
  const { theatreId, date: caseDate, startsAt, endsAt, region, limb, surgeonId, urgency } = booking;
  await write.insert(cases).values({
    id,
    reference,
    theatreId,
    caseDate,
    startsAt,
    endsAt,
    region,
    limb,
    surgeonId,
    urgency,
    revision: 1,
  });
  if (from.start) {
    await write.insert(plans).values({
      id: planId.parse(newId('plan')),
      caseId: id,
      version: 1,
      status: 'draft',
      body: { ...emptyConstruct(region, limb), ...from.start.construct, limb },
      writtenBy: person.id,
      writtenAt: now,
      revision: 1,
    });
  }
  await noteBooking(write, { caseId: id, booking, from, now });
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'book-case',
    subjectKind: 'case',
    subjectId: id,
    detail: {
      reference,
      theatreId,
      startsAt,
      endsAt,
      region,
      limb,
      surgeonId,
      urgency,
      startId: booking.startId,
      ...(booking.cardId ? { cardId: booking.cardId } : {}),
    },
  });
  return ok({ id, reference });
}

async function problemsWith(
  write: Queries,
  { theatreId, surgeonId, startsAt, endsAt }: Booking,
): Promise<Problem[]> {
  const problems: Problem[] = [];
  const [theatre] = await write.select().from(theatres).where(eq(theatres.id, theatreId));
  if (!theatre)
    problems.push({
      path: ['theatreId'],
      code: 'theatre-unknown',
      message: 'No such theatre: choose one of the list.',
    });
  const [surgeon] = await write.select().from(people).where(eq(people.id, surgeonId));
  if (!surgeon) {
    problems.push({
      path: ['surgeonId'],
      code: 'surgeon-unknown',
      message: 'No such person: choose one of the list.',
    });
  } else if (surgeon.role !== 'surgeon') {
    problems.push({
      path: ['surgeonId'],
      code: 'not-a-surgeon',
      message: `${surgeon.name} is not a surgeon.`,
    });
  }
  const taken = await theatreTakenBy(write, { theatreId, startsAt, endsAt });
  if (taken && theatre) {
    problems.push({
      path: ['time'],
      code: 'theatre-taken',
      message: theatreListWords.theatreTaken(theatre.name, taken),
    });
  }
  return problems;
}

async function freeReference(
  write: Queries,
  { draw, hospitalLetters, booking }: Omit<BookCase, 'db'>,
): Promise<string> {
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const reference = caseReferenceFrom(hospitalLetters, booking.date, draw());
    const [taken] = await write.select({ id: cases.id }).from(cases).where(eq(cases.reference, reference));
    if (!taken) return reference;
  }
  throw new Error('twenty case references in a row were taken: the draw is not random');
}
