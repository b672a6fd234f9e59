import { writeMm } from '../../quantities/length';
import { arrowHead, line, textWidthUm, words } from './marks';
import type { Shape } from './scene';

/** Dimension lines and the scale bar. Values are in millimetres, written on the line; unknown is written as not stated. */

/** `16 mm` with its name in front where given; `null` says so. */
export function dimensionText(um: number | null, name = ''): string {
  const value = um === null ? 'not stated' : `${writeMm(um)} mm`;
  return name === '' ? value : `${name} ${value}`;
}

interface Measured {
  /** The value, or `null` when the drawing only stands in for it. */
  um: number | null;
  name?: string;
  textUm: number;
}

/** A dimension along x from `x1` to `x2`, drawn at `y`; extension lines come from `fromY`. */
export function dimensionAcross(
  x1: number,
  x2: number,
  y: number,
  fromY: number,
  { um, name, textUm }: Measured,
): Shape[] {
  const text = dimensionText(um, name);
  const gap = Math.sign(y - fromY) * textUm * 0.3;
  const tick = Math.sign(y - fromY) * textUm * 0.4;
  const fits = textWidthUm(text, textUm) < Math.abs(x2 - x1) - textUm * 2;
  const side = y < fromY ? -0.75 : 0.8;
  return [
    line(x1, fromY + gap, x1, y + tick, 'dimension'),
    line(x2, fromY + gap, x2, y + tick, 'dimension'),
    ...arrowed(x1, y, x2, y, textUm),
    words(
      (x1 + x2) / 2,
      y + textUm * (fits ? -0.7 : side),
      text,
      textUm,
      um === null ? 'notStated' : 'dimension',
    ),
  ];
}

/** A dimension along y from `y1` to `y2`, drawn at `x`; extension lines come from `fromX`; text beside it, level. */
export function dimensionUpright(
  y1: number,
  y2: number,
  x: number,
  fromX: number,
  { um, name, textUm }: Measured,
): Shape[] {
  const away = Math.sign(x - fromX) || 1;
  const gap = away * textUm * 0.3;
  const tick = away * textUm * 0.4;
  return [
    line(fromX + gap, y1, x + tick, y1, 'dimension'),
    line(fromX + gap, y2, x + tick, y2, 'dimension'),
    ...arrowed(x, y1, x, y2, textUm),
    words(
      x + away * textUm * 0.7,
      (y1 + y2) / 2,
      dimensionText(um, name),
      textUm,
      um === null ? 'notStated' : 'dimension',
      away > 0 ? 'start' : 'end',
    ),
  ];
}

/** The line with arrow heads inside, or outside where there is no room. */
function arrowed(x1: number, y1: number, x2: number, y2: number, textUm: number): Shape[] {
  const size = textUm * 0.6;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const dx = (x2 - x1) / length;
  const dy = (y2 - y1) / length;
  if (length > size * 2.6) {
    return [
      line(x1, y1, x2, y2, 'dimension'),
      arrowHead(x1, y1, -dx, -dy, size),
      arrowHead(x2, y2, dx, dy, size),
    ];
  }
  const tail = size * 2;
  return [
    line(x1 - dx * tail, y1 - dy * tail, x2 + dx * tail, y2 + dy * tail, 'dimension'),
    arrowHead(x1, y1, dx, dy, size),
    arrowHead(x2, y2, -dx, -dy, size),
  ];
}

const BAR_LENGTHS_UM = [1_000, 2_000, 5_000, 10_000, 20_000, 50_000, 100_000];

/** A scale bar of a round length, about a fifth of `roomUm`, its left end at `x`. */
export function scaleBar(x: number, y: number, roomUm: number, textUm: number): Shape[] {
  const length = BAR_LENGTHS_UM.filter((um) => um <= Math.max(roomUm / 4, 1_000)).at(-1) ?? 1_000;
  const tick = textUm * 0.35;
  return [
    line(x, y, x + length, y, 'fine'),
    ...[0, 0.5, 1].map((part) => line(x + length * part, y - tick, x + length * part, y, 'fine')),
    words(x + length + textUm * 0.5, y - tick * 0.4, `${writeMm(length)} mm`, textUm, 'dimension', 'start'),
  ];
}
