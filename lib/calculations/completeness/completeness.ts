import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { completenessWords, duplicateName } from '@/lib/wording/calculations';
import { percentWord } from '@/lib/wording/numbers';
import type { Answer, MissingValue, WorkingStep } from '../calculation';
import { massFigure, massOutput } from './mass';
import { mustHaveOutput, mustHaves } from './mustHaves';

const itemName = z.string().min(1).max(120);

export const completenessInput = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        line: z.string().min(1).max(80).meta({ title: 'Line' }),
        item: itemName.meta({ title: 'Item' }),
        mustHaveClass: z.literal([1, 2, 3, 4]).meta({
          title: 'Must-have class',
          description: '1 stops the step · 2 unless a substitute is there · 3 back-up · 4 convenience',
        }),
        expected: z.number().int().min(1).max(999).meta({ title: 'Expected' }),
        minimum: z.number().int().min(0).max(999).meta({ title: 'Minimum' }),
        found: z
          .number()
          .int()
          .min(0)
          .max(9999)
          .nullable()
          .meta({ title: 'Found', description: 'Sound pieces; null where not counted' }),
        massGrams: z.number().int().min(1).max(50_000).nullable().meta({ title: 'Mass of one' }),
        substitutes: z
          .array(itemName)
          .max(10)
          .default([])
          .meta({ title: 'Approved substitutes', description: 'One way; items that may stand in' }),
      }),
    )
    .min(1)
    .max(600)
    .meta({ title: 'Lines' }),
  pouches: z
    .array(
      z.strictObject({
        item: itemName.meta({ title: 'Item' }),
        pieces: z.number().int().min(1).max(999).meta({ title: 'Pieces' }),
      }),
    )
    .max(100)
    .default([])
    .meta({ title: 'Sterile pouches that travel with the set' }),
  containerGrams: z
    .number()
    .int()
    .min(0)
    .max(50_000)
    .nullable()
    .meta({ title: 'Basket and container', description: 'null where not stated' }),
  massLimitsGrams: z
    .array(z.number().int().min(1).max(100_000))
    .max(6)
    .default([7000, 10_000, 11_340])
    .meta({ title: 'Mass limits', description: 'Local setting; 11,340 g is 25 lb' }),
  warnAtPercent: z
    .number()
    .int()
    .min(1)
    .max(100)
    .default(90)
    .meta({ title: 'Warn at this share of a limit' }),
});

export const completenessOutput = z.strictObject({
  pieces: z.strictObject({
    found: z.number().int(),
    expected: z.number().int(),
    percent: z.number(),
    surplus: z.number().int(),
  }),
  mustHaves: mustHaveOutput,
  mass: massOutput,
  shortLines: z.array(
    z.strictObject({
      line: z.string(),
      item: z.string(),
      short: z.number().int(),
      mustHaveClass: z.number().int(),
    }),
  ),
  surplusLines: z.array(z.strictObject({ line: z.string(), item: z.string(), surplus: z.number().int() })),
  /** Who may send it as it is, and why. */
  maySend: z.strictObject({
    who: z.enum(['anyTechnician', 'technicianShort', 'supervisor', 'theatreLeadAndSurgeon', 'nobodyYet']),
    because: z.string(),
  }),
});

export type CompletenessInput = z.output<typeof completenessInput>;
export type CompletenessOutput = z.output<typeof completenessOutput>;

/** More than any set holds; it bounds the work. */
const MOST_PIECES = 3000;

/** Line names must be unique, and a minimum is never above what is expected. */
export function checkCompleteness(input: CompletenessInput): Problem[] {
  const seen = new Set<string>();
  const expected = input.lines.reduce((sum, line) => sum + line.expected, 0);
  const tooMany: Problem[] =
    expected > MOST_PIECES
      ? [
          {
            path: ['lines'],
            code: 'too-many-pieces',
            message: completenessWords.tooMany(expected, MOST_PIECES),
          },
        ]
      : [];
  const faults = input.lines.flatMap(({ line, minimum, expected }, at) => {
    const problems: Problem[] = [];
    if (seen.has(line))
      problems.push({ path: ['lines', at, 'line'], code: 'duplicate', message: duplicateName(line) });
    seen.add(line);
    if (minimum > expected) {
      problems.push({
        path: ['lines', at, 'minimum'],
        code: 'minimum-above-expected',
        message: completenessWords.minimumAboveExpected(minimum, expected),
      });
    }
    return problems;
  });
  return [...tooMany, ...faults];
}

