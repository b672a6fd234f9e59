import type { Item, Screw } from '../catalogue/item';
import { candidateScrews, type GroupedFact } from './assessScrew';
import { isScrewFill } from './chosenHoles';
import { type FitAnswers, factsOfVerdict } from './fitFindings';
import type { PlannedPlate } from './plan';
import type { PlanCatalogue } from './planCatalogue';

/** Metals that touch: the plate and each screw family in it, once for each family. */
export function assessContact(
  planned: PlannedPlate,
  plate: Item,
  catalogue: PlanCatalogue,
  engine: FitAnswers,
): GroupedFact[] {
  const fills = Object.values(planned.fills).filter(isScrewFill);
  const names = [...new Set(fills.map(({ screwFamily }) => screwFamily))].sort();
  return names.flatMap((name) => {
    const family = catalogue.families.get(name);
    if (!family) return [];
    const pieces = new Map<string, Screw>();
    for (const fill of fills) {
      if (fill.screwFamily !== name) continue;
      for (const screw of candidateScrews(fill, family)) pieces.set(screw.id, screw);
    }
    return contactFacts(plate, [...pieces.values()], name, engine);
  });
}

/** The verdicts on one thing against pieces of one family; equal answers are said once. */
export function contactFacts(
  first: Item,
  screws: readonly Screw[],
  about: string,
  engine: FitAnswers,
): GroupedFact[] {
  const said = new Map<string, GroupedFact>();
  for (const second of screws) {
    for (const fact of factsOfVerdict(engine.ask({ relation: 'wearsWith', first, second }), about, null)) {
      const key = fact.code === 'fit' ? JSON.stringify([fact.finding.from, fact.finding.answer]) : fact.code;
      if (!said.has(key)) said.set(key, fact);
    }
  }
  return [...said.values()];
}
