import { randomInt } from 'node:crypto';

/** The hospital's letters in its case references. */
export const HOSPITAL_LETTERS = process.env.KITWRIGHT_LETTERS ?? 'LM';

/** Four numbers for the tail of a new reference, drawn so that nobody can foresee them. */
export const drawReference = (): number[] => Array.from({ length: 4 }, () => randomInt(32));
