import { type NewId, type PlaceId, placeId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { newPlace } from '@/lib/turns/place';
import { placeWords as words } from '@/lib/wording/places';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { places } from '../../schema';
import { nameTaken } from './name-taken';

interface AddPlace {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  place: unknown;
}

/** Adds a place where sets and pouches lie. */
export async function addPlace(request: AddPlace): Promise<Outcome<{ id: PlaceId }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'managePlaces')) return refused('notPermitted', words.notPermitted(person.name));
  const parsed = newPlace.safeParse(request.place);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { name, metres } = parsed.data;
  return db.tx(async (write) => {
    const taken = await nameTaken(write, name, null);
    if (taken) return refusedFor([taken]);
    const id = placeId.parse(newId('place'));
    await write.insert(places).values({ id, name, metres });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-place',
      subjectKind: 'place',
      subjectId: id,
      detail: { name, metres },
    });
    return { ok: true, value: { id } };
  });
}
