import { point, trace } from './path';
import type { FillClass, LineClass, Path, Shape, TextClass } from './scene';

/** The small vocabulary that all drawings are made of. Coordinates in micrometres. */

export function line(x1: number, y1: number, x2: number, y2: number, lineClass: LineClass): Shape {
  return { kind: 'line', from: point(x1, y1), to: point(x2, y2), line: lineClass, fill: null };
}

export function circle(
  x: number,
  y: number,
  radiusUm: number,
  lineClass: LineClass | null,
  fill: FillClass | null = null,
): Shape {
  return { kind: 'circle', centre: point(x, y), radiusUm, line: lineClass, fill };
}

export function box(
  xUm: number,
  yUm: number,
  widthUm: number,
  heightUm: number,
  radiusUm = 0,
  lineClass: LineClass | null = 'outline',
  fill: FillClass | null = 'material',
): Shape {
  return { kind: 'roundedRect', xUm, yUm, widthUm, heightUm, radiusUm, line: lineClass, fill };
}

export function drawn(path: Path, lineClass: LineClass | null, fill: FillClass | null = null): Shape {
  return { kind: 'path', ...path, line: lineClass, fill };
}

/** Straight lines through the points, `[x, y]` each. */
export function polyline(
  points: readonly (readonly [number, number])[],
  lineClass: LineClass | null,
  fill: FillClass | null = null,
  closed = false,
): Shape {
  const [first = [0, 0], ...rest] = points;
  const pen = trace(first[0] ?? 0, first[1] ?? 0);
  for (const [x, y] of rest) pen.to(x, y);
  return drawn(closed ? pen.close() : pen.open(), lineClass, fill);
}

/** Text whose middle line is at `y`. */
export function words(
  x: number,
  y: number,
  text: string,
  heightUm: number,
  textClass: TextClass = 'label',
  anchor: 'start' | 'middle' | 'end' = 'middle',
  upright = false,
): Shape {
  return { kind: 'text', at: point(x, y), text, heightUm, anchor, textClass, upright };
}

/** Room a text takes along its line: an average of the type, on the generous side. */
export function textWidthUm(text: string, heightUm: number): number {
  return Math.round(text.length * heightUm * 0.56);
}

/** A filled arrow head with its tip at `x`, `y`, pointing along `dx`, `dy`. */
export function arrowHead(
  x: number,
  y: number,
  dx: number,
  dy: number,
  sizeUm: number,
  fill: FillClass = 'ink',
): Shape {
  const length = Math.hypot(dx, dy) || 1;
  const ux = dx / length;
  const uy = dy / length;
  const backX = x - ux * sizeUm;
  const backY = y - uy * sizeUm;
  const half = sizeUm * 0.3;
  return polyline(
    [
      [x, y],
      [backX - uy * half, backY + ux * half],
      [backX + uy * half, backY - ux * half],
    ],
    null,
    fill,
    true,
  );
}

/** A cross of centre lines through a round thing, a little longer than it. */
export function centreCross(x: number, y: number, reachX: number, reachY = reachX): Shape[] {
  return [line(x - reachX, y, x + reachX, y, 'centre'), line(x, y - reachY, x, y + reachY, 'centre')];
}
