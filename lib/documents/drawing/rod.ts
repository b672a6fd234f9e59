import type { Coupling } from '../../catalogue/item';
import { never } from '../../identity/result';
import { box, drawn, line, polyline } from './marks';
import { trace } from './path';
import type { LineClass, Shape } from './scene';

/** Parts of long instruments, lying along x: shanks, couplings, and the break that shortens what would not fit a page. */

/** Longest a rod is drawn, in multiples of its diameter, before its middle is left out. */
const LONGEST = 17;

export interface Shown {
  /** Length on the page. */
  lengthUm: number;
  interrupted: boolean;
}

/** How long a rod of this size is shown. Tips and couplings stay to scale; only plain middle is left out. */
export function shownLength(lengthUm: number, diameterUm: number, longest = LONGEST): Shown {
  const limit = diameterUm * longest;
  return lengthUm > limit ? { lengthUm: limit, interrupted: true } : { lengthUm, interrupted: false };
}

/** Two break lines across a rod at `x`, with nothing between them. */
export function breakLines(x: number, diameterUm: number): Shape[] {
  const half = diameterUm / 2;
  const gap = diameterUm * 0.22;
  const over = half * 1.12;
  const edge = (at: number) =>
    trace(at, -over)
      .curve(at + gap, -half * 0.3, at - gap, half * 0.3, at, over)
      .open();
  const hollow = trace(x - gap, -over)
    .curve(x, -half * 0.3, x - 2 * gap, half * 0.3, x - gap, over)
    .to(x + gap, over)
    .curve(x, half * 0.3, x + 2 * gap, -half * 0.3, x + gap, -over)
    .close();
  return [drawn(hollow, null, 'void'), drawn(edge(x - gap), 'fine'), drawn(edge(x + gap), 'fine')];
}

/** How long a coupling is drawn: twice its size, which no standard states. */
export function couplingLength(coupling: Coupling | null, diameterUm: number): number {
  return (coupling?.sizeUm ?? diameterUm) * 2;
}

/** A shank's end, from `x` leftwards; dashed where nobody has stated it. */
export function shankEnd(coupling: Coupling | null, x: number, diameterUm: number): Shape[] {
  const length = couplingLength(coupling, diameterUm);
  const size = coupling?.sizeUm ?? diameterUm;
  const half = size / 2;
  const left = x - length;
  if (coupling === null) return [box(left, -half, length, size, half * 0.2, 'notStated', 'material')];
  const block = box(left, -half, length, size, half * 0.2);
  switch (coupling.form) {
    case 'hexShank':
      return [
        block,
        line(left, -half * 0.5, x, -half * 0.5, 'fine'),
        line(left, half * 0.5, x, half * 0.5, 'fine'),
      ];
    case 'flattedShank':
      return [
        block,
        polyline(
          [
            [left, -half * 0.4],
            [left + length * 0.6, -half * 0.4],
            [left + length * 0.6, -half],
          ],
          'fine',
        ),
      ];
    case 'grooveShank':
      return [
        block,
        box(left + length * 0.35, -half * 0.78, length * 0.16, half * 1.56, 0, 'fine', 'void'),
        line(left + length * 0.35, -half, left + length * 0.35, half, 'fine'),
        line(left + length * 0.51, -half, left + length * 0.51, half, 'fine'),
      ];
    case 'roundShank':
    case 'wire':
      return [block];
    default:
      return never(coupling.form);
  }
}

/** A handle from `x` leftwards: a grip with flutes. */
export function grip(x: number, lengthUm: number, widthUm: number, edge: LineClass = 'outline'): Shape[] {
  const half = widthUm / 2;
  const left = x - lengthUm;
  const body = trace(x, -half * 0.55)
    .curve(x - lengthUm * 0.12, -half * 0.55, x - lengthUm * 0.14, -half, x - lengthUm * 0.3, -half)
    .to(left + half * 0.5, -half)
    .arc(left + half * 0.5, half, half, false)
    .to(x - lengthUm * 0.3, half)
    .curve(x - lengthUm * 0.14, half, x - lengthUm * 0.12, half * 0.55, x, half * 0.55)
    .close();
  const flutes = [-0.5, 0, 0.5].map((part) =>
    line(left + lengthUm * 0.14, half * part, x - lengthUm * 0.3, half * part, 'fine'),
  );
  return [drawn(body, edge, 'material'), ...flutes];
}
