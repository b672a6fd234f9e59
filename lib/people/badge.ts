/** Every badge of ours begins with this, so that a scanner's program knows one before it reads on. */
const BADGE_PREFIX = 'KWBADGE';

/** Crockford's alphabet: digits and capitals without I, L, O and U; 26 of them carry 130 random bits. */
const BADGE_ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const BADGE_LENGTH = 26;

/** A whole badge code, wherever it stands in what a scanner typed (a symbology identifier may come first). */
export const badgePattern = new RegExp(`${BADGE_PREFIX}[0-9A-HJKMNP-TV-Z]{${BADGE_LENGTH}}`, 'i');

/** Whether a scan is a badge or a piece of one: it is then neither shown, stored nor sent anywhere but to sign in. */
export function looksLikeBadge(text: string): boolean {
  return text.toUpperCase().includes(BADGE_PREFIX);
}

/** The code as it was issued, out of what was scanned; `null` where it is not a whole one. */
export function badgeCode(text: string): string | null {
  return badgePattern.exec(text)?.[0].toUpperCase() ?? null;
}

/** A new badge's code, from 26 random bytes. */
export function newBadgeCode(random: Uint8Array): string {
  if (random.length < BADGE_LENGTH) throw new Error('a badge needs 26 random bytes');
  return BADGE_PREFIX + [...random.slice(0, BADGE_LENGTH)].map((byte) => BADGE_ALPHABET[byte % 32]).join('');
}
