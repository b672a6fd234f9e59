import { eq } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { people } from '../../schema';
import { type Person, personFromRow } from '../people';

/** A person who has just proven who they are. Throws where there is none: then nothing was proven. */
export async function findPerson(db: Reading, id: string): Promise<Person> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.select().from(people).where(eq(people.id, id));
  if (!row) throw new Error('nobody of that id');
  return personFromRow(row);
}
