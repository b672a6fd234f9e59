import { isNull } from 'drizzle-orm';
import { z } from 'zod';
import { hashSecret } from '@/db/secrets';
import { type NewId, type PersonId, personId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { comparableName } from '@/lib/people/name';
import { may } from '@/lib/people/permissions';
import { role } from '@/lib/people/role';
import { peopleWords } from '@/lib/wording/people';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { credentials, people } from '../../schema';

export const personEntry = z.strictObject({
  name: z
    .string()
    .transform((text) => text.normalize('NFC').trim().replace(/\s+/g, ' '))
    .pipe(z.string().min(2, peopleWords.nameLength).max(80, peopleWords.nameLength)),
  role,
});

interface AddPerson {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** A password made up for them, told once: they must choose their own as they sign in. */
  firstPassword: string;
  /** As sent from outside: name and role. */
  entry: unknown;
}

/** Adds somebody who works here. Their name is what they sign in by, so it is theirs alone. */
export async function addPerson(request: AddPerson): Promise<Outcome<{ id: PersonId }, never>> {
  const { db, now, newId, person, firstPassword } = request;
  if (!may(person, 'managePeople')) return refused('notPermitted', peopleWords.mayNot(person.name));
  const parsed = personEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const passwordHash = await hashSecret(firstPassword);
  return db.tx((write) => putPerson(write, { now, newId, person, entry: parsed.data, passwordHash }));
}

/** Adds them inside the caller's write. `passwordHash` `null`: nothing lets them in before an administrator gives a password. */
export async function putPerson(
  write: Queries,
  {
    now,
    newId,
    person,
    entry,
    passwordHash,
  }: Pick<AddPerson, 'now' | 'newId' | 'person'> & {
    entry: z.output<typeof personEntry>;
    passwordHash: string | null;
  },
): Promise<Outcome<{ id: PersonId }, never>> {
  const { name } = entry;
  if (await isNameTaken(write, name)) {
    return refusedFor([{ path: ['name'], code: 'name-taken', message: peopleWords.nameTaken(name) }]);
  }
  const id = personId.parse(newId('person'));
  await write.insert(people).values({ id, ...entry });
  if (passwordHash !== null)
    await write
      .insert(credentials)
      .values({ personId: id, passwordHash, mustChangePassword: true, changedAt: now });
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'add-person',
    subjectKind: 'person',
    subjectId: id,
    detail: { ...entry },
  });
  return { ok: true, value: { id } };
}

/** Whether somebody who works here goes by this name, however it is spaced or capitalised. */
export async function isNameTaken(
  write: Queries,
  name: string,
  but: PersonId | null = null,
): Promise<boolean> {
  const here = await write.select().from(people).where(isNull(people.leftAt));
  return here.some((one) => one.id !== but && comparableName(one.name) === comparableName(name));
}
