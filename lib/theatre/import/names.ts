import type { Construct } from '../../plans/plan';
import { LIMB_WORDS, REGION_WORDS } from '../../wording/plans';
import { caseRegion } from '../surgicalCase';
import { headingKey } from './fields';

export interface Named {
  id: string;
  name: string;
}

/** `Mr  tobias WRAY` and `Tobias Wray` are one name; a title is no part of it. */
export const nameKey = (name: string): string =>
  headingKey(name.replace(/^\s*(?:mr|mrs|ms|miss|mx|dr|prof|professor)\.?\s+/i, ''));

type Region = Construct['region'];
const REGIONS = caseRegion.options;
const REGION_OF = new Map<string, Region>(
  REGIONS.flatMap((region) => [
    [headingKey(REGION_WORDS[region]), region],
    [headingKey(region), region],
  ]),
);

/** The region a cell names in our words, however they are spaced. */
export const regionOf = (text: string): Region | null => REGION_OF.get(headingKey(text)) ?? null;

const SIDES = new Map<string, 'left' | 'right' | 'both'>([
  ['l', 'left'],
  ['left', 'left'],
  ['r', 'right'],
  ['right', 'right'],
  ['both', 'both'],
  ['bilateral', 'both'],
  ['leftandright', 'both'],
  ['rightandleft', 'both'],
  ['lr', 'both'],
]);

export const sideOf = (text: string): 'left' | 'right' | 'both' | null => SIDES.get(headingKey(text)) ?? null;

/** Words of a text, apart from its signs. */
const wordsOf = (text: string) =>
  ` ${text
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim()} `;

/**
 * The region that a longer text speaks of, such as “Structure of left distal radius”; `null` where it names none of ours,
 * or more than one.
 */
export function regionWithin(text: string): Region | null {
  const words = wordsOf(text);
  const found = REGIONS.filter((region) => words.includes(` ${REGION_WORDS[region].toLowerCase()} `));
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** The side that a longer text speaks of. */
export function sideWithin(text: string): 'left' | 'right' | 'both' | null {
  const words = wordsOf(text);
  const [left, right] = [words.includes(' left '), words.includes(' right ')];
  if (words.includes(' bilateral ') || (left && right)) return 'both';
  return left ? 'left' : right ? 'right' : null;
}

export const sideWord = (side: 'left' | 'right' | 'both'): string =>
  side === 'both' ? 'Both' : LIMB_WORDS[side];
