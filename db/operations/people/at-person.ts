import { and, eq, isNull } from 'drizzle-orm';
import type { PersonId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { peopleWords } from '@/lib/wording/people';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { type Person, personFromRow } from '../../queries/people';
import { people, sessions } from '../../schema';

/** What every act of an administrator on a person needs. */
export interface AtPerson {
  db: Pick<Database, 'tx'>;
  now: string;
  /** The administrator. */
  person: Person;
  personId: PersonId;
}

type Done<T> = Outcome<T, never>;

/**
 * One act on a person, in one transaction with its ledger entry: only by who may, and only on somebody there is. What
 * `work` answers goes out; what it names as `detail` is recorded, never a secret.
 */
export function atPerson<T>(
  { db, now, person, personId }: AtPerson,
  action: string,
  work: (
    write: Queries,
    whom: Person & { leftAt: string | null },
  ) => Promise<Done<{ value: T; detail: Record<string, unknown> }>>,
): Promise<Done<T>> {
  return db.tx(async (write) => {
    if (!may(person, 'managePeople')) return refused('notPermitted', peopleWords.mayNot(person.name));
    const [row] = await write.select().from(people).where(eq(people.id, personId));
    if (!row) return refused('notFound', peopleWords.noSuchPerson);
    const done = await work(write, { ...personFromRow(row), leftAt: row.leftAt });
    if (!done.ok) return done;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action,
      subjectKind: 'person',
      subjectId: personId,
      detail: done.value.detail,
    });
    return { ok: true, value: done.value.value };
  });
}

/** Ends every session of a person, but one where it is named. */
export async function endSessionsOf(
  write: Queries,
  { personId, now, but = null }: { personId: PersonId; now: string; but?: string | null },
): Promise<void> {
  const open = await write
    .select({ id: sessions.id })
    .from(sessions)
    .where(and(eq(sessions.personId, personId), isNull(sessions.endedAt)));
  for (const { id } of open)
    if (id !== but) await write.update(sessions).set({ endedAt: now }).where(eq(sessions.id, id));
}

/** Whether nobody but this person is an administrator: without one, nobody could name another. */
export async function isLastAdministrator(write: Queries, personId: PersonId): Promise<boolean> {
  const there = await write
    .select({ id: people.id })
    .from(people)
    .where(and(eq(people.role, 'administrator'), isNull(people.leftAt)));
  return there.length === 1 && there[0]?.id === personId;
}
