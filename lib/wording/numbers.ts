const SMALL = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** `2 → 'two'`, `0 → 'none'`; figures from eleven on. */
export function countWord(count: number): string {
  return SMALL[count] ?? String(count);
}

/** `['A', 'B', 'C'] → 'A, B and C'`; with `'or'`: `'16 or 18'`. */
export function listWords(words: readonly (string | number)[], join: 'and' | 'or' | 'or a' = 'and'): string {
  if (words.length <= 1) return String(words[0] ?? '');
  return `${words.slice(0, -1).join(', ')} ${join} ${words[words.length - 1]}`;
}

/** A share written as a percentage with a fixed number of places: `0.87535 → '87.5 %'`; never rounded up to 100. */
export function percentWord(share: number, places = 1): string {
  const text = (share * 100).toFixed(places);
  if (share < 1 && Number(text) >= 100) return `${(100 - 10 ** -places).toFixed(places)} %`;
  return `${text} %`;
}

/** A percentage already in tenths, as calculations give it: `96.6 → '96.6 %'`, `100 → '100 %'`. */
export function percentOf(percent: number): string {
  return `${percent === 100 ? '100' : percent.toFixed(1)} %`;
}

/** The first letter as a capital; the rest as it is. */
export function capitalised(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
