import { z } from 'zod';
import { relation } from '../fit/rule';
import { configurationId, itemId, setId } from '../identity/ids';
import { mustHaveClass } from '../sets/configuration';
import { factChange } from './facts';

/**
 * What a change would do, as it was shown to somebody: plain JSON, kept as it was. Only what would differ is listed;
 * `looked` says how much was looked at.
 */
const outcome = z.enum(['fits', 'doesNotFit', 'notEstablished']);
const tone = z.enum(['good', 'attention', 'stop', 'unknown']);
const standing = z.object({ tone, word: z.string() });

/** Pairs of the catalogue whose answer would change, designs no rule can tell apart taken as one. */
const pairsEffect = z.object({
  relation,
  asked: z.number().int(),
  otherwiseSaid: z.number().int(),
  counts: z.array(z.object({ before: outcome, after: outcome, pairs: z.number().int() })),
  groups: z.array(
    z.object({
      row: z.string(),
      column: z.string(),
      href: z.string(),
      before: outcome,
      after: outcome,
      pairs: z.number().int(),
    }),
  ),
  /** Groups beyond those listed. */
  more: z.number().int(),
});
export type PairsEffect = z.infer<typeof pairsEffect>;

/** A case, a saved start or a promised construct that would stand otherwise. */
const subjectChange = z.object({
  kind: z.enum(['case', 'start', 'promise']),
  label: z.string(),
  href: z.string().nullable(),
  before: standing,
  after: standing,
  turn: z.enum(['worse', 'better', 'otherwise']),
  changes: z.array(factChange),
});
export type SubjectChange = z.infer<typeof subjectChange>;

const pieces = z.object({ itemId, name: z.string(), pieces: z.number().int().positive() });

/** What a new version asks less of, said by itself: nobody takes a back-up out without having read that they do. */
export const versionWarning = z.object({
  kind: z.enum([
    'mustHaveRemoved',
    'backUpRemoved',
    'backUpFewer',
    'spareFewer',
    'classWeaker',
    'classStronger',
    'minimumLower',
    'substituteRemoved',
    'substituteAdded',
  ]),
  itemId,
  name: z.string(),
  before: z.string(),
  after: z.string(),
  mustHaveClass,
});
export type VersionWarning = z.infer<typeof versionWarning>;

const wholeMass = z.object({
  grams: z.number().int(),
  exact: z.boolean(),
  limits: z.array(
    z.object({
      limitGrams: z.number().int(),
      state: z.enum(['under', 'near', 'over', 'notEstablished']),
    }),
  ),
});
export type WholeMass = z.infer<typeof wholeMass>;

const versionEffect = z.object({
  configurationId,
  version: z.number().int(),
  /** `null` where none is in force yet. */
  replaces: z.number().int().nullable(),
  warnings: z.array(versionWarning),
  mass: z.object({ before: wholeMass.nullable(), after: wholeMass }),
  /** Each set that follows the configuration: what it would lack and have over by the new version, as counted now. */
  sets: z.array(
    z.object({
      setId,
      code: z.string(),
      follows: z.number().int(),
      lacks: z.array(pieces),
      over: z.array(pieces),
      notCounted: z.number().int(),
    }),
  ),
});
export type VersionEffect = z.infer<typeof versionEffect>;

export const trial = z.object({
  looked: z.object({
    cases: z.number().int(),
    /** Booked cases without a plan, about which nothing can be said. */
    unplanned: z.number().int(),
    starts: z.number().int(),
    promises: z.number().int(),
  }),
  pairs: pairsEffect.nullable(),
  version: versionEffect.nullable(),
  changed: z.array(subjectChange),
});
export type Trial = z.infer<typeof trial>;

export type SubjectKind = SubjectChange['kind'];
export type Standing = z.infer<typeof standing>;

const GRAVITY: Record<Standing['tone'], number> = { good: 0, attention: 1, unknown: 2, stop: 3 };

/** Which way a standing turns, by how it weighs alone. */
export function turnOf(before: Standing, after: Standing): SubjectChange['turn'] {
  const by = GRAVITY[after.tone] - GRAVITY[before.tone];
  return by > 0 ? 'worse' : by < 0 ? 'better' : 'otherwise';
}

/** What one trial says and another does not, of the same change tried twice: the store and the rules moved meanwhile. */
export interface TrialDifference {
  onlyBefore: SubjectChange[];
  onlyAfter: SubjectChange[];
  pairsDiffer: boolean;
  versionDiffers: boolean;
}

export function compareTrials(before: Trial, after: Trial): TrialDifference {
  const keyed = ({ changed }: Trial) => new Map(changed.map((one) => [JSON.stringify(one), one]));
  const [was, is] = [keyed(before), keyed(after)];
  return {
    onlyBefore: [...was].flatMap(([key, one]) => (is.has(key) ? [] : [one])),
    onlyAfter: [...is].flatMap(([key, one]) => (was.has(key) ? [] : [one])),
    pairsDiffer: JSON.stringify(before.pairs) !== JSON.stringify(after.pairs),
    versionDiffers: JSON.stringify(before.version) !== JSON.stringify(after.version),
  };
}

export const trialsAgree = ({ onlyBefore, onlyAfter, pairsDiffer, versionDiffers }: TrialDifference) =>
  onlyBefore.length + onlyAfter.length === 0 && !pairsDiffer && !versionDiffers;
