import type { Answer } from '../command';

/** More of one kind nobody reads in a terminal; `--json` has them. */
const MOST = 200;

interface TriedLine {
  row: number | null;
  column: string | null;
  value: string | null;
  sentence: string;
}

/** A problem at its cell: “Row 3, “Length” (“2x”): Is no number.” */
export function problemLine({ row, column, value, sentence }: TriedLine): string {
  const at = [...(row === null ? [] : [`row ${row}`]), ...(column === null ? [] : [`“${column}”`])].join(
    ', ',
  );
  const where = at === '' ? '' : `${at.charAt(0).toUpperCase()}${at.slice(1)}`;
  const said = value === null ? where : `${where} (“${value}”)`.trim();
  return said === '' ? `✗ ${sentence}` : `✗ ${said}: ${sentence}`;
}

interface FileColumns {
  columns: readonly { number: number; heading: string | null }[];
  sheets: readonly string[];
}

/** How to say by options which sheet, and which column of the file, says what nothing says yet; the names are those of ours. */
export function openColumnLines(lacking: readonly string[], { columns, sheets }: FileColumns): string[] {
  return [
    ...(sheets.length > 1 ? ['Another sheet is read by --sheet NAME.'] : []),
    ...(lacking.length === 0
      ? []
      : [
          `Columns of the file: ${columns.map(({ number, heading }) => `${number} ${heading === null ? '(no heading)' : `“${heading}”`}`).join(', ')}.`,
          `Which of them says it: ${lacking.map((name) => `--column ${name}=NUMBER`).join(' ')}.`,
        ]),
  ];
}

/** As many as a person reads, and how many there are beyond. */
export function firstOf(lines: readonly string[], beyond = 0): string[] {
  const more = Math.max(0, lines.length - MOST) + beyond;
  return more === 0 ? [...lines] : [...lines.slice(0, MOST), `… and ${more} more`];
}

/** How a try ends that wrote nothing: it may be brought in, or stands in its own way, or would do nothing. */
export type TryEnd = 'ready' | 'stopped' | 'nothingToDo' | 'allLeftOut';

const END_WORDS: Record<TryEnd, string> = {
  ready: 'Nothing is written yet. The same words with --yes bring it in.',
  stopped: 'Nothing is written: put right what is marked ✗, answer what is marked ?.',
  nothingToDo: 'All of it is here already: there is nothing to bring in.',
  allLeftOut: 'Every row is left out by its own word: there is nothing to bring in.',
};

export function onlyTried(lines: readonly string[], json: object, end: TryEnd): Answer {
  return {
    exit: end === 'stopped' ? 1 : 0,
    lines: [...lines, END_WORDS[end]],
    json: { ...json, ready: end === 'ready' },
  };
}
