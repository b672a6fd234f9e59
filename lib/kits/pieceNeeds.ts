import type { Hole } from '../catalogue/hole';
import type { Item, Plate, Screw } from '../catalogue/item';
import type { ScrewUse } from '../fit/question';
import type { ItemId } from '../identity/ids';
import type { PlannedLength } from '../plans/plan';
import type { Rules } from './askOnce';
import type { CatalogueIndex } from './catalogueIndex';
import type { AcceptedPiece, LengthBasis, LinkVerdict, PieceNeed, PlanFault, StepKey } from './need';

/** A planned screw in its place: in a plate's hole, or alone in bone. */
export interface PlannedScrew {
  step: StepKey;
  family: string;
  length: PlannedLength;
  acceptLongerMm: number;
  use: ScrewUse;
  seat: { hole: Hole; plate: Plate } | null;
}

/** Millimetres of a plan may carry fractions of a hundredth at most; what is compared is whole micrometres. */
const umFromMm = (mm: number) => Math.round(mm * 1000);

/**
 * The screws that would serve: those of the stated length, then those longer by no more than is accepted.
 * From a spread, the length expected is the mean rounded to a made length: up where both cortices are to be
 * held, to the nearest where one is. A length that is not stated asks for any of the family, and counts as not established.
 */
export function acceptedScrews(
  planned: Pick<PlannedScrew, 'step' | 'family' | 'length' | 'acceptLongerMm' | 'use'>,
  index: CatalogueIndex,
): { screws: { screw: Screw; longerUm: number }[]; basis: LengthBasis; faults: PlanFault[] } {
  const { step, family, length, use } = planned;
  const made = index.family(family);
  const acceptLongerUm = umFromMm(planned.acceptLongerMm);
  if (length.kind === 'notStated') {
    return {
      screws: made.map((screw) => ({ screw, longerUm: 0 })),
      basis: { kind: 'notStated' },
      faults: [{ kind: 'lengthNotStated', step }],
    };
  }
  const askedUm = umFromMm(length.kind === 'exact' ? length.mm : length.meanMm);
  const madeUm = [...new Set(made.map((screw) => screw.lengthUm ?? 0))];
  const rounding = use.cortices === 2 ? 'up' : 'nearest';
  const wantedUm = length.kind === 'exact' ? askedUm : expectedLengthUm(askedUm, madeUm, rounding);
  const basis: LengthBasis =
    length.kind === 'exact'
      ? { kind: 'exact', askedUm, acceptLongerUm }
      : {
          kind: 'spread',
          meanUm: askedUm,
          sdUm: umFromMm(length.sdMm),
          rounding,
          expectedUm: wantedUm,
          acceptLongerUm,
        };
  const screws =
    wantedUm === null
      ? []
      : made
          .map((screw) => ({ screw, longerUm: (screw.lengthUm ?? 0) - wantedUm }))
          .filter(({ longerUm }) => longerUm >= 0 && longerUm <= acceptLongerUm);
  const notMade = screws.length === 0;
  return { screws, basis, faults: notMade ? [{ kind: 'lengthNotMade', step, family, askedUm, madeUm }] : [] };
}

/** The made length a mean leads to; of two equally near, the shorter. `null` when none is long enough. */
export function expectedLengthUm(
  meanUm: number,
  madeUm: number[],
  rounding: 'up' | 'nearest',
): number | null {
  const sorted = [...madeUm].sort((a, b) => a - b);
  if (rounding === 'up') return sorted.find((um) => um >= meanUm) ?? null;
  let best: number | null = null;
  for (const um of sorted) if (best === null || Math.abs(um - meanUm) < Math.abs(best - meanUm)) best = um;
  return best;
}

/** The need for one planned screw, each design asked whether it seats there. */
export function screwNeed(
  planned: PlannedScrew,
  index: CatalogueIndex,
  rules: Rules,
): { need: PieceNeed; faults: PlanFault[] } {
  const { screws, basis, faults } = acceptedScrews(planned, index);
  const asked = screws.map(({ screw, longerUm }): AcceptedPiece => {
    const answers: LinkVerdict[] = [];
    if (planned.seat) {
      const { hole, plate } = planned.seat;
      const question = { relation: 'seats', screw, hole, plate, use: planned.use } as const;
      answers.push({ itemIds: [screw.id, plate.id], holeId: hole.id, verdict: rules.ask(question) });
      const worn = rules.ask({ relation: 'wearsWith', first: screw, second: plate });
      answers.push({ itemIds: [screw.id, plate.id], holeId: null, verdict: worn });
    }
    return { itemId: screw.id, lengthUm: screw.lengthUm, longerUm, answers };
  });
  const need = sortAnswers(
    { id: `piece:${planned.step}`, step: planned.step, what: 'screw', length: basis },
    asked,
  );
  if (need.refused.length > 0 && need.accepts.length + need.notEstablished.length === 0)
    faults.push(refusal(need));
  return { need, faults };
}

/** The need for one named item: a plate, a washer, a wire. */
export function namedNeed(
  what: 'plate' | 'washer' | 'wire',
  step: StepKey,
  item: Item,
  answers: LinkVerdict[],
): { need: PieceNeed; faults: PlanFault[] } {
  const id = what === 'washer' ? `piece:${step}/washer` : `piece:${step}`;
  if (item.status !== 'current') {
    const kind = what === 'plate' ? 'plateNotCurrent' : 'itemNotCurrent';
    const refused = [{ itemId: item.id, lengthUm: null, longerUm: 0, answers }];
    const need: PieceNeed = { id, step, what, accepts: [], notEstablished: [], refused, length: null };
    return { need, faults: [{ kind, step, itemId: item.id, status: item.status }] };
  }
  const need = sortAnswers({ id, step, what, length: null }, [
    { itemId: item.id, lengthUm: null, longerUm: 0, answers },
  ]);
  return { need, faults: need.refused.length > 0 ? [refusal(need)] : [] };
}

function sortAnswers(
  head: Pick<PieceNeed, 'id' | 'step' | 'what' | 'length'>,
  asked: AcceptedPiece[],
): PieceNeed {
  const worst = ({ answers }: AcceptedPiece) => {
    // a caution broken (metals that are not alike) still fits; a rule that stops, or a value missing, decides
    const outcomes = answers.map((answer) => answer.verdict.outcome);
    return outcomes.includes('doesNotFit')
      ? 'doesNotFit'
      : outcomes.includes('notEstablished')
        ? 'notEstablished'
        : 'fits';
  };
  return {
    ...head,
    accepts: asked.filter((piece) => worst(piece) === 'fits'),
    notEstablished: asked.filter((piece) => worst(piece) === 'notEstablished'),
    refused: asked.filter((piece) => worst(piece) === 'doesNotFit'),
  };
}

function refusal(need: PieceNeed): PlanFault {
  const first = need.refused[0] as AcceptedPiece;
  return { kind: 'refused', step: need.step, itemId: first.itemId as ItemId, answers: first.answers };
}
