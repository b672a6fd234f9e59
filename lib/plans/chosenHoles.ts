import type { Hole } from '../catalogue/hole';
import type { Plate } from '../catalogue/item';
import type { ScrewUse } from '../fit/question';
import type { FitAnswers } from './fitFindings';
import { type FamilyVerdict, familyVerdicts, gravest } from './holeVerdicts';
import type { HoleFill, PlannedPlate, ScrewFill } from './plan';
import type { ScrewFamily } from './planCatalogue';

/** A family's answer over several holes at once. */
export interface FamilyOverHoles {
  family: ScrewFamily;
  /** One answer for each hole, in the order given. */
  byHole: { holeId: string; answer: FamilyVerdict }[];
  fits: number;
  outcome: FamilyVerdict['outcome'];
}

/**
 * Every family's verdict for any holes, by name. Holes of one design in one plate are asked about once: they differ
 * only in where they are. What was asked is kept, since a planner asks the same again and again.
 */
export class FamilyAnswers {
  private readonly asked = new Map<string, FamilyVerdict[]>();

  constructor(
    private readonly families: readonly ScrewFamily[],
    private readonly engine: FitAnswers,
  ) {}

  over(holes: readonly Hole[], plate: Plate, use: ScrewUse): FamilyOverHoles[] {
    const perHole = holes.map((hole) => ({ holeId: hole.id, answers: this.forHole(hole, plate, use) }));
    return (perHole[0]?.answers ?? []).map(({ family }, index) => {
      const byHole = perHole.flatMap(({ holeId, answers }) => {
        const answer = answers[index];
        return answer ? [{ holeId, answer }] : [];
      });
      const outcomes = byHole.map(({ answer }) => answer.outcome);
      return {
        family,
        byHole,
        fits: outcomes.filter((outcome) => outcome === 'fits').length,
        outcome: gravest(outcomes),
      };
    });
  }

  private forHole(hole: Hole, plate: Plate, use: ScrewUse): FamilyVerdict[] {
    const key = [plate.id, use.purpose, use.cortices, designOf(hole)].join('|');
    const known = this.asked.get(key);
    if (known) return known;
    const answers = familyVerdicts(this.families, hole, plate, use, this.engine);
    this.asked.set(key, answers);
    return answers;
  }
}

/** What a hole is like, wherever it is. */
function designOf({
  id: _id,
  segment: _segment,
  alongUm: _along,
  acrossUm: _across,
  ...design
}: Hole): string {
  return JSON.stringify(design);
}

export function isScrewFill(fill: HoleFill | undefined | null): fill is ScrewFill {
  return fill !== undefined && fill !== null && fill.purpose !== 'empty' && fill.purpose !== 'temporaryWire';
}

/** What the chosen holes have in common, value by value; `undefined` where they differ or have none. */
export interface CommonFill {
  purpose: HoleFill['purpose'] | 'undecided' | undefined;
  screwFamily: string | undefined;
  cortices: 1 | 2 | undefined;
  length: ScrewFill['length'] | undefined;
  acceptLongerMm: number | undefined;
  wireItemId: string | undefined;
}

export function commonFill(planned: PlannedPlate, holeIds: readonly string[]): CommonFill {
  const fills = holeIds.map((id) => planned.fills[id]);
  const screws = fills.filter(isScrewFill);
  const onlyScrews = screws.length === fills.length ? screws : [];
  const wires = fills.flatMap((fill) => (fill?.purpose === 'temporaryWire' ? [fill.wireItemId] : []));
  return {
    purpose: shared(fills.map((fill) => fill?.purpose ?? 'undecided')),
    screwFamily: shared(onlyScrews.map(({ screwFamily }) => screwFamily)),
    cortices: shared(onlyScrews.map(({ cortices }) => cortices)),
    length: shared(onlyScrews.map(({ length }) => length)),
    acceptLongerMm: shared(onlyScrews.map(({ acceptLongerMm }) => acceptLongerMm)),
    wireItemId: wires.length === fills.length ? shared(wires) : undefined,
  };
}

function shared<T>(values: readonly T[]): T | undefined {
  const [first] = values;
  const said = JSON.stringify(first);
  return values.every((value) => JSON.stringify(value) === said) ? first : undefined;
}
