import { z } from 'zod';
import { shortLengths, stockWords } from '@/lib/wording/calculations';
import { listWords } from '@/lib/wording/numbers';
import type { Answer, MissingValue, WorkingStep } from '../calculation';
import { hallViolator, largestMatching, matchedCount } from '../matching';
import { holeName, lengthMm, screwFamilies } from '../screwStock';

export const lengthFeasibilityInput = z.strictObject({
  holes: z
    .array(
      z.strictObject({
        hole: holeName,
        family: z.string().min(1).max(40).meta({ title: 'Screw family' }),
        acceptedMm: z
          .array(lengthMm)
          .min(1)
          .max(40)
          .nullable()
          .meta({ title: 'Lengths accepted', description: 'null where the surgeon has not said' }),
      }),
    )
    .max(120)
    .meta({ title: 'Holes', description: 'Each hole that takes a screw, with every length accepted for it' }),
  families: screwFamilies,
});

const shortfall = z.strictObject({
  family: z.string(),
  holes: z.array(z.string()),
  lengthsMm: z.array(z.number()),
  pieces: z.number().int(),
  /** Any one more piece of one of these closes this shortfall. */
  oneMoreOfMm: z.array(z.number()),
  sentence: z.string(),
  fix: z.string(),
});

export const lengthFeasibilityOutput = z.strictObject({
  feasible: z.boolean(),
  filled: z.number().int(),
  of: z.number().int(),
  assignment: z.array(
    z.strictObject({ hole: z.string(), family: z.string(), lengthMm: z.number().nullable() }),
  ),
  /** Each takes the fixes before it as done, so that all of them together fill every hole. */
  shortfalls: z.array(shortfall),
});

export type LengthFeasibilityInput = z.output<typeof lengthFeasibilityInput>;
export type LengthFeasibilityOutput = z.output<typeof lengthFeasibilityOutput>;
type Shortfall = z.output<typeof shortfall>;

/**
 * Whether the pieces at hand can fill every hole with a length accepted for it: maximum matching, and where it fails,
 * a smallest group of holes that are too many for the lengths they take. Never another implant.
 *
 * A hole without lengths, or a stock nobody has counted, makes the answer `notEstablished`, unless the rest already
 * proves that it cannot be done.
 */
export function lengthFeasibility(input: LengthFeasibilityInput): Answer<LengthFeasibilityOutput> {
  const missing: MissingValue[] = [];
  const working: WorkingStep[] = [];
  const assignment: LengthFeasibilityOutput['assignment'] = [];
  const shortfalls: Shortfall[] = [];

  for (const [at, { hole, acceptedMm }] of input.holes.entries()) {
    if (acceptedMm === null)
      missing.push({ path: ['holes', at, 'acceptedMm'], what: `lengths accepted for ${hole}` });
  }
  for (const [familyAt, { family, lengths }] of input.families.entries()) {
    const holes = input.holes.filter((hole) => hole.family === family && hole.acceptedMm !== null);
    const usable = lengths.map(({ lengthMm: mm }) =>
      holes.some(({ acceptedMm }) => acceptedMm?.includes(mm)),
    );
    for (const [at, { lengthMm: mm, stock }] of lengths.entries()) {
      if (stock !== null || !usable[at]) continue;
      missing.push({
        path: ['families', familyAt, 'lengths', at, 'stock'],
        what: `pieces of ${family}, ${mm} mm`,
      });
    }
    // what nobody has counted is taken as enough here: only a shortage that does not depend on it is proven
    const stock = lengths.map(({ stock: pieces }) => pieces ?? holes.length);
    const found = matchFamily(
      family,
      holes,
      lengths.map(({ lengthMm: mm }) => mm),
      stock,
    );
    assignment.push(...found.assignment);
    shortfalls.push(...found.shortfalls);
    if (holes.length > 0) {
      working.push({
        label: `Largest matching, ${family}`,
        expression: stockWords(lengths.map(({ lengthMm: mm, stock: pieces }) => ({ mm, pieces }))),
        value: `${found.filled} of ${holes.length} holes filled`,
      });
    }
  }
  working.push(
    ...shortfalls.map(({ holes, lengthsMm, pieces, family }) => ({
      label: 'Too many for what they take',
      expression: `${listWords(holes)}: ${holes.length} holes; ${family} ${lengthsMm.join(', ')}: ${pieces} at hand`,
      value: `${holes.length} > ${pieces}`,
    })),
  );
  const order = new Map(input.holes.map(({ hole }, at) => [hole, at]));
  assignment.sort((a, b) => (order.get(a.hole) ?? 0) - (order.get(b.hole) ?? 0));
  const filled = assignment.filter(({ lengthMm: mm }) => mm !== null).length;
  const answer = {
    feasible: shortfalls.length === 0,
    filled,
    of: input.holes.length,
    assignment,
    shortfalls,
  };
  return missing.length === 0 || shortfalls.length > 0
    ? {
        outcome: 'answered',
        answer: { ...answer, feasible: answer.feasible && missing.length === 0 },
        working,
      }
    : { outcome: 'notEstablished', missing, known: null, working };
}

function matchFamily(
  family: string,
  holes: LengthFeasibilityInput['holes'],
  lengths: readonly number[],
  stock: readonly number[],
) {
  const accepted = holes.map(({ acceptedMm }) =>
    (acceptedMm ?? []).map((mm) => lengths.indexOf(mm)).filter((at) => at !== -1),
  );
  const given = largestMatching(accepted, stock);
  const filled = matchedCount(given);
  const shortfalls: Shortfall[] = [];
  const topped = [...stock];
  let now = given;
  for (;;) {
    const violator = hallViolator(accepted, topped, now);
    if (!violator) break;
    const pieces = violator.kinds.reduce((sum, kind) => sum + (topped[kind] ?? 0), 0);
    const wanted = holes[violator.needs[0] ?? -1]?.acceptedMm ?? [];
    const lengthsMm = violator.kinds.length > 0 ? violator.kinds.map((kind) => lengths[kind] ?? 0) : wanted;
    // a length that is not made cannot be fetched: the shortfall stands without a fix
    const oneMoreOfMm = violator.kinds.map((kind) => lengths[kind] ?? 0);
    const names = violator.needs.map((need) => holes[need]?.hole ?? '');
    shortfalls.push({
      family,
      holes: names,
      lengthsMm: [...lengthsMm].sort((a, b) => a - b),
      pieces,
      oneMoreOfMm,
      ...shortLengths({ holes: names, lengthsMm, pieces, oneMoreOfMm, made: violator.kinds.length > 0 }),
    });
    const kind = violator.kinds[0];
    if (kind === undefined) {
      // nothing can fill it: set it aside and look at the rest
      const need = violator.needs[0] ?? 0;
      accepted[need] = [lengths.length];
      topped[lengths.length] = (topped[lengths.length] ?? 0) + 1;
    } else {
      topped[kind] = (topped[kind] ?? 0) + 1;
    }
    now = largestMatching(accepted, topped);
  }
  const assignment = holes.map(({ hole }, at) => {
    const kind = given[at] ?? null;
    return { hole, family, lengthMm: kind === null ? null : (lengths[kind] ?? null) };
  });
  return { assignment, filled, shortfalls };
}
