import { asc } from 'drizzle-orm';
import { type PersonId, personId } from '@/lib/identity/ids';
import { type Role, role } from '@/lib/people/role';
import type { Database } from '../client';
import { people } from '../schema';

export interface Person {
  id: PersonId;
  name: string;
  role: Role;
}

/** Everyone who can act, by name. */
export async function listPeople({ read }: Pick<Database, 'read'>): Promise<Person[]> {
  const rows = await read.select().from(people).orderBy(asc(people.name));
  return rows.map((row) => ({ id: personId.parse(row.id), name: row.name, role: role.parse(row.role) }));
}
