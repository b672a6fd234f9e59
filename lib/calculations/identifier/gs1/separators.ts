/** The group separator, which stands for FNC1 between elements. */
export const GS = '\u001d';

/** A text whose separators are one character each, and where each of its characters stood in the text as given. */
export interface Plain {
  text: string;
  /** Places from 1; one more than the text is long: the last is the end. */
  at: number[];
}

// 0x1D as it is sent, as a keyboard sends it (Ctrl+], ^]), as logs and people write it. None of these can be part of a
// value: brackets, braces and ^ are outside the 82 characters of GS1 element strings.
// biome-ignore lint/suspicious/noControlCharactersInRegex: it is this control character that is looked for
const SEPARATOR = /\u001d|\u241d|\{GS\}|\{FNC1\}|\[GS\]|\[FNC1\]|Ctrl\+\]|\^\]/gi;

/** Puts one GS for every way a separator is written, and keeps the places. */
export function plainSeparators(text: string, firstPosition: number): Plain {
  let plain = '';
  const at: number[] = [];
  let from = 0;
  const take = (until: number) => {
    for (let place = from; place < until; place += 1) at.push(firstPosition + place);
    plain += text.slice(from, until);
  };
  for (const { index, 0: written } of text.matchAll(SEPARATOR)) {
    take(index);
    at.push(firstPosition + index);
    plain += GS;
    from = index + written.length;
  }
  take(text.length);
  at.push(firstPosition + text.length);
  return { text: plain, at };
}
