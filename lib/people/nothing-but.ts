/** What stands for a letter between letters, as people write them: passw0rd, l@rkmoor. */
const STANDS_FOR: Readonly<Record<string, string>> = {
  '0': 'o',
  '1': 'i',
  '3': 'e',
  '4': 'a',
  '5': 's',
  '7': 't',
  '@': 'a',
  $: 's',
  '!': 'i',
};

const lettersOf = (text: string): string => text.replaceAll(/[^\p{L}]/gu, '');

const withLetters = (plain: string): string =>
  plain.replaceAll(/(?<=\p{L})[013457@$!]+(?=\p{L})/gu, (signs) =>
    [...signs].map((sign) => STANDS_FOR[sign] ?? sign).join(''),
  );

/** A text in lower case, as it is and with figures read as the letters they stand for. */
const readings = (plain: string): string[] => [...new Set([plain, withLetters(plain)])];

/**
 * Whether there is nothing in a text but these words, in any order and however often, with figures and marks before, after
 * and between. Words and text are in lower case.
 */
export function isNothingBut(plain: string, words: Iterable<string>): boolean {
  const known = [...new Set([...words].map(lettersOf))].filter((word) => word.length > 1);
  return readings(plain).some((reading) => {
    const letters = lettersOf(reading);
    if (letters === '') return false;
    const reached = new Set([0]);
    for (let at = 0; at < letters.length; at += 1) {
      if (!reached.has(at)) continue;
      for (const word of known) if (letters.startsWith(word, at)) reached.add(at + word.length);
    }
    return reached.has(letters.length);
  });
}

/** Shorter ones in a list say nothing: what is beside them is the password. */
const SHORTEST = 3;
const LONGEST = 64;

/**
 * Whether a text is one of the listed, or one of them once or again and again with figures and marks before, after and
 * between. Of several different ones it is not said: unrelated words together are what makes a good password.
 */
export function isOneOf(plain: string, listed: (text: string) => boolean): boolean {
  return readings(plain).some(
    (reading) =>
      listed(reading) ||
      isRepeatedOne(lettersOf(reading), listed) ||
      isRepeatedOne(reading.replaceAll(/[^\p{L}\p{N}]/gu, ''), listed),
  );
}

function isRepeatedOne(text: string, listed: (text: string) => boolean): boolean {
  const firstLetter = text.search(/\p{L}/u);
  if (periodsOf(text).some(listed)) return true;
  for (let from = 0; from <= firstLetter; from += 1) {
    for (let end = from + SHORTEST; end <= Math.min(text.length, from + LONGEST); end += 1) {
      const one = text.slice(from, end);
      if (listed(one) && /\p{L}/u.test(one) && !/\p{L}/u.test(text.replaceAll(one, ''))) return true;
    }
  }
  return false;
}

/** What a text may be repeating, the last time perhaps cut short, and itself. */
function periodsOf(text: string): string[] {
  const parts: string[] = [];
  for (let length = SHORTEST; length <= text.length; length += 1)
    if (text.startsWith(text.slice(length))) parts.push(text.slice(0, length));
  return parts;
}
