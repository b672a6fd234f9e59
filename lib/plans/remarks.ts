import { plateRemarksInputOf } from '../calculations/plateRemarks/fromConstruct';
import { plateRemarks } from '../calculations/plateRemarks/plateRemarks';
import { REMARKS } from '../calculations/plateRemarks/schema';
import type { Construct } from './plan';
import { type PlanCatalogue, plateOf } from './planCatalogue';
import { comparePlanFindings, type PlanFinding } from './planFinding';

/**
 * Advisory remarks on a construct; `off` names those that local policy has switched off. Only what lies outside a
 * published range, or is worth a look, is a finding; the figures within range are in `plate-remarks` itself.
 */
export function planRemarks(
  construct: Construct,
  catalogue: PlanCatalogue,
  off: readonly string[],
): PlanFinding[] {
  const input = plateRemarksInputOf(
    construct,
    {
      plateOf: (plateItemId) => plateOf(catalogue, plateItemId),
      screwOf: (screwFamily) => catalogue.families.get(screwFamily)?.screws[0] ?? null,
    },
    REMARKS.filter((name) => off.includes(name)),
  );
  const answer = plateRemarks(input);
  if (answer.outcome !== 'answered') return [];
  return answer.answer.remarks
    .filter(({ outcome }) => outcome === 'outside' || outcome === 'note')
    .map(({ plate, remark, sentence, source, sourceFromMemory, holes }): PlanFinding => {
      const index = construct.plates.findIndex(({ key }) => key === plate);
      const only = holes.length === 1 ? (holes[0] ?? null) : null;
      return {
        code: 'remark',
        group: 'remark',
        remark,
        sentence,
        source: sourceFromMemory ? `${source} (from memory)` : source,
        path: ['plates', index, ...(only ? ['fills', only] : [])],
        at: { plateKey: plate, holeId: only, screwKey: null },
      };
    })
    .sort(comparePlanFindings);
}
