import { and, eq, isNull } from 'drizzle-orm';
import type { NewId, SessionId, WorkstationId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import type { Claimed } from '../../queries/credentials';
import type { Person } from '../../queries/people';
import { sessions } from '../../schema';
import { type BegunSession, beginSession } from './begin-session';
import { checkSecret, type SecretCheck } from './check-secret';

interface SignIn {
  db: Database;
  now: string;
  newId: NewId;
  newToken: () => string;
  claimed: Claimed;
  /** A password, or the PIN that goes with a badge. */
  given: { password: string } | { pin: string };
  place: { key: string; workstationId: WorkstationId | null };
  /** The session the browser had: it ends as the new one begins. */
  present: SessionId | null;
}

export type SignedIn =
  | { ok: true; value: BegunSession & { person: Person } }
  | { ok: false; check: Exclude<SecretCheck, { right: true }> };

/** Proves a person by what they know and begins their session at this place, in place of the one before. */
export async function signIn(request: SignIn): Promise<SignedIn> {
  const { db, now, newId, newToken, claimed, given, place, present } = request;
  const byBadge = 'pin' in given;
  const check = await checkSecret({
    db,
    now,
    personKey: claimed.key,
    placeKey: place.key,
    kept: byBadge ? claimed.pinHash : claimed.passwordHash,
    secret: byBadge ? given.pin : given.password,
  });
  const { person } = claimed;
  if (!check.right) return { ok: false, check };
  if (!person) throw new Error('nobody has no secret');
  const begun = await db.tx(async (write) => {
    if (present)
      await write
        .update(sessions)
        .set({ endedAt: now })
        .where(and(eq(sessions.id, present), isNull(sessions.endedAt)));
    return beginSession(write, {
      now,
      newId,
      newToken,
      personId: person.id,
      method: byBadge ? 'badgeAndPin' : 'password',
      workstationId: place.workstationId,
    });
  });
  return { ok: true, value: { ...begun, person } };
}
