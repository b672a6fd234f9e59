import { oneOf } from '@/app/api/v1/_reading/one';
import { loadOwnCount } from '@/db/queries/bench/ownCount';
import { benchStandingOf } from '@/db/queries/bench/standing';

/** How far a set is counted, and your own open count of it with what you entered. */
export const GET = oneOf('GET /api/v1/sets/[id]/count', { what: 'set' }, async ({ db, person, params }) => {
  const [own, standing] = await Promise.all([
    loadOwnCount(db, person.id, params.id),
    benchStandingOf(db.read, params.id),
  ]);
  if (standing === null) return null;
  const { setId: id, code, step, lines, counted, checked, checkNeeded, countedBy } = standing;
  return { setId: id, code, step, lines, counted, checked, checkNeeded, countedBy, own };
});
