import 'server-only';
import type { Database } from '@/db/client';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { loadBuildToday } from '@/db/queries/buildToday';
import type { StartOnFile } from '@/db/queries/cards/starts';
import { newestChange } from '@/db/queries/ledgerHead';
import { hospitalToday } from '@/db/queries/today';
import type { BuildToday } from '@/lib/plans/buildToday';
import { highsSolver } from './solver/highs';

const kept = globalThis as typeof globalThis & {
  kitwrightBuildsToday?: { under: string; known: Map<string, BuildToday> };
};

/**
 * What the sets in store can build today of each of these saved starts, in their order. Worked out once and kept for the day,
 * until something is written that can change a kit; a start that is changed has another version, and so another answer.
 */
export async function buildsToday(
  db: Database,
  starts: readonly Pick<StartOnFile, 'id' | 'version' | 'construct'>[],
): Promise<BuildToday[]> {
  const change = await newestChange(db);
  const under = `${change} ${await hospitalToday(db.read)}`;
  if (kept.kitwrightBuildsToday?.under !== under || change === null)
    kept.kitwrightBuildsToday = { under, known: new Map() };
  // whoever checks a set blind sees the store without it, and nobody else sees theirs
  const blind = (await hiddenFrom(db)).size > 0;
  const known = blind ? new Map<string, BuildToday>() : kept.kitwrightBuildsToday.known;
  const keyOf = ({ id, version }: { id: string; version: number }) => `${id} ${version}`;
  const missing = starts.filter((start) => !known.has(keyOf(start)));
  const made = await loadBuildToday(
    db,
    missing.map(({ construct }) => construct),
    highsSolver,
  );
  for (const [at, start] of missing.entries()) {
    const answer = made[at];
    if (answer) known.set(keyOf(start), answer);
  }
  return starts.flatMap((start) => known.get(keyOf(start)) ?? []);
}
