import { oneOf } from '@/app/api/v1/_reading/one';
import { findBenchCountRecorded } from '@/db/queries/api/benchCountsRecorded';
import { loadOwnCount } from '@/db/queries/bench/ownCount';

/** One count at the bench; what was entered is told to whoever counts, while they do. */
export const GET = oneOf('GET /api/v1/bench/[id]', { what: 'count' }, async ({ db, person, params }) => {
  const count = await findBenchCountRecorded(db, params.id);
  if (count === null) return null;
  const own = count.person.id === person.id ? await loadOwnCount(db, person.id, count.set.id) : null;
  return { ...count, entries: own?.id === count.id ? own.entries : null };
});
