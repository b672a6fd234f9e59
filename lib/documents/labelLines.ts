import type { Measure, Weight } from './label';

/** Baseline to baseline, as a share of the type size (DejaVu). */
export const LEADING = 1.16;

/** A space at which no line ends. */
export const TIE = '\u00a0';

/** Lines of one size; `cut` where even the smallest size left something out. */
export interface Fitted {
  lines: string[];
  em: number;
  cut: boolean;
}

interface Asked {
  text: string;
  weight: Weight;
  /** Sizes of type to try, in dots, the largest first. */
  sizes: readonly number[];
  /** Width there is, in dots. */
  room: number;
}

/** Width of words in dots. */
export const widthOf = (measure: Measure, text: string, weight: Weight, em: number): number =>
  measure(text, weight) * em;

/** Facts one after the other. A line ends after a whole fact, so that no lot stands apart from its number. */
export const keptTogether = (facts: readonly string[]): string =>
  facts.map((fact) => fact.replaceAll(' ', TIE)).join(`${TIE}· `);

/** The largest size at which the words stand in so many lines; cut, and said so, where even the smallest is too large. */
export function fitLines(measure: Measure, asked: Asked & { most: number }): Fitted {
  const { text, weight, sizes, room, most } = asked;
  for (const em of sizes) {
    const lines = wrap(measure, text, weight, em, room);
    if (lines.length <= most && lines.every((line) => widthOf(measure, line, weight, em) <= room))
      return { lines: lines.map(withoutLastDot), em, cut: false };
  }
  // words kept together may part before anything is left out
  if (text.includes(TIE)) return fitLines(measure, { ...asked, text: text.replaceAll(TIE, ' ') });
  const em = smallest(sizes);
  const lines = wrap(measure, text, weight, em, room).slice(0, most);
  return { lines: [...lines.slice(0, -1), `${(lines.at(-1) ?? '').slice(0, -1)}…`], em, cut: true };
}

/** The largest size at which the words stand in one line. */
export function fitSize(
  measure: Measure,
  { text, weight, sizes, room }: Asked,
): { em: number; cut: boolean } {
  const em = sizes.find((one) => widthOf(measure, text, weight, one) <= room);
  return { em: em ?? smallest(sizes), cut: em === undefined };
}

/** Words in lines of that width; a number stays with its unit and with what it counts. */
export function wrap(measure: Measure, text: string, weight: Weight, em: number, room: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of tied(text)
    .split(' ')
    .filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || widthOf(measure, longer, weight, em) <= room) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** `2.0 × 16 mm` and `3 × Wire` as one word each. */
const tied = (text: string): string =>
  text.replaceAll(/(?<=\d) (?=(?:×|mm|kg|g)(?![\p{L}]))|(?<=\d.×) /gu, TIE);

/** The dot between two facts is not needed where the line ends. */
const withoutLastDot = (line: string): string => line.replace(/[ \u00a0]·$/, '');

const smallest = (sizes: readonly number[]): number => sizes[sizes.length - 1] ?? 16;
