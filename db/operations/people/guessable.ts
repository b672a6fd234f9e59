import { commonPasswords } from '@/db/commonPasswords';
import type { Guessable } from '@/lib/people/password';
import type { Database } from '../../client';
import { places, sterilisers, theatres, workstations } from '../../schema';

/** What somebody who guesses a password chosen here would try: the names of the hospital and of its parts, and what many take. */
export async function guessableOf(
  { read }: Pick<Database, 'read'>,
  { name, hospital }: { name: string; hospital: string },
): Promise<Guessable> {
  const kept = await Promise.all(
    [theatres, places, workstations, sterilisers].map((table) =>
      read.select({ name: table.name }).from(table),
    ),
  );
  const placeNames = [hospital, ...kept.flat().map((one) => one.name)];
  return { name, placeNames, common: await commonPasswords() };
}
