import { and, eq } from 'drizzle-orm';
import type { PlaceId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { turnWords as words } from '@/lib/wording/turns';
import { appendLedger } from '../../ledger';
import { places, sets } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';

interface MoveSet extends SetRequest {
  placeId: PlaceId;
}

/** Records that a set lies in another place. It stays at its step. Where it lies already is no move and no error. */
export async function moveSet(request: MoveSet): Promise<Outcome<{ revision: number }, SetNow>> {
  const { placeId, person, now } = request;
  const acting = { act: 'moveSet', verb: 'move sets', isRepeat: () => false } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    const [place] = await write.select().from(places).where(eq(places.id, placeId));
    if (!place) return refused('notFound', words.noSuchPlace);
    if (place.withdrawnAt !== null) return refused('frozen', words.placeOutOfUse(place.name));
    if (set.placeId === placeId) return { ok: true, value: { revision: set.revision } };
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ placeId, revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    await appendLedger(write, {
      doneAt,
      enteredAt: now,
      personId: person.id,
      action: 'move-set',
      subjectKind: 'set',
      subjectId: set.id,
      detail: { from: set.placeId, to: placeId, revision },
    });
    return { ok: true, value: { revision } };
  });
}
