import { eq } from 'drizzle-orm';
import { hashSecret } from '@/db/secrets';
import type { SessionId } from '@/lib/identity/ids';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { passwordFaults } from '@/lib/people/password';
import { PASSWORD_FAULTS, peopleWords } from '@/lib/wording/people';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { claimedById } from '../../queries/credentials';
import type { Person } from '../../queries/people';
import { credentials } from '../../schema';
import { endSessionsOf } from './at-person';
import { checkSecret } from './check-secret';
import { guessableOf } from './guessable';

interface ChangePassword {
  db: Database;
  now: string;
  person: Person;
  sessionId: SessionId;
  placeKey: string;
  /** What the hospital is called. */
  hospital: string;
  present: string;
  next: string;
}

/** A person chooses another password, having proved the present one. Their other sessions end. */
export async function changePassword(request: ChangePassword): Promise<Outcome<null, never>> {
  const { db, now, person, sessionId, placeKey, present, next } = request;
  const faults = passwordFaults(
    next,
    await guessableOf(db, { name: person.name, hospital: request.hospital }),
  );
  if (faults.length > 0)
    return refusedFor(faults.map((code) => ({ path: ['next'], code, message: PASSWORD_FAULTS[code] })));
  const claimed = await claimedById(db, person.id);
  const kept = claimed.passwordHash;
  const check = await checkSecret({ db, now, personKey: claimed.key, placeKey, kept, secret: present });
  if (!check.right) {
    const message = check.tooSoon
      ? peopleWords.tooSoon(check.waitSeconds)
      : peopleWords.wrongSecret('password', check.waitSeconds);
    return refusedFor([{ path: ['present'], code: 'not-proven', message }]);
  }
  if (present === next)
    return refusedFor([{ path: ['next'], code: 'same', message: peopleWords.samePassword }]);
  const passwordHash = await hashSecret(next);
  return db.tx(async (write) => {
    await write
      .update(credentials)
      .set({ passwordHash, mustChangePassword: false, changedAt: now })
      .where(eq(credentials.personId, person.id));
    await endSessionsOf(write, { personId: person.id, now, but: sessionId });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-password',
      subjectKind: 'person',
      subjectId: person.id,
      detail: {},
    });
    return { ok: true, value: null };
  });
}
