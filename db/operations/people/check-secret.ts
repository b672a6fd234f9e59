import { and, eq, lt } from 'drizzle-orm';
import { isSecret } from '@/db/secrets';
import { waitSeconds } from '@/lib/people/delay';
import type { Database } from '../../client';
import { signInDelays } from '../../schema';

/** Whose secret is tried, and where: a person's id or what stands for an unknown one; a workstation or a browser. */
interface Tried {
  personKey: string;
  placeKey: string;
}

interface CheckSecret extends Tried {
  db: Pick<Database, 'tx'>;
  now: string;
  /** The hash that is kept, or `null` where there is none: the answer is then no, and takes as long. */
  kept: string | null;
  secret: string;
}

/** A wrong secret, or none looked at because it came too soon; then so many seconds before the next. */
export type SecretCheck = { right: true } | { right: false; tooSoon: boolean; waitSeconds: number };

/**
 * Whether this is the person's secret. A try is counted before it is looked at, so that many at once are not one; a
 * right one clears the count of this person at this place, and no other.
 */
export async function checkSecret({ db, now, kept, secret, ...tried }: CheckSecret): Promise<SecretCheck> {
  const counted = await countTry(db, tried, now);
  if (counted.tooSoon) return { right: false, ...counted };
  if (!(await isSecret(kept, secret))) return { right: false, ...counted };
  await db.tx(async (write) => {
    await write.delete(signInDelays).where(of(tried));
  });
  return { right: true };
}

/** What nobody tried for a day is forgotten. */
const FORGOTTEN_AFTER_MS = 24 * 3_600_000;

/** Counts one more try, or says that it comes too soon after a wrong one. */
export function countTry(
  db: Pick<Database, 'tx'>,
  tried: Tried,
  now: string,
): Promise<{ tooSoon: boolean; waitSeconds: number }> {
  return db.tx(async (write) => {
    const forgotten = new Date(Date.parse(now) - FORGOTTEN_AFTER_MS).toISOString();
    await write.delete(signInDelays).where(lt(signInDelays.nextTryAt, forgotten));
    const [row] = await write.select().from(signInDelays).where(of(tried));
    if (row && row.nextTryAt > now) {
      const left = Math.ceil((Date.parse(row.nextTryAt) - Date.parse(now)) / 1000);
      return { tooSoon: true, waitSeconds: left };
    }
    const failures = (row?.failures ?? 0) + 1;
    const wait = waitSeconds(failures);
    const nextTryAt = new Date(Date.parse(now) + wait * 1000).toISOString();
    await write
      .insert(signInDelays)
      .values({ ...tried, failures, nextTryAt })
      .onConflictDoUpdate({
        target: [signInDelays.personKey, signInDelays.placeKey],
        set: { failures, nextTryAt },
      });
    return { tooSoon: false, waitSeconds: wait };
  });
}

const of = ({ personKey, placeKey }: Tried) =>
  and(eq(signInDelays.personKey, personKey), eq(signInDelays.placeKey, placeKey));
