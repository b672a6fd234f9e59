import { highsSolver } from '@/app/_server/solver/highs';
import { oneOf } from '@/app/api/v1/_reading/one';
import { loadKitOfCase } from '@/db/queries/caseKit';

/** The kit for a case from what is in store now: sets, packs, what is short, and why. */
export const GET = oneOf('GET /api/v1/cases/[id]/kit', { what: 'case' }, async ({ db, params }) => {
  const found = await loadKitOfCase(db, params.id, { solver: highsSolver, lengthCover: 'figure' });
  switch (found.kind) {
    case 'noCase':
      return null;
    case 'noPlan':
      return { kind: 'noPlan' as const, caseId: found.booked.id };
    case 'kit': {
      const { booked, plan, newerDraft, kit, list } = found.answer;
      return { kind: 'kit' as const, caseId: booked.id, planVersion: plan.version, newerDraft, kit, list };
    }
  }
});
