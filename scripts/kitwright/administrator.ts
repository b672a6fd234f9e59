import { randomUUID } from 'node:crypto';
import type { Database } from '@/db/client';
import { checkSecret } from '@/db/operations/people/check-secret';
import { claimedByName } from '@/db/queries/credentials';
import type { Person } from '@/db/queries/people';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { CannotDo, type Given } from './command';

/** Tries from here are counted apart from those of any browser. */
const HERE = 'command-line';

export const newId: NewId = (prefix) => `${prefix}_${randomUUID()}`;

/** Who somebody says they are by `--as`, once they have proved it by their password. */
export async function provenPerson(db: Database, { options, now, secret }: Given): Promise<Person> {
  if (typeof options.as !== 'string')
    throw new CannotDo('Say as whom: --as NAME; their password is asked for, or read from standard input.');
  const claimed = await claimedByName(db, options.as);
  const given = await secret(`Password of ${options.as}: `);
  const check = await checkSecret({
    db,
    now: now().toISOString(),
    personKey: claimed.key,
    placeKey: HERE,
    kept: claimed.passwordHash,
    secret: given,
  });
  if (!check.right)
    throw new CannotDo(
      `That is not the password of ${options.as}; wait ${check.waitSeconds} s before the next try.`,
    );
  if (!claimed.person) throw new Error('nobody has no secret');
  return claimed.person;
}

/** What an operation wrote; why it wrote nothing is told as what could not be done. */
export function answerOf<T>(outcome: Outcome<T, unknown>): T {
  if (outcome.ok) return outcome.value;
  throw new CannotDo(outcome.refusal.problems.map(({ message }) => message).join('\n'));
}
