import { plateRemarksInputOf } from '../calculations/plateRemarks/fromConstruct';
import { plateRemarks } from '../calculations/plateRemarks/plateRemarks';
import { REMARKS, type RemarkName } from '../calculations/plateRemarks/schema';
import type { Construct } from './plan';
import { currentScrews, type PlanCatalogue, plateOf } from './planCatalogue';
import type { PlanFinding } from './planFinding';

/**
 * Advisory remarks on a construct, from the calculation `plate-remarks`; `off` names those that local policy has
 * switched off. A remark that can't be worked out stays a remark: nothing about the kit hangs on it.
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
      screwOf: (screwFamily) => {
        const family = catalogue.families.get(screwFamily);
        return family ? (currentScrews(family)[0] ?? null) : null;
      },
    },
    off.filter(isRemarkName),
  );
  const answer = plateRemarks(input);
  if (answer.outcome !== 'answered') return [];
  return answer.answer.remarks.map(({ plate, remark, outcome, sentence, source, sourceFromMemory }) => ({
    code: 'remark',
    group: 'remark',
    remark,
    outcome,
    sentence,
    source: sourceFromMemory ? `${source} (quoted from memory, to be confirmed)` : source,
    path: ['plates', construct.plates.findIndex(({ key }) => key === plate)],
    at: { plateKey: plate, holeId: null, screwKey: null },
  }));
}

/** Whether a remark asks to be looked at, or only gives a figure. */
export function asksForALook(finding: PlanFinding): boolean {
  return finding.code === 'remark' && (finding.outcome === 'outside' || finding.outcome === 'note');
}

function isRemarkName(name: string): name is RemarkName {
  return (REMARKS as readonly string[]).includes(name);
}
