/**
 * Check digit of a GS1 key (GTIN, SSCC, GLN…): weights 3 and 1 from the right, to the next multiple of ten.
 *
 * `body` is the digits before the check digit. Source: GS1 General Specifications, modulo-10 check digit.
 */
export function gs1CheckDigit(body: string): number {
  let sum = 0;
  for (let at = body.length - 1, weight = 3; at >= 0; at -= 1, weight = 4 - weight) {
    sum += weight * (body.charCodeAt(at) - 48);
  }
  return (10 - (sum % 10)) % 10;
}

/** Whether the last digit of a GS1 key is the check digit of the others. */
export function hasValidCheckDigit(digits: string): boolean {
  return /^\d{2,}$/.test(digits) && gs1CheckDigit(digits.slice(0, -1)) === Number(digits.at(-1));
}

/** The 43 characters a HIBC code is written in; a character's place here is its value. Source: ANSI/HIBC 2. */
export const HIBC_ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%';

/**
 * Check character of a HIBC code: the sum of all characters' values, modulo 43. `null` where a character has no value.
 *
 * `body` is everything before the check character, the leading `+` included. Source: ANSI/HIBC 2.
 */
export function hibcCheckCharacter(body: string): string | null {
  let sum = 0;
  for (const character of body) {
    const value = HIBC_ALPHABET.indexOf(character);
    if (value < 0) return null;
    sum += value;
  }
  return HIBC_ALPHABET.charAt(sum % HIBC_ALPHABET.length);
}
