import type { Hole } from '../catalogue/hole';
import type { Plate, Screw } from '../catalogue/item';
import type { Outcome, ScrewUse, Verdict } from '../fit/question';
import type { FitAnswers } from './fitFindings';
import { currentScrews, type ScrewFamily } from './planCatalogue';

/** A verdict shared by some lengths of a family; nearly always there is one for all of them. */
export interface LengthsVerdict {
  verdict: Verdict;
  lengthsUm: (number | null)[];
}

/**
 * Asks whether each screw seats in the hole, and groups the screws by the answer. A family's screws
 * differ in length only, but a named exception may be about one of them.
 */
export function seatsVerdicts(
  screws: readonly Screw[],
  hole: Hole,
  plate: Plate,
  use: ScrewUse,
  engine: FitAnswers,
): LengthsVerdict[] {
  const byAnswer = new Map<string, LengthsVerdict>();
  for (const screw of screws) {
    const verdict = engine.ask({ relation: 'seats', screw, hole, plate, use });
    const key = JSON.stringify([
      verdict.outcome,
      verdict.findings.map(({ from, answer, outranked }) => [from, answer, outranked]),
    ]);
    const group = byAnswer.get(key);
    if (group) group.lengthsUm.push(screw.lengthUm);
    else byAnswer.set(key, { verdict, lengthsUm: [screw.lengthUm] });
  }
  return [...byAnswer.values()];
}

const GRAVITY: Record<Outcome, number> = { fits: 0, notEstablished: 1, doesNotFit: 2 };

/** The gravest of several outcomes: a family fits only where all its pieces do. */
export function gravest(outcomes: readonly Outcome[]): Outcome {
  return outcomes.reduce<Outcome>((worst, next) => (GRAVITY[next] > GRAVITY[worst] ? next : worst), 'fits');
}

export interface FamilyVerdict {
  family: ScrewFamily;
  outcome: Outcome;
  verdicts: LengthsVerdict[];
}

/**
 * Every family with a current piece, each with its own verdict for this hole and use, by name only:
 * the order says nothing about which is better.
 */
export function familyVerdicts(
  families: Iterable<ScrewFamily>,
  hole: Hole,
  plate: Plate,
  use: ScrewUse,
  engine: FitAnswers,
): FamilyVerdict[] {
  return [...families]
    .filter((family) => currentScrews(family).length > 0)
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((family) => {
      const verdicts = seatsVerdicts(currentScrews(family), hole, plate, use, engine);
      return { family, outcome: gravest(verdicts.map(({ verdict }) => verdict.outcome)), verdicts };
    });
}
