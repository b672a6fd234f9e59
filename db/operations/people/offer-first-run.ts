import { and, eq, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import type { Database } from '../../client';
import { people, settings } from '../../schema';

export const FIRST_RUN_KEY = 'firstRun';

/** Long enough to walk from the server to a desk. */
const GOOD_FOR_MS = 60 * 60_000;

/**
 * Where there is no administrator, makes this code the one with which the first may be named, in place of any before it,
 * for an hour. Answers whether there was need.
 */
export function offerFirstRun({
  db,
  now,
  code,
}: {
  db: Pick<Database, 'tx'>;
  now: string;
  code: string;
}): Promise<boolean> {
  return db.tx(async (write) => {
    const [administrator] = await write
      .select()
      .from(people)
      .where(and(eq(people.role, 'administrator'), isNull(people.leftAt)))
      .limit(1);
    if (administrator) return false;
    const value = {
      codeHash: hashCode(code),
      endsAt: new Date(Date.parse(now) + GOOD_FOR_MS).toISOString(),
    };
    await write
      .insert(settings)
      .values({ key: FIRST_RUN_KEY, value })
      .onConflictDoUpdate({ target: settings.key, set: { value } });
    return true;
  });
}
