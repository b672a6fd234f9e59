/** Digits typed for the line in hand that are not a figure yet. */
export interface Typed {
  digits: string;
  /** The person asked for another digit, whatever the line usually holds. */
  wide: boolean;
}

export const NOTHING_TYPED: Typed = { digits: '', wide: false };

const MOST_DIGITS = 3;

/**
 * One digit more. A line that holds fewer than ten pieces is counted with one key; where it holds ten or more, the figure
 * is whole with its second digit. Nothing is a figure before the person has typed it.
 */
export function typeDigit(
  typed: Typed,
  digit: string,
  expected: number,
): { typed: Typed; figure: number | null } {
  const digits = `${typed.digits}${digit}`;
  const width = Math.min(MOST_DIGITS, Math.max(String(expected).length, typed.wide ? 2 : 1));
  return digits.length >= width
    ? { typed: NOTHING_TYPED, figure: Number(digits) }
    : { typed: { ...typed, digits }, figure: null };
}

/** The figure typed so far, if any: Enter or leaving the line takes it as it is. */
export function typedFigure({ digits }: Typed): number | null {
  return digits === '' ? null : Number(digits);
}

/**
 * The line to go on with after one was counted: the next that is not counted yet, in the order of the layer, round to
 * its beginning; the same line where all are.
 */
export function nextLine(
  order: readonly string[],
  from: string,
  isCounted: (lineId: string) => boolean,
): string {
  const at = order.indexOf(from);
  const round = [...order.slice(at + 1), ...order.slice(0, Math.max(0, at))];
  return round.find((lineId) => !isCounted(lineId)) ?? from;
}

export type Direction = 'left' | 'right' | 'up' | 'down';

/**
 * The line beside another on the map, by rows of cells; `null` where there is none. Up and down keep to the column as
 * far as the next row has one.
 */
export function neighbour(
  rows: readonly (readonly (string | null)[])[],
  from: string,
  direction: Direction,
): string | null {
  const row = rows.findIndex((cells) => cells.includes(from));
  const column = rows[row]?.indexOf(from) ?? -1;
  if (row < 0) return null;
  if (direction === 'left' || direction === 'right') {
    const flat = rows.flat().filter((cell) => cell !== null);
    return flat[flat.indexOf(from) + (direction === 'left' ? -1 : 1)] ?? null;
  }
  const step = direction === 'up' ? -1 : 1;
  for (let at = row + step; at >= 0 && at < rows.length; at += step) {
    const cells = rows[at] ?? [];
    const near = cells
      .map((cell, index) => ({ cell, far: Math.abs(index - column) }))
      .filter(({ cell }) => cell !== null)
      .sort((a, b) => a.far - b.far)[0];
    if (near?.cell) return near.cell;
  }
  return null;
}
