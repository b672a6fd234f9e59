import { and, eq, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { hashCode, hashSecret, isCode } from '@/db/secrets';
import { type NewId, personId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { problemsFromZod } from '@/lib/identity/result';
import { passwordFaults } from '@/lib/people/password';
import { PASSWORD_FAULTS } from '@/lib/wording/people';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { credentials, people, settings } from '../../schema';
import { isNameTaken, personEntry } from './add-person';
import { type BegunSession, beginSession } from './begin-session';
import { countTry, type SecretCheck } from './check-secret';
import { guessableOf } from './guessable';
import { FIRST_RUN_KEY } from './offer-first-run';

interface NameFirstAdministrator {
  db: Database;
  now: string;
  newId: NewId;
  newToken: () => string;
  placeKey: string;
  /** What the hospital is called. */
  hospital: string;
  code: string;
  name: string;
  password: string;
}

type Named =
  | { ok: true; value: BegunSession & { person: Person } }
  | { ok: false; because: 'over' }
  | { ok: false; because: 'wrongCode'; check: Exclude<SecretCheck, { right: true }> }
  | { ok: false; because: 'invalid'; problems: Problem[] };

const offered = z.object({ codeHash: z.string().length(64), endsAt: z.string() });

/**
 * Names the first administrator with the code the server printed, once: afterwards the code is gone, and while there is
 * an administrator there is no way through here.
 */
export async function nameFirstAdministrator(request: NameFirstAdministrator): Promise<Named> {
  const { db, now, newId, newToken } = request;
  // before anything is said of the password: what is refused tells names that are kept here
  if (await hasAdministrator(db.read)) return { ok: false, because: 'over' };
  const code = request.code.trim().toUpperCase();
  const entry = personEntry.safeParse({ name: request.name, role: 'administrator' });
  const problems: Problem[] = [
    ...(entry.success ? [] : problemsFromZod(entry.error)),
    ...passwordFaults(request.password, await guessableOf(db, request)).map((fault) => ({
      path: ['password'],
      code: fault,
      message: PASSWORD_FAULTS[fault],
    })),
  ];
  if (!entry.success || problems.length > 0) return { ok: false, because: 'invalid', problems };
  const tried = { personKey: 'first-run', placeKey: request.placeKey };
  const counted = await countTry(db, tried, now);
  const wrongCode = { ok: false, because: 'wrongCode', check: { right: false, ...counted } } as const;
  if (counted.tooSoon) return wrongCode;
  const passwordHash = await hashSecret(request.password);
  return db.tx(async (write): Promise<Named> => {
    if (await hasAdministrator(write)) return { ok: false, because: 'over' };
    const [row] = await write.select().from(settings).where(eq(settings.key, FIRST_RUN_KEY));
    const offer = offered.safeParse(row?.value);
    // compared either way, so that a code never offered takes no less time
    const right = isCode(offer.success ? offer.data.codeHash : hashCode(newToken()), code);
    if (!offer.success || !right || now > offer.data.endsAt) return wrongCode;
    const { name, role } = entry.data;
    if (await isNameTaken(write, name)) throw new Error('a hospital without an administrator has this name');
    const id = personId.parse(newId('person'));
    await write.insert(people).values({ id, name, role });
    await write
      .insert(credentials)
      .values({ personId: id, passwordHash, mustChangePassword: false, changedAt: now });
    await write.delete(settings).where(eq(settings.key, FIRST_RUN_KEY));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: id,
      action: 'name-first-administrator',
      subjectKind: 'person',
      subjectId: id,
      detail: { name },
    });
    const begun = await beginSession(write, {
      now,
      newId,
      newToken,
      personId: id,
      method: 'oneTimeCode',
      workstationId: null,
    });
    return { ok: true, value: { ...begun, person: { id, name, role } } };
  });
}

async function hasAdministrator(write: Queries): Promise<boolean> {
  const here = and(eq(people.role, 'administrator'), isNull(people.leftAt));
  return (await write.select().from(people).where(here).limit(1)).length > 0;
}
