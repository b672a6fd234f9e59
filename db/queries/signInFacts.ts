import { and, asc, eq, isNull } from 'drizzle-orm';
import type { Database } from '../client';
import { people, settings } from '../schema';
import { type Person, personFromRow } from './people';

/** What the sign-in page may know before anybody is known. */
export interface SignInFacts {
  hasAdministrator: boolean;
  /** The people of a demo hospital, who are invented; of a real one nobody is named before signing in. */
  demo: Person[] | null;
}

export async function signInFacts({ read }: Pick<Database, 'read'>): Promise<SignInFacts> {
  const here = isNull(people.leftAt);
  const [administrators, demo] = await Promise.all([
    read
      .select({ id: people.id })
      .from(people)
      .where(and(eq(people.role, 'administrator'), here))
      .limit(1),
    read.select({ key: settings.key }).from(settings).where(eq(settings.key, 'demo')),
  ]);
  if (demo.length === 0) return { hasAdministrator: administrators.length > 0, demo: null };
  const rows = await read.select().from(people).where(here).orderBy(asc(people.name));
  return { hasAdministrator: administrators.length > 0, demo: rows.map(personFromRow) };
}
