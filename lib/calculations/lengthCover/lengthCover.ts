import { lengthCoverWords } from '@/lib/wording/length-cover';
import { percentWord } from '@/lib/wording/numbers';
import type { Answer, MissingValue, WorkingStep } from '../calculation';
import { type CoverMethod, exactMethod, piecesEverAsked, type Stocks, smallestSd } from './exact';
import { limitingLengths } from './limits';
import { type FamilyCase, familyCases, lengthChances } from './needs';
import type { LengthCoverInput, LengthCoverOutput } from './schema';
import { convergedNodes } from './sharedOffset';
import { type SimulationMethod, simulationMethod } from './simulation';
import { roughTrials, smallestTopUp } from './topUp';

/**
 * Probability that every screw length the case turns out to need is at hand: the joint figure over all holes, since odds
 * per length mislead. Lengths in millimetres, chances between 0 and 1.
 *
 * A hole without a length, or a length nobody has counted, makes the answer `notEstablished`.
 */
export function lengthCover(input: LengthCoverInput): Answer<LengthCoverOutput> {
  const families = familyCases(input);
  const missing = missingValues(input);
  if (missing.length > 0) return { outcome: 'notEstablished', missing, known: null, working: [] };

  const stocks: Stocks = families.map(({ family, lengthsMm }) =>
    lengthsMm.map((mm) => stockOf(input, family, mm)),
  );
  const sharedSdMm = input.sharedSdMm ?? 0;
  const options = { sharedSdMm, notImplanted: input.notImplantedChance };
  const exact = input.method === 'auto' ? exactMethod(families, stocks, options) : null;
  const simulate = (trials: number) => simulationMethod(families, { ...options, trials, seed: input.seed });
  const simulation = exact ? null : simulate(input.trials);
  const method: CoverMethod = exact ?? (simulation as SimulationMethod);
  const cover = method.cover(stocks) ?? 0;
  const beyondRange = beyondRangeOf(input, families, sharedSdMm);
  const answer: LengthCoverOutput = {
    cover,
    method: exact
      ? { kind: 'exact', nodes: exact.nodes, convergence: exact.convergence }
      : {
          kind: 'simulation',
          trials: input.trials,
          seed: input.seed,
          standardError: (simulation as SimulationMethod).standardError(cover),
        },
    beyondRange,
    lengths: expectedNeeds(families, stocks, sharedSdMm),
    limitedBy: [],
    topUp: { state: 'notAsked' },
  };
  if (input.targetCover !== null) {
    const trials = roughTrials(families, stocks, method, sharedSdMm);
    const rough = trials === null ? null : simulate(trials);
    const plenty = families.map((family) => piecesEverAsked(family, options.notImplanted));
    const wanted = {
      cover,
      best: exact ? 1 - beyondRange.anyHole : (method.cover(ample(families, plenty)) ?? 0),
      target: input.targetCover,
      sharedSdMm,
      plenty,
    };
    answer.limitedBy = cover < 1 ? limitingLengths(families, stocks, rough ?? method, sharedSdMm) : [];
    answer.topUp = smallestTopUp(families, stocks, method, rough ?? (exact ? null : method), wanted);
  }
  return { outcome: 'answered', answer, working: workingOf(input, families, answer) };
}

function missingValues(input: LengthCoverInput): MissingValue[] {
  const missing: MissingValue[] = [];
  for (const [at, { hole, need }] of input.holes.entries()) {
    if (need.kind === 'notStated')
      missing.push({ path: ['holes', at, 'need'], what: lengthCoverWords.lengthOf(hole) });
  }
  for (const [at, { family, lengths }] of input.families.entries()) {
    if (!input.holes.some((hole) => hole.family === family)) continue;
    for (const [lengthAt, { lengthMm, stock }] of lengths.entries()) {
      if (stock !== null) continue;
      missing.push({
        path: ['families', at, 'lengths', lengthAt, 'stock'],
        what: lengthCoverWords.piecesOf(family, lengthMm),
      });
    }
  }
  return missing;
}

function stockOf(input: LengthCoverInput, family: string, mm: number): number {
  const lengths = input.families.find((one) => one.family === family)?.lengths;
  return lengths?.find(({ lengthMm }) => lengthMm === mm)?.stock ?? 0;
}

/** So many of every length that only what is not made can be lacking. */
function ample(families: readonly FamilyCase[], plenty: readonly number[]): Stocks {
  return families.map(({ lengthsMm }, at) => lengthsMm.map(() => plenty[at] ?? 0));
}

function beyondRangeOf(
  input: LengthCoverInput,
  families: readonly FamilyCase[],
  sharedSdMm: number,
): LengthCoverOutput['beyondRange'] {
  const within = (family: FamilyCase, group: FamilyCase['groups'][number], offset: number, shared: number) =>
    Math.min(
      1,
      lengthChances(group, family.lengthsMm, offset, shared).reduce((sum, chance) => sum + chance, 0),
    );
  const allWithin = (z: number) =>
    families.reduce(
      (product, family) =>
        family.groups.reduce(
          (all, group) => all * within(family, group, z * sharedSdMm, 0) ** group.size,
          product,
        ),
      1,
    );
  const anyWithin =
    sharedSdMm > 0
      ? (({ nodes }) => nodes.reduce((sum, { z, weight }) => sum + weight * allWithin(z), 0))(
          convergedNodes(allWithin, smallestSd(families) / sharedSdMm),
        )
      : allWithin(0);
  return {
    anyHole: Math.max(0, 1 - anyWithin),
    holes: input.holes.flatMap((hole) => {
      const own = familyCases({ ...input, holes: [hole] })[0];
      const group = own?.groups[0];
      return own && group ? [{ hole: hole.hole, chance: 1 - within(own, group, 0, sharedSdMm) }] : [];
    }),
  };
}

function expectedNeeds(
  families: readonly FamilyCase[],
  stocks: Stocks,
  sharedSdMm: number,
): LengthCoverOutput['lengths'] {
  return families.flatMap(({ family, lengthsMm, groups }, at) => {
    const chances = groups.map((group) => lengthChances(group, lengthsMm, 0, sharedSdMm));
    return lengthsMm.map((lengthMm, length) => ({
      family,
      lengthMm,
      stock: stocks[at]?.[length] ?? 0,
      expectedNeed: groups.reduce((sum, { size }, group) => sum + size * (chances[group]?.[length] ?? 0), 0),
    }));
  });
}

function workingOf(
  input: LengthCoverInput,
  families: readonly FamilyCase[],
  answer: LengthCoverOutput,
): WorkingStep[] {
  const steps: WorkingStep[] = families.map(({ family, groups }) => ({
    label: lengthCoverWords.holesOf(family),
    expression: groups.map((group) => lengthCoverWords.group(group)).join('; '),
    value: String(groups.reduce((sum, { size }) => sum + size, 0)),
  }));
  if (input.sharedSdMm !== null) {
    steps.push({
      label: lengthCoverWords.sharedOffset,
      expression: lengthCoverWords.sharedExpression(answer.method),
      value: `${input.sharedSdMm} mm`,
    });
  }
  steps.push(
    {
      label: lengthCoverWords.beyondRange,
      expression: '1 − P(every length needed is made)',
      value: percentWord(answer.beyondRange.anyHole, 2),
    },
    {
      label: lengthCoverWords.cover,
      expression: lengthCoverWords.methodOf(answer.method),
      value: percentWord(answer.cover, 2),
    },
  );
  return steps;
}
