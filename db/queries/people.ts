import { asc, isNull } from 'drizzle-orm';
import { type PersonId, personId } from '@/lib/identity/ids';
import type { Act } from '@/lib/people/permissions';
import { type Role, role } from '@/lib/people/role';
import { mayRead, type Reading } from '../reader';
import { people } from '../schema';

export interface Person {
  id: PersonId;
  name: string;
  role: Role;
  /** What a token lets them do of what their role may; absent where they are here themselves. */
  scope?: readonly Act[];
}

export const personFromRow = (row: { id: string; name: string; role: string }): Person => ({
  id: personId.parse(row.id),
  name: row.name,
  role: role.parse(row.role),
});

/** Everyone who ever acted, by name: those who left are still named in what they did. */
export async function listPeople(db: Reading): Promise<Person[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.select().from(people).orderBy(asc(people.name));
  return rows.map(personFromRow);
}

/** Everyone who works here now, by name. */
export async function listColleagues(db: Reading): Promise<Person[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.select().from(people).where(isNull(people.leftAt)).orderBy(asc(people.name));
  return rows.map(personFromRow);
}
