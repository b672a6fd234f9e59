import { eq } from 'drizzle-orm';
import { type CaseId, caseId, type NewId, planId } from '@/lib/identity/ids';
import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { emptyConstruct } from '@/lib/plans/edit';
import { type Construct, construct } from '@/lib/plans/plan';
import type { Booking } from '@/lib/theatre/booking';
import { caseReferenceFrom } from '@/lib/theatre/caseReference';
import { cardWords, startWords } from '@/lib/wording/cards';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import {
  caseOrigins,
  cases,
  people,
  planStarts,
  plans,
  preferenceCards,
  procedures,
  theatres,
} from '../schema';
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
  const { db, now, newId, person, booking } = request;
  if (!may(person.role, 'bookCase')) {
    return failed({
      path: [],
      code: 'not-permitted',
      message: `${person.name} can’t book a case: a surgeon, a scrub practitioner or a theatre manager can.`,
    });
  }
  return db.tx(async (write) => {
    const problems = await problemsWith(write, booking);
    const start = booking.startId ? await startOf(write, booking.startId) : null;
    problems.push(...startProblems(booking, start));
    const card = booking.cardId ? await cardOf(write, booking.cardId) : null;
    problems.push(...cardProblems(booking, card));
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
    if (start) {
      await write.insert(plans).values({
        id: planId.parse(newId('plan')),
        caseId: id,
        version: 1,
        status: 'draft',
        body: { ...emptyConstruct(region, limb), ...start.construct, limb },
        writtenBy: person.id,
        writtenAt: now,
        revision: 1,
      });
    }
    if (start || card)
      await write.insert(caseOrigins).values({
        caseId: id,
        startId: start ? booking.startId : null,
        startVersion: start?.version ?? null,
        cardId: card ? booking.cardId : null,
        cardVersion: card?.version ?? null,
        begunAt: now,
      });
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
  });
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

interface BegunFrom {
  name: string;
  version: number;
  retired: boolean;
  construct: Construct;
}

async function startOf(write: Queries, startId: string): Promise<BegunFrom | null> {
  const [row] = await write.select().from(planStarts).where(eq(planStarts.id, startId));
  if (!row) return null;
  const { name, version, retiredAt, body } = row;
  return { name, version, retired: retiredAt !== null, construct: construct.parse(body) };
}

function startProblems({ startId }: Booking, start: BegunFrom | null): Problem[] {
  if (!startId) return [];
  const path = ['startId'];
  if (!start) return [{ path, code: 'start-unknown', message: 'That saved start is gone: choose another.' }];
  return start.retired
    ? [{ path, code: 'start-retired', message: startWords.retiredForCase(start.name) }]
    : [];
}

interface CardInUse {
  version: number;
  retired: boolean;
  personId: string;
  region: string;
}

async function cardOf(write: Queries, cardId: string): Promise<CardInUse | null> {
  const [row] = await write
    .select({ card: preferenceCards, region: procedures.region })
    .from(preferenceCards)
    .innerJoin(procedures, eq(procedures.id, preferenceCards.procedureId))
    .where(eq(preferenceCards.id, cardId));
  if (!row) return null;
  const { version, retiredAt, personId } = row.card;
  return { version, retired: retiredAt !== null, personId, region: row.region };
}

/** A card is its surgeon's, and for one region: it says nothing of what another does, or elsewhere. */
function cardProblems({ cardId, surgeonId, region }: Booking, card: CardInUse | null): Problem[] {
  if (!cardId) return [];
  const path = ['cardId'];
  if (!card) return [{ path, code: 'card-unknown', message: cardWords.noSuchCard }];
  return [
    ...(card.retired ? [{ path, code: 'card-retired', message: cardWords.retiredForCase }] : []),
    ...(card.personId === surgeonId
      ? []
      : [{ path, code: 'card-of-another', message: cardWords.cardOfAnother }]),
    ...(card.region === region
      ? []
      : [{ path, code: 'card-other-region', message: cardWords.cardOfOtherRegion }]),
  ];
}

async function freeReference(write: Queries, { draw, hospitalLetters, booking }: BookCase): Promise<string> {
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const reference = caseReferenceFrom(hospitalLetters, booking.date, draw());
    const [taken] = await write.select({ id: cases.id }).from(cases).where(eq(cases.reference, reference));
    if (!taken) return reference;
  }
  throw new Error('twenty case references in a row were taken: the draw is not random');
}
