import type { WorkingStep } from '../calculations/calculation';
import type { ReorderInput, ReorderOutput } from '../calculations/reorder/schema';
import type { DemandClass } from '../restock/demandClass';
import type { DemandModelKind } from '../restock/demandModel';
import type { ModelFit } from '../restock/fit';
import type { WhyModel } from '../restock/learn';
import { listWords, percentWord } from './numbers';

type Said = Omit<ReorderOutput, 'sentence'>;

export const MODEL_WORDS: Record<DemandModelKind, string> = {
  poisson: 'Poisson',
  negativeBinomial: 'negative binomial',
  compoundPoisson: 'compound Poisson',
};

export const CLASS_WORDS: Record<DemandClass, string> = {
  smooth: 'smooth: often, and in like sizes',
  erratic: 'erratic: often, in unlike sizes',
  intermittent: 'intermittent: now and then, in like sizes',
  lumpy: 'lumpy: now and then, in unlike sizes',
};

export const WHY_MODEL_WORDS: Record<WhyModel, string> = {
  varianceWithinMean: 'one piece per case, and the weeks vary no more than their mean',
  varianceAboveMean: 'the weeks vary more than their mean',
  severalPerCase: 'cases take several at once',
  clustered: 'cases take several at once and come in clusters beyond chance',
  stated: 'as stated',
};

/** Below this a model and its record hardly go together. */
const POOR_FIT = 0.05;

/** `χ² 3.1 on 4, p 0.54: nothing against it`. */
export function fitWords({ test }: ModelFit): string {
  if (test === null) return 'too few weeks with a use to test it';
  const { chiSquare, degrees, p } = test;
  const said = p < POOR_FIT ? 'the record speaks against it' : 'nothing in the record against it';
  return `χ² ${chiSquare.toFixed(1)} on ${degrees}, p ${p < 0.001 ? '< 0.001' : p.toFixed(3)}: ${said}`;
}

const number = (value: number) => (value >= 100 ? value.toFixed(0) : String(Number(value.toFixed(2))));
const dayWords = (days: number) => (days === 1 ? 'one day' : `${days} days`);
/** A chance as a person says it: `95 %`, `99.5 %`. */
const chance = (share: number) => `${Number((Math.floor(share * 1000) / 10).toFixed(1))} %`;

/** `3 at hand and 2 on order, less 2 for booked cases: 3`. */
function positionWords({ onHand, passing, position }: Said, input: ReorderInput): string {
  const has = [`${onHand} at hand`, ...(input.onOrder > 0 ? [`${input.onOrder} on order`] : [])].join(
    ' and ',
  );
  const less = [
    ...(input.committed > 0 ? [`${input.committed} for booked cases`] : []),
    ...(input.toRefill > 0 ? [`${input.toRefill} to refill sets`] : []),
    ...(passing > 0 ? [`${passing} that will pass use-by first`] : []),
  ];
  if (less.length === 0 && input.onOrder === 0) return has;
  return `${has}${less.map((one) => `, less ${one}`).join('')}: ${position < 0 ? `−${-position}` : position}`;
}

/** Why so many, in one sentence. */
function sentence(said: Said, input: ReorderInput): string {
  const { order, orderUpTo, coverDays, lacking, useByLimit, packs } = said;
  const whole = Math.ceil(lacking / input.packOf) * input.packOf;
  const packWords = input.packOf > 1 && order > 0 ? ` (${packs} × ${input.packOf})` : '';
  const cover = `${orderUpTo} cover the ${dayWords(coverDays)} until the order after this one can be here in ${chance(input.service)} of such times`;
  const expected = `about ${number(said.expected)} expected beyond booked cases, ${MODEL_WORDS[said.model]}`;
  const because = `${cover} (${expected}), and there are ${positionWords(said, input)}`;
  if (lacking === 0) return `Order none: ${because}.`;
  if (order < whole && useByLimit !== null) {
    const held = `only ${useByLimit} more can be used before their use-by with ${chance(input.sureOfUse)}`;
    return `Order ${order === 0 ? 'none' : `${order}${packWords}`} rather than ${whole}: ${held}; ${because}.`;
  }
  return `Order ${order}${packWords}: ${because}.`;
}

