import { and, eq, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import type { PersonId } from '@/lib/identity/ids';
import { comparableName } from '@/lib/people/name';
import type { Database, Queries } from '../client';
import { credentials, people } from '../schema';
import { type Person, personFromRow } from './people';

/** Somebody who may be trying to sign in; `person` is `null` for nobody we know, who is then refused like anybody else. */
export interface Claimed {
  person: Person | null;
  /** Under which tries are counted; for nobody we know, one of 65 536 that follow from what was given. */
  key: string;
  passwordHash: string | null;
  pinHash: string | null;
}

/** Who is meant by a name. Those who left are nobody. */
export async function claimedByName({ read }: Pick<Database, 'read'>, name: string): Promise<Claimed> {
  const asked = comparableName(name);
  const here = await read.select().from(people).where(isNull(people.leftAt));
  const row = here.find((one) => comparableName(one.name) === asked);
  return claimed(read, row, asked);
}

export async function claimedById({ read }: Pick<Database, 'read'>, id: PersonId): Promise<Claimed> {
  const [row] = await read
    .select()
    .from(people)
    .where(and(eq(people.id, id), isNull(people.leftAt)));
  return claimed(read, row, id);
}

/** Whose badge it is. The code itself is nowhere kept: its hash is looked up. */
export async function claimedByBadge({ read }: Pick<Database, 'read'>, code: string): Promise<Claimed> {
  const [row] = await read
    .select({ person: people })
    .from(credentials)
    .innerJoin(people, eq(people.id, credentials.personId))
    .where(and(eq(credentials.badgeHash, hashCode(code)), isNull(people.leftAt)));
  return claimed(read, row?.person, code);
}

async function claimed(
  read: Queries,
  row: { id: string; name: string; role: string } | undefined,
  given: string,
): Promise<Claimed> {
  const id = row?.id ?? '';
  const [kept] = await read.select().from(credentials).where(eq(credentials.personId, id));
  return {
    person: row ? personFromRow(row) : null,
    key: row ? row.id : `unknown:${hashCode(given).slice(0, 4)}`,
    passwordHash: kept?.passwordHash ?? null,
    pinHash: kept?.pinHash ?? null,
  };
}
