import { now } from '@/app/_server/clock';
import { emergencyAnswer, type SetStandingNow } from '@/app/_server/emergency/answer';
import { resolveEmergency } from '@/app/_server/emergency/resolve';
import { oneOf } from '@/app/api/v1/_reading/one';
import { askedQuery } from '@/app/api/v1/emergency/_asked';
import { readAsked } from '@/lib/emergency/asked';

/** What serves an emergency: ways to build the construct with what each takes from others, sets as they stand, single packs. */
export const GET = oneOf(
  'GET /api/v1/emergency/answer',
  { what: 'answer', query: askedQuery },
  async ({ db, query }) => {
    const resolved = await resolveEmergency(db, readAsked(query), now());
    const { options, outcome, sets, packs } = await emergencyAnswer(db, resolved);
    const { listed, region, limb, chosen, neededAt, caseMinutes } = resolved;
    return {
      caseId: listed?.id ?? null,
      ...{ region, limb, chosen, neededAt, caseMinutes, outcome, options, packs },
      sets: sets.map(standing),
    };
  },
);

/** How a set stands; what lies in it is told by the set itself, to whoever may see that. */
function standing({ stored, ...own }: SetStandingNow) {
  const { configurationId, configurationName, step, heldBecause, readyAt, useBy, place, massGrams } = stored;
  return {
    ...own,
    ...{ configurationId, configurationName, step, heldBecause, readyAt, useBy, place, massGrams },
  };
}
