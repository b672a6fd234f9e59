import { expiryLossWords as words } from '@/lib/wording/expiry-loss';
import type { Answer, MissingValue } from '../calculation';
import { afterStretch } from './chances';
import type { ExpiryLossInput, ExpiryLossOutput, LotLoss } from './schema';

type Dated = ExpiryLossInput['lots'][number] & { months: number };

/**
 * How many units will pass their use-by on the shelf, first expired first out (calculations.md §9). Of a lot is lost what is left of
 * the lots up to it, less what was lost before: E[(units up to it − lost before − D(T))⁺]. Units left are followed as chances,
 * lot by lot, so the answer is exact. On its use-by a unit may still be used.
 */
export function expiryLoss(input: ExpiryLossInput): Answer<ExpiryLossOutput> {
  const missing: MissingValue[] = input.lots.flatMap(({ lot, months }, at) =>
    months === null ? [{ path: ['lots', at, 'months'], what: words.dateMissing(lot) }] : [],
  );
  if (input.perMonth === null) {
    const what = words.useMissing;
    return {
      outcome: 'notEstablished',
      missing: [{ path: ['perMonth'], what }, ...missing],
      known: null,
      working: [],
    };
  }
  const lots = input.lots
    .filter((lot): lot is Dated => lot.months !== null)
    // by name where they end together, so that the order given changes nothing
    .sort((a, b) => a.months - b.months || (a.lot < b.lot ? -1 : 1));
  const losses = lossesOf(lots, input.perMonth, input.varianceToMean);
  const priced = losses.every(({ expectedLostPence }) => expectedLostPence !== null);
  const answer: ExpiryLossOutput = {
    lots: losses,
    expectedLost: sumOf(losses.map((one) => one.expectedLost)),
    pointForecastLost: sumOf(losses.map((one) => one.pointForecastLost)),
    expectedLostPence: priced ? sumOf(losses.map((one) => one.expectedLostPence ?? 0)) : null,
    offered: input.casesAtMonths.map((month) => ({
      month,
      lots: lots.filter(({ months, units }) => units > 0 && months >= month).map(({ lot }) => lot),
    })),
  };
  const working = words.working(answer, input.perMonth);
  return missing.length === 0
    ? { outcome: 'answered', answer, working }
    : { outcome: 'notEstablished', missing, known: losses.length === 0 ? null : answer, working };
}

function lossesOf(lots: readonly Dated[], perMonth: number, varianceToMean: number): LotLoss[] {
  const total = lots.reduce((all, one) => all + one.units, 0);
  let left: Float64Array = new Float64Array(total + 1);
  left[total] = 1;
  let later = total;
  let leftByForecast = total;
  let now = 0;
  return lots.map((lot) => {
    const until = Math.max(0, lot.months);
    left = afterStretch(left, perMonth * (until - now), varianceToMean);
    leftByForecast = Math.max(0, leftByForecast - perMonth * (until - now));
    now = until;
    later -= lot.units;
    const lost = new Float64Array(lot.units + 1);
    const kept = new Float64Array(later + 1);
    for (const [units, chance] of left.entries()) {
      const gone = Math.max(0, units - later);
      lost[gone] = (lost[gone] ?? 0) + chance;
      kept[units - gone] = (kept[units - gone] ?? 0) + chance;
    }
    left = kept;
    const pointForecastLost = Math.max(0, leftByForecast - later);
    leftByForecast -= pointForecastLost;
    return toldOf(lot, lost, pointForecastLost);
  });
}

function toldOf(lot: Dated, lost: Float64Array, pointForecastLost: number): LotLoss {
  const expectedLost = lost.reduce((all, chance, units) => all + units * chance, 0);
  let atLeast = 1;
  let likelyLost = 0;
  for (let units = 0; units < lot.units; units += 1) {
    atLeast -= lost[units] ?? 0;
    if (atLeast > 0.5) likelyLost = units + 1;
  }
  const facts = {
    lot: lot.lot,
    units: lot.units,
    months: lot.months,
    pastUseBy: lot.months < 0,
    expectedLost,
    likelyLost,
    chanceAnyLost: Math.min(1, Math.max(0, 1 - (lost[0] ?? 0))),
    pointForecastLost,
    expectedLostPence: lot.unitPence === null ? null : Math.round(expectedLost * lot.unitPence),
  };
  return { ...facts, sentence: words.sentence(facts) };
}

const sumOf = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);
