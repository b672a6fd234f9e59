import { assessFreeScrew } from './assessFreeScrew';
import { assessPlate } from './assessPlate';
import type { GroupedFact } from './assessScrew';
import type { FitAnswers } from './fitFindings';
import type { Construct } from './plan';
import type { PlanCatalogue } from './planCatalogue';
import { comparePlanFindings, type PlanFinding, type PlanPlace } from './planFinding';

/** The case a plan is for, as booked; `null` for a saved start, which holds for no case yet. */
export interface BookedCase {
  limb: 'left' | 'right';
  region: Construct['region'];
}

const WHOLE_PLAN: PlanPlace = { plateKey: null, holeId: null, screwKey: null };

/**
 * Everything there is to say about a construct: stops, cautions and what is not established, each with its place
 * and path. Remarks are apart (`planRemarks`). The findings don't depend on the order in which plates, holes
 * or screws were stated, apart from the indexes in their paths. Pure; a few milliseconds for a dozen holes.
 */
export function assessPlan(
  construct: Construct,
  catalogue: PlanCatalogue,
  engine: FitAnswers,
  booked: BookedCase | null,
): PlanFinding[] {
  const findings: PlanFinding[] = assessWhole(construct, booked);
  const seen = new Set<string>();
  const noteKey = (key: string, path: (string | number)[], at: PlanPlace) => {
    if (seen.has(key))
      findings.push({ code: 'duplicate-key', group: 'stop', key, path: [...path, 'key'], at });
    seen.add(key);
  };
  construct.plates.forEach((planned, index) => {
    const path = ['plates', index];
    noteKey(planned.key, path, { ...WHOLE_PLAN, plateKey: planned.key });
    for (const { holeId, under, ...fact } of assessPlate(planned, construct.limb, catalogue, engine)) {
      const at = { ...WHOLE_PLAN, plateKey: planned.key, holeId };
      findings.push({
        ...fact,
        path: [...path, ...(holeId ? ['fills', holeId] : []), ...(under ?? [])],
        at,
      } as PlanFinding);
    }
  });
  construct.freeScrews.forEach((screw, index) => {
    const path = ['freeScrews', index];
    const at = { ...WHOLE_PLAN, screwKey: screw.key };
    noteKey(screw.key, path, at);
    for (const { under, ...fact } of assessFreeScrew(screw, catalogue, engine)) {
      findings.push({ ...fact, path: [...path, ...(under ?? [])], at } as PlanFinding);
    }
  });
  return findings.sort(comparePlanFindings);
}

function assessWhole(construct: Construct, booked: BookedCase | null): PlanFinding[] {
  const facts: GroupedFact[] = [];
  if (construct.plates.length === 0 && construct.freeScrews.length === 0) {
    facts.push({ code: 'nothing-planned', group: 'notEstablished' });
  }
  if (booked) {
    if (construct.limb === null)
      facts.push({ code: 'limb-not-stated', group: 'notEstablished', under: ['limb'] });
    else if (construct.limb !== booked.limb) {
      facts.push({
        code: 'limb-differs',
        group: 'stop',
        planned: construct.limb,
        booked: booked.limb,
        under: ['limb'],
      });
    }
    if (construct.region !== booked.region) {
      const { region: planned } = construct;
      facts.push({
        code: 'region-differs',
        group: 'caution',
        planned,
        booked: booked.region,
        under: ['region'],
      });
    }
  }
  return facts.map(({ under, ...fact }) => ({ ...fact, path: under ?? [], at: WHOLE_PLAN }) as PlanFinding);
}

/** The findings that bar a plan from being confirmed. */
export function stopsOf(findings: readonly PlanFinding[]): PlanFinding[] {
  return findings.filter(({ group }) => group === 'stop');
}