function working(said: ReorderOutput, input: ReorderInput): WorkingStep[] {
  const { perWeek, coverDays, demandClass, useByLimit } = said;
  const by = {
    stated: 'as stated',
    mean: 'mean of the weeks',
    sizeInterval: 'size ÷ interval × (1 − α ÷ 2)',
  };
  const [chosen] = said.fits;
  return [
    ...(demandClass
      ? [
          {
            label: 'Class of demand',
            expression: `every ${number(demandClass.interval)} weeks (1.32), CV² ${number(demandClass.cv2)} (0.49)`,
            value: CLASS_WORDS[demandClass.class],
          },
        ]
      : []),
    { label: 'Demand of a week', expression: by[perWeek.by], value: number(perWeek.mean) },
    { label: 'Model', expression: WHY_MODEL_WORDS[said.why], value: MODEL_WORDS[said.model] },
    ...(chosen ? [{ label: 'Fit', expression: MODEL_WORDS[chosen.kind], value: fitWords(chosen) }] : []),
    {
      label: 'Time to cover',
      expression: `${input.leadDays} lead + ${input.reviewDays} review`,
      value: dayWords(coverDays),
    },
    ...(said.unbookedShare === null
      ? []
      : [
          {
            label: 'Not booked yet',
            expression: 'share of past demand that was booked later than so many days before',
            value: percentWord(said.unbookedShare),
          },
        ]),
    {
      label: 'Unbooked demand',
      expression: 'mean (variance) over the time to cover',
      value: `${number(said.expected)} (${number(said.variance)})`,
    },
    {
      label: 'Order up to',
      expression: `smallest s with P(D ≤ s) ≥ ${input.service}`,
      value: String(said.orderUpTo),
    },
    {
      label: 'Position',
      expression: `${said.onHand} on hand − ${said.passing} passing use-by + ${input.onOrder} on order − ${input.committed} committed − ${input.toRefill} to refill`,
      value: String(said.position),
    },
    {
      label: 'Use-by limit',
      expression: `most that is asked for in time with ${chance(input.sureOfUse)}`,
      value: useByLimit === null ? 'shelf life not stated' : String(useByLimit),
    },
    {
      label: 'Order',
      expression: `${said.lacking} lacking, in packs of ${input.packOf}`,
      value: String(said.order),
    },
    {
      label: 'Service reached',
      expression: `P(D ≤ ${said.position + said.order}); without the order P(D ≤ ${said.position})`,
      value: `${chance(said.serviceWith)}; ${chance(said.serviceWithout)}`,
    },
  ];
}

/** How much to keep is not known; what is promised is. */
function onlyPromised(of: {
  missing: readonly string[];
  order: number;
  lacking: number;
  packOf: number;
  good: number;
  input: ReorderInput;
}): string {
  const { missing, order, lacking, packOf, good, input } = of;
  const unknown = `how much to keep is not established (${listWords(missing)})`;
  const promises = [
    ...(input.committed > 0 ? [`${input.committed} for booked cases`] : []),
    ...(input.toRefill > 0 ? [`${input.toRefill} to refill sets`] : []),
  ];
  const has = input.onOrder > 0 ? `${good} at hand and ${input.onOrder} on order` : `${good} at hand`;
  if (lacking === 0) return `Order none: ${unknown}; there are ${has}, and no more is promised.`;
  const packs = packOf > 1 ? ` (${order / packOf} × ${packOf})` : '';
  return `Order ${order}${packs}: promised are ${listWords(promises)}, and there are ${has}; beyond that ${unknown}.`;
}

export const restockWords = {
  onlyPromised,
  beyondRecord: (day: number, days: number) =>
    `Day ${day} lies beyond the record, whose ${days} days are numbered 0 to ${days - 1}.`,
  leadMissing: 'nobody has stated how long the maker takes',
  tooShort: (weeks: number) =>
    `${weeks === 1 ? 'one whole week is' : `${weeks} whole weeks are`} on record, 13 are needed`,
  noUse: (weeks: number, atMost: number) =>
    `no use in ${weeks} weeks, which allows up to ${number(atMost)} a week, 95 % sure`,
  sentence,
  working,
};

/** What the sentence of a line says of consignment. */
export const consignmentNotes = {
  /** ` Of what is on order, 3 are replaced by their owner (UO-0012) and not bought.`; empty where there is nothing to say. */
  replaced: (toReplace: readonly { number: string; pieces: number }[], waiting: number): string => {
    const pieces = toReplace.reduce((sum, one) => sum + one.pieces, 0);
    const numbers = listWords(toReplace.map((one) => one.number));
    return [
      pieces === 0
        ? ''
        : ` Of what is on order, ${pieces} ${pieces === 1 ? 'is' : 'are'} replaced by the owner (${numbers}), not bought.`,
      waiting === 0
        ? ''
        : ` ${waiting} used from consignment ${waiting === 1 ? 'waits' : 'wait'} for a usage order, which may ask for ${waiting === 1 ? 'its' : 'their'} replacement.`,
    ].join('');
  },
  /** It is kept on consignment by its terms. */
  neverBought: (lacking: number): string =>
    lacking === 0
      ? 'Order none: it is kept on consignment, and enough is at hand.'
      : `Order none: it is kept on consignment, so what is used is replaced by its owner on a usage order and never bought. By its use ${lacking} more should be at hand: ask the owner for them.`,
};
