import { eq } from 'drizzle-orm';
import type { CaseId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { type Construct, construct } from '@/lib/plans/plan';
import type { Booking } from '@/lib/theatre/booking';
import { cardWords, startWords } from '@/lib/wording/cards';
import type { Queries } from '../../client';
import { caseOrigins, planStarts, preferenceCards, procedures } from '../../schema';

/** What a case is booked from, with all that bars it. */
interface BookedFrom {
  start: BegunFrom | null;
  card: CardInUse | null;
  problems: Problem[];
}

/** The saved start and the preference card that a booking names, as they are now. */
export async function bookedFrom(write: Queries, booking: Booking): Promise<BookedFrom> {
  const start = booking.startId ? await startOf(write, booking.startId) : null;
  const card = booking.cardId ? await cardOf(write, booking.cardId) : null;
  return { start, card, problems: [...startProblems(booking, start), ...cardProblems(booking, card)] };
}

/** Notes, inside the booking, which versions the case began from. */
export async function noteBooking(
  write: Queries,
  { caseId, booking, from, now }: { caseId: CaseId; booking: Booking; from: BookedFrom; now: string },
): Promise<void> {
  const { start, card } = from;
  if (!start && !card) return;
  await write.insert(caseOrigins).values({
    caseId,
    startId: start ? booking.startId : null,
    startVersion: start?.version ?? null,
    cardId: card ? booking.cardId : null,
    cardVersion: card?.version ?? null,
    begunAt: now,
  });
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
