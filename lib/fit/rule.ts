import { z } from 'zod';
import { exceptionId, itemId, personId, ruleId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';

export const relation = z.enum([
  'seats',
  'guides',
  'passes',
  'pilots',
  'glides',
  'taps',
  'countersinks',
  'measures',
  'turns',
  'joins',
  'limits',
  'wearsWith',
  'sides',
]);
export type Relation = z.infer<typeof relation>;

export const severity = z.enum(['stops', 'caution', 'note']);
export type Severity = z.infer<typeof severity>;

/**
 * A value in a condition: a fact of a participant (`screw.threadUm`, `hole.holeClass`, see facts.ts),
 * a constant, a local setting, or a difference or sum of values in the same unit.
 */
export type Term =
  | { fact: string }
  | { value: string | number | boolean }
  | { setting: string }
  | { plus: [Term, Term] }
  | { minus: [Term, Term] };

export const term: z.ZodType<Term> = z.lazy(() =>
  z.union([
    z.strictObject({ fact: z.string().regex(/^[a-z][A-Za-z]*\.[a-z][A-Za-z]*$/, 'participant.fact') }),
    z.strictObject({ value: z.union([z.string(), z.number(), z.boolean()]) }),
    z.strictObject({ setting: z.string() }),
    z.strictObject({ plus: z.tuple([term, term]) }),
    z.strictObject({ minus: z.tuple([term, term]) }),
  ]),
);

/** A condition answers true, false or unknown; unknown names the facts that are missing. */
export type Condition =
  | { all: Condition[] }
  | { any: Condition[] }
  | { not: Condition }
  | { equal: [Term, Term] }
  | { below: [Term, Term] }
  | { atMost: [Term, Term] }
  /** The term's value is one of the constants. */
  | { oneOf: [Term, (string | number)[]] }
  /** The first term is a list that contains the second. */
  | { lists: [Term, Term] }
  /** The participant takes part at all (`'plate'`, `'use'`). */
  | { takesPart: string };

export const condition: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    z.strictObject({ all: z.array(condition).max(30) }),
    z.strictObject({ any: z.array(condition).max(30) }),
    z.strictObject({ not: condition }),
    z.strictObject({ equal: z.tuple([term, term]) }),
    z.strictObject({ below: z.tuple([term, term]) }),
    z.strictObject({ atMost: z.tuple([term, term]) }),
    z.strictObject({ oneOf: z.tuple([term, z.array(z.union([z.string(), z.number()])).min(1)]) }),
    z.strictObject({ lists: z.tuple([term, term]) }),
    z.strictObject({ takesPart: z.string() }),
  ]),
);

/** Where a rule or a value comes from. */
export const source = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('standard'),
    number: z.string().min(1).max(60),
    clause: z.string().max(80).nullable(),
  }),
  z.object({ kind: z.literal('instructionsForUse'), maker: z.string().min(1), document: z.string().min(1) }),
  z.object({ kind: z.literal('localPolicy'), owner: z.string().min(1), date: plainDate }),
  z.object({ kind: z.literal('commonPractice') }),
]);
export type Source = z.infer<typeof source>;

/**
 * How a rule or an exception comes into force and leaves it: drafted by one person, approved by another, in
 * force from a date; replaced by its next version or withdrawn, again by two people, from a date. What is in
 * force never changes. The rules the program starts with were drafted by nobody (`null`).
 */
const lifecycle = {
  status: z.enum(['draft', 'inForce', 'withdrawn']),
  draftedBy: personId.nullable(),
  approvedBy: personId.nullable(),
  inForceFrom: plainDate.nullable(),
  /** The first day on which it no longer holds; `null` while there is none. */
  inForceUntil: plainDate.nullable(),
  /** Who asked for it to be withdrawn; another person has to agree. */
  withdrawalAskedBy: personId.nullable(),
  withdrawnBy: personId.nullable(),
};

export const fitRule = z.object({
  id: ruleId,
  /** Short stable code shown to people and quoted by tests, e.g. `pilot-between-core-and-thread`. */
  code: z.string().regex(/^[a-z][a-z0-9-]{2,60}$/, 'small letters, digits and hyphens'),
  relation,
  /** Which questions of the relation it governs; unknown here leaves the rule missing, unless what it requires holds. */
  appliesWhen: condition,
  requires: condition,
  severity,
  /** The sentence shown when it is not met; `{participant.fact}` is replaced by the value. */
  sentence: z.string().trim().min(8, 'a sentence people can act on').max(300),
  source,
  ...lifecycle,
  version: z.number().int().positive(),
});
export type FitRule = z.infer<typeof fitRule>;

/** A named exception for a pair of designs; it outranks the general rules of its relation and says so. */
export const fitException = z.object({
  id: exceptionId,
  relation,
  firstItemId: itemId,
  secondItemId: itemId,
  answer: z.enum(['allow', 'deny']),
  sentence: z.string().trim().min(8).max(300),
  source,
  ...lifecycle,
  version: z.number().int().positive(),
});
export type FitException = z.infer<typeof fitException>;

/** Local settings that rules may refer to by name; their bounds are in `lib/settings/local.ts`. */
export interface FitSettings {
  /** How much wider than the bit a sleeve's bore may be; default 200 µm. */
  sleeveToleranceUm: number;
}
export const DEFAULT_FIT_SETTINGS: FitSettings = { sleeveToleranceUm: 200 };
