import { countsOf, type DemandModel, meanOf, varianceOf } from '@/lib/restock/demandModel';
import { countsIn } from '@/lib/restock/distribution';
import { fitOf } from '@/lib/restock/fit';
import { unbookedDemand } from '@/lib/restock/forecast';
import { type Learned, learn, type WhyModel } from '@/lib/restock/learn';
import { levelsOf, type Order, orderAt } from '@/lib/restock/order';
import type { Use } from '@/lib/restock/record';
import { restockWords } from '@/lib/wording/restock';
import type { Answer, MissingValue } from '../calculation';
import type { ReorderInput, ReorderOutput } from './schema';

/** Demand of one week, and where it is from. */
interface WeekOfDemand {
  model: DemandModel;
  why: WhyModel;
  learned: Learned | null;
  uses: readonly Use[] | null;
}

/**
 * How much to order of one item, and why: order up to the smallest level that covers the unbooked demand of lead and
 * review time with the service level, in whole packs, never past what can be used before its use-by. `notEstablished`
 * where the lead time is unknown or the record says too little.
 */
export function reorder(input: ReorderInput): Answer<ReorderOutput> {
  const missing: MissingValue[] = [];
  const { leadDays } = input;
  if (leadDays === null) missing.push({ path: ['leadDays'], what: restockWords.leadMissing });
  const week = weekOf(input, missing);
  if (leadDays === null || week === null)
    return { outcome: 'notEstablished', missing, known: null, working: [] };

  const coverDays = leadDays + input.reviewDays;
  const { demand: cover, share } = unbookedDemand(week, coverDays, input.leadSdDays);
  const { shelfLifeDays } = input;
  const untilUseByDays = shelfLifeDays === null ? null : leadDays + shelfLifeDays;
  const levels = levelsOf({
    cover,
    coverDays,
    service: input.service,
    untilUseBy:
      untilUseByDays === null
        ? null
        : {
            demand: unbookedDemand(week, untilUseByDays, input.leadSdDays).demand,
            days: untilUseByDays,
          },
    sureOfUse: input.sureOfUse,
  });
  const found = orderAt(levels, input);
  const answer = answerOf(input, week, { cover, coverDays, share, found });
  return { outcome: 'answered', answer, working: restockWords.working(answer, input) };
}

function weekOf({ demand }: ReorderInput, missing: MissingValue[]): WeekOfDemand | null {
  if (demand.kind === 'stated') {
    const { piecesPerWeek, variancePerWeek, perCase } = demand;
    const sizes = perCase ?? [];
    const all = sizes.reduce((sum, { cases }) => sum + cases, 0);
    const perOne = sizes.reduce((sum, { pieces, cases }) => sum + (pieces * cases) / all, 0);
    const model: DemandModel =
      all === 0
        ? countsOf(piecesPerWeek, variancePerWeek ?? piecesPerWeek)
        : {
            kind: 'compoundPoisson',
            cases: piecesPerWeek / perOne,
            sizes: sizes.map(({ pieces, cases }) => ({ pieces, share: cases / all })),
          };
    return { model, why: 'stated', learned: null, uses: null };
  }
  const learning = learn(demand, demand.alpha);
  if (learning.outcome === 'learned') {
    const { learned } = learning;
    return { model: learned.model, why: learned.why, learned, uses: demand.uses };
  }
  missing.push({
    path: ['demand', 'uses'],
    what:
      learning.outcome === 'tooShort'
        ? restockWords.tooShort(learning.periods)
        : restockWords.noUse(learning.periods, learning.atMost),
  });
  return null;
}

function answerOf(
  input: ReorderInput,
  { model, why, learned }: WeekOfDemand,
  {
    cover,
    coverDays,
    share,
    found,
  }: { cover: DemandModel; coverDays: number; share: number | null; found: Order },
): ReorderOutput {
  const { upTo } = countsIn(cover);
  const answer: Omit<ReorderOutput, 'sentence'> = {
    ...found,
    serviceWithout: upTo(found.position),
    serviceWith: upTo(found.position + found.order),
    packs: found.order / input.packOf,
    coverDays,
    expected: meanOf(cover),
    variance: varianceOf(cover),
    unbookedShare: share,
    model: model.kind,
    why,
    demandClass: learned?.demandClass ?? null,
    perWeek: {
      mean: meanOf(model),
      variance: varianceOf(model),
      by: learned === null ? 'stated' : learned.sizeInterval === null ? 'mean' : 'sizeInterval',
    },
    fits: learned?.candidates.map((candidate) => fitOf(candidate, learned.periods)) ?? [],
  };
  return { ...answer, sentence: restockWords.sentence(answer, input) };
}