/**
 * Completeness of a set in pieces and in must-haves, with its mass. `Σ min(found, expected) / Σ expected`: what is over
 * on one line never hides what is short on another. Lines that nobody has counted make it `notEstablished`; the figures
 * that are known then count them as nothing found.
 */
export function completeness(input: CompletenessInput): Answer<CompletenessOutput> {
  const { lines } = input;
  const missing: MissingValue[] = lines.flatMap(({ found, line }, at) =>
    found === null ? [{ path: ['lines', at, 'found'], what: completenessWords.countOf(line) }] : [],
  );
  const expected = lines.reduce((sum, line) => sum + line.expected, 0);
  const found = lines.reduce((sum, line) => sum + Math.min(line.found ?? 0, line.expected), 0);
  const surplusLines = lines.flatMap(({ line, item, found: pieces, expected: due }) =>
    (pieces ?? 0) > due ? [{ line, item, surplus: (pieces ?? 0) - due }] : [],
  );
  const shortLines = lines.flatMap(({ line, item, found: pieces, expected: due, mustHaveClass }) =>
    pieces !== null && pieces < due ? [{ line, item, short: due - pieces, mustHaveClass }] : [],
  );
  const surplus = surplusLines.reduce((sum, line) => sum + line.surplus, 0);
  const musts = mustHaves(input);
  const mass = massFigure(input);
  const answer: CompletenessOutput = {
    pieces: { found, expected, percent: percentFound(found, expected), surplus },
    mustHaves: musts,
    mass,
    shortLines,
    surplusLines,
    maySend: maySend(missing.length, surplus, musts, shortLines.length),
  };
  const working: WorkingStep[] = [
    {
      label: 'Pieces',
      expression: `Σ min(found, expected) ÷ Σ expected = ${found} ÷ ${expected}`,
      value: expected === 0 ? 'nothing expected' : percentWord(found / expected),
    },
    {
      label: 'Must-haves',
      expression: 'lines of class 1–2 at or above their minimum ÷ all such lines',
      value: `${musts.met} of ${musts.of}`,
    },
    {
      label: 'Mass found',
      expression: 'Σ found × mass of one + basket and container',
      value: completenessWords.mass(mass),
    },
  ];
  return missing.length === 0
    ? { outcome: 'answered', answer, working }
    : { outcome: 'notEstablished', missing, known: answer, working };
}

/** A percentage to one place, in whole tenths so that 100 is never reached by rounding; nothing expected is 100. */
export function percentFound(part: number, whole: number): number {
  if (whole === 0) return 100;
  const rounded = Math.round((part * 1000) / whole);
  return (part < whole ? Math.min(rounded, 999) : rounded) / 10;
}

function maySend(
  uncounted: number,
  surplus: number,
  musts: z.output<typeof mustHaveOutput>,
  short: number,
): CompletenessOutput['maySend'] {
  const stopped = musts.lines.filter(({ state }) => state === 'notMet');
  const carried = musts.lines.filter(({ state }) => state === 'metBySubstitute' || state === 'metByPouch');
  const because = completenessWords.maySend;
  if (uncounted > 0) return { who: 'nobodyYet', because: because.uncounted(uncounted) };
  if (surplus > 0) return { who: 'nobodyYet', because: because.surplus(surplus) };
  const classOne = stopped.filter(({ mustHaveClass }) => mustHaveClass === 1);
  if (classOne.length > 0)
    return { who: 'theatreLeadAndSurgeon', because: because.classOne(classOne.map(({ line }) => line)) };
  if (stopped.length > 0)
    return { who: 'supervisor', because: because.classTwo(stopped.map(({ line }) => line)) };
  if (carried.length > 0)
    return { who: 'supervisor', because: because.carried(carried.map(({ line }) => line)) };
  if (short > 0) return { who: 'technicianShort', because: because.short(short) };
  return { who: 'anyTechnician', because: because.whole };
}
