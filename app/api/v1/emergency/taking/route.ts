import { now } from '@/app/_server/clock';
import { prepareTaking } from '@/app/_server/emergency/prepare';
import { resolveEmergency } from '@/app/_server/emergency/resolve';
import { oneOf } from '@/app/api/v1/_reading/one';
import { askedQuery } from '@/app/api/v1/emergency/_asked';
import { readAsked } from '@/lib/emergency/asked';

/** What taking sets for an emergency does to others; `shown` goes along when they are taken, so that nothing else is done. */
export const GET = oneOf(
  'GET /api/v1/emergency/taking',
  { what: 'taking', query: askedQuery },
  async ({ db, person, query }) => {
    const asked = readAsked(query);
    const resolved = await resolveEmergency(db, asked, now());
    const prepared = await prepareTaking(db, asked, resolved, person);
    const { taking, hits, shown, theatres, surgeons, surgeonId, barred, unknown } = prepared;
    return {
      ...{ asked, taking, hits, shown, theatres, surgeons, surgeonId, unknown },
      barred: barred.map(({ set, because }) => ({ setId: set.id, code: set.code, because })),
    };
  },
);
