import { caseCostWords as words } from '@/lib/wording/case-cost';
import type { Answer, MissingValue } from '../calculation';
import type { CaseCostInput, CaseCostOutput, CostPart, WasteReason } from './schema';

/** In the order they are added and shown. */
export const COST_PARTS = [
  'implanted',
  'wasted',
  'trays',
  'pouches',
  'singleUse',
  'loans',
] as const satisfies readonly CostPart[];

/**
 * What the things of one case cost, in whole pence (calculations.md §10); staff and theatre time are not in it. A price nobody knows is never
 * nothing: the answer is then `notEstablished`, and what is known is the least it can be. The share of waste is only told
 * where every price in it is known.
 */
export function caseCost(input: CaseCostInput): Answer<CaseCostOutput> {
  const missing: MissingValue[] = COST_PARTS.flatMap((part) =>
    input[part].flatMap(({ item, unitPence }, at): MissingValue[] =>
      unitPence === null ? [{ path: [part, at, 'unitPence'], what: words.priceMissing(item) }] : [],
    ),
  );
  const parts = Object.fromEntries(COST_PARTS.map((part) => [part, sumOf(input[part])])) as Record<
    CostPart,
    { pence: number; unknown: number }
  >;
  const totalPence = COST_PARTS.reduce((all, part) => all + parts[part].pence, 0);
  const answer: CaseCostOutput = {
    ...parts,
    totalPence,
    wasteShareOf: input.wasteShareOf,
    wasteShare: wasteShare(input.wasteShareOf, parts, totalPence),
    wasteBy: wasteBy(input),
  };
  const working = words.working(answer);
  return missing.length === 0
    ? { outcome: 'answered', answer, working }
    : { outcome: 'notEstablished', missing, known: answer, working };
}

function sumOf(lines: CaseCostInput['implanted']) {
  return lines.reduce(
    ({ pence, unknown }, { quantity, unitPence }) =>
      unitPence === null
        ? { pence, unknown: unknown + quantity }
        : { pence: pence + quantity * unitPence, unknown },
    { pence: 0, unknown: 0 },
  );
}

function wasteShare(
  of: CaseCostInput['wasteShareOf'],
  parts: Record<CostPart, { pence: number; unknown: number }>,
  totalPence: number,
): number | null {
  const inIt: readonly CostPart[] = of === 'opened' ? ['implanted', 'wasted'] : COST_PARTS;
  if (inIt.some((part) => parts[part].unknown > 0)) return null;
  const whole = of === 'opened' ? parts.implanted.pence + parts.wasted.pence : totalPence;
  return whole === 0 ? null : parts.wasted.pence / whole;
}

function wasteBy({ wasted }: CaseCostInput): CaseCostOutput['wasteBy'] {
  const by = new Map<WasteReason, number>();
  for (const { why, quantity, unitPence } of wasted)
    by.set(why, (by.get(why) ?? 0) + quantity * (unitPence ?? 0));
  return [...by].map(([why, pence]) => ({ why, pence })).sort((a, b) => b.pence - a.pence);
}
