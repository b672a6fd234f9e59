import { z } from 'zod';

/**
 * The number of a pack as its label carries it: `P`, seven digits or more, a hyphen and a check digit
 * (ISO/IEC 7064, MOD 11,10), e.g. `P0001234-4`. One wrong digit, or two swapped neighbours but one case in ten, is caught.
 */
export function packNumberOf(sequence: number): string {
  return numbered('P', sequence);
}

/** The number of a printed count sheet, of the same form: `S0000012-9`. */
export function sheetNumberOf(sequence: number): string {
  return numbered('S', sequence);
}

/** What a label's symbol says: the pack, and which copy of its label this is; `P0001234-4*2`. */
export function labelText(number: string, copy: number): string {
  return `${number}*${copy}`;
}

/** The place of a number in its sequence: what goes on from there. */
export function sequenceOf(number: string): number {
  return Number(number.slice(1, -2));
}

function numbered(prefix: 'P' | 'S', sequence: number): string {
  const digits = String(sequence).padStart(7, '0');
  return `${prefix}${digits}-${checkDigit(digits)}`;
}

export const packNumber = z
  .string()
  .regex(/^P\d{7,12}-\d$/, 'a pack number: P, digits, a hyphen and a check digit')
  .refine((text) => checkDigit(text.slice(1, -2)) === text.slice(-1), 'the check digit does not match')
  .brand<'packNumber'>();
export type PackNumber = z.infer<typeof packNumber>;

/** ISO/IEC 7064 MOD 11,10 hybrid system. */
function checkDigit(digits: string): string {
  let product = 10;
  for (const digit of digits) {
    const sum = (product + Number(digit)) % 10 || 10;
    product = (sum * 2) % 11;
  }
  return String((11 - product) % 10);
}
