import { and, eq, gt, lte, notExists } from 'drizzle-orm';
import { z } from 'zod';
import type { Queries } from '../../client';
import {
  benchEntries,
  casePicks,
  kitCheckEntries,
  scans,
  sessions,
  settings,
  stockCountFigures,
  theatreCountEntries,
} from '../../schema';

/** Long after the last late entry of a session is taken, and while somebody may still ask who was signed in when. */
const KEPT_FOR_MS = 30 * 24 * 3_600_000;

const LOOKED_UNTIL_KEY = 'sessionsForgotten';
const lookedUntil = z.object({ until: z.string() });

/**
 * Removes the sessions whose absolute limit passed thirty days ago, inside the caller's transaction. One in which a scan
 * or an entry at the bench, at a kit, in theatre or at a shelf was made stays: it is part of their record. Nothing can be added to one so old, so each is
 * looked at once, and a sign-in that finds none to look at costs two look-ups by key.
 */
export async function forgetSessions(write: Queries, now: string): Promise<void> {
  const until = new Date(Date.parse(now) - KEPT_FOR_MS).toISOString();
  const [row] = await write.select().from(settings).where(eq(settings.key, LOOKED_UNTIL_KEY));
  const since = lookedUntil.safeParse(row?.value).data?.until ?? '';
  if (since >= until) return;
  await write
    .delete(sessions)
    .where(
      and(
        gt(sessions.endsAt, since),
        lte(sessions.endsAt, until),
        notExists(write.select({ id: scans.id }).from(scans).where(eq(scans.sessionId, sessions.id))),
        notExists(
          write
            .select({ id: benchEntries.id })
            .from(benchEntries)
            .where(eq(benchEntries.sessionId, sessions.id)),
        ),
        ...[casePicks, kitCheckEntries, theatreCountEntries, stockCountFigures].map((entries) =>
          notExists(write.select({ id: entries.id }).from(entries).where(eq(entries.sessionId, sessions.id))),
        ),
      ),
    );
  const value = { until };
  await write
    .insert(settings)
    .values({ key: LOOKED_UNTIL_KEY, value })
    .onConflictDoUpdate({ target: settings.key, set: { value } });
}
