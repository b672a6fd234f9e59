/**
 * What Windows-1252 has at 0x80 to 0x9F, where it differs from Latin-1; a space where it has no letter. Source: WHATWG
 * Encoding, index windows-1252. (The engine's own decoder of that name reads these as controls.)
 */
const HIGH = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ';
const FIRST = 0x80;

/** The text of bytes in Windows-1252; `null` where one of them is no letter of it. */
export function decodeWindows1252(bytes: Uint8Array): string | null {
  let text = '';
  for (const byte of bytes) {
    const letter =
      byte >= FIRST && byte < FIRST + HIGH.length ? HIGH[byte - FIRST] : String.fromCharCode(byte);
    if (letter === undefined || (byte >= FIRST && letter === ' ')) return null;
    text += letter;
  }
  return text;
}

/** The byte that Windows-1252 writes a letter with; `null` where it has none. */
export function byteOfWindows1252(letter: string): number | null {
  const high = letter === ' ' ? -1 : HIGH.indexOf(letter);
  if (high >= 0) return FIRST + high;
  const code = letter.codePointAt(0) ?? 0;
  return code < FIRST || (code >= FIRST + HIGH.length && code <= 0xff) ? code : null;
}
