import { eq } from 'drizzle-orm';
import { hashSecret } from '@/db/secrets';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { pinFaults } from '@/lib/people/secrets';
import { PIN_FAULTS, peopleWords } from '@/lib/wording/people';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { claimedById } from '../../queries/credentials';
import type { Person } from '../../queries/people';
import { credentials } from '../../schema';
import { checkSecret } from './check-secret';

interface ChangePin {
  db: Database;
  now: string;
  person: Person;
  placeKey: string;
  /** The password: a PIN is never enough to change a PIN. */
  password: string;
  pin: string;
}

/** A person chooses the PIN that goes with their badge, having proved their password. */
export async function changePin(request: ChangePin): Promise<Outcome<null, never>> {
  const { db, now, person, placeKey, password, pin } = request;
  const faults = pinFaults(pin);
  if (faults.length > 0)
    return refusedFor(faults.map((code) => ({ path: ['pin'], code, message: PIN_FAULTS[code] })));
  const claimed = await claimedById(db, person.id);
  const kept = claimed.passwordHash;
  const check = await checkSecret({ db, now, personKey: claimed.key, placeKey, kept, secret: password });
  if (!check.right) {
    const message = check.tooSoon
      ? peopleWords.tooSoon(check.waitSeconds)
      : peopleWords.wrongSecret('password', check.waitSeconds);
    return refusedFor([{ path: ['password'], code: 'not-proven', message }]);
  }
  const pinHash = await hashSecret(pin);
  return db.tx(async (write) => {
    await write
      .update(credentials)
      .set({ pinHash, changedAt: now })
      .where(eq(credentials.personId, person.id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-pin',
      subjectKind: 'person',
      subjectId: person.id,
      detail: {},
    });
    return { ok: true, value: null };
  });
}
