import { and, count, eq, gt } from 'drizzle-orm';
import type { PlaceId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { placeChange } from '@/lib/turns/place';
import { placeWords as words } from '@/lib/wording/places';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { places, sets, stock } from '../../schema';
import { nameTaken } from './name-taken';

interface ChangePlace {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  placeId: PlaceId;
  /** As sent from outside; parsed here. */
  change: unknown;
}

/** Renames a place, takes it out of use once nothing lies there, or brings it back. Its past stays under its id. */
export async function changePlace(request: ChangePlace): Promise<Outcome<{ revision: number }>> {
  const { db, now, person, placeId } = request;
  if (!may(person, 'managePlaces')) return refused('notPermitted', words.notPermitted(person.name));
  const parsed = placeChange.safeParse(request.change);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { baseRevision, name, metres, inUse } = parsed.data;
  return db.tx(async (write) => {
    const [place] = await write.select().from(places).where(eq(places.id, placeId));
    if (!place) return refused('notFound', words.noSuchPlace);
    if (place.revision !== baseRevision) return changedTo(words.changed(place.name), place.revision);
    const taken = await nameTaken(write, name, placeId);
    if (taken) return refusedFor([taken]);
    if (!inUse && place.withdrawnAt === null) {
      const lying = await whatLies(write, placeId);
      if (lying.sets + lying.pieces > 0)
        return refused('frozen', words.notEmpty(place.name, lying.sets, lying.pieces));
    }
    const revision = place.revision + 1;
    const withdrawnAt = inUse ? null : (place.withdrawnAt ?? now);
    await write
      .update(places)
      .set({ name, metres, withdrawnAt, revision })
      .where(and(eq(places.id, placeId), eq(places.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-place',
      subjectKind: 'place',
      subjectId: placeId,
      detail: {
        from: { name: place.name, metres: place.metres, inUse: place.withdrawnAt === null },
        to: { name, metres, inUse },
        revision,
      },
    });
    return { ok: true, value: { revision } };
  });
}

async function whatLies(write: Queries, placeId: string): Promise<{ sets: number; pieces: number }> {
  const [held] = await write.select({ n: count() }).from(sets).where(eq(sets.placeId, placeId));
  const [kept] = await write
    .select({ n: count() })
    .from(stock)
    .where(and(eq(stock.placeId, placeId), gt(stock.quantity, 0)));
  return { sets: held?.n ?? 0, pieces: kept?.n ?? 0 };
}
