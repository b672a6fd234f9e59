import { gs1CheckDigit } from '@/lib/calculations/identifier/checkDigits';

/**
 * A GTIN-14 under the GS1 prefix 952, which GS1 keeps for examples: a zero, 952, nine digits taken from the item's
 * code (so that it never changes when other items come and go), and the modulo 10 check digit of the GS1 General
 * Specifications.
 */
export function demoGtin(code: string): string {
  let mixed = 2166136261;
  for (const letter of code) mixed = Math.imul(mixed ^ letter.charCodeAt(0), 16777619) >>> 0;
  const body = `0952${String(mixed % 1_000_000_000).padStart(9, '0')}`;
  return `${body}${gs1CheckDigit(body)}`;
}
