import type { Drive } from '../../catalogue/item';
import { never } from '../../identity/result';
import { circle, drawn, polyline, words } from './marks';
import { trace } from './path';
import type { FillClass, LineClass, Shape } from './scene';

/**
 * Width across the points of a hexalobular drive by its number, micrometres.
 * Source: ISO 10664, nominal dimension A; from memory, to be confirmed by a person before it decides anything.
 * Only ever drawn: whether a driver turns a screw is asked of the numbers.
 */
const HEXALOBULAR_UM: Record<number, number> = {
  4: 1_350,
  5: 1_450,
  6: 1_750,
  7: 2_050,
  8: 2_400,
  9: 2_600,
  10: 2_800,
  15: 3_350,
  20: 3_950,
  25: 4_500,
  27: 5_070,
  30: 5_600,
  40: 6_750,
};

/** Width of the drive across its widest, or `null` for a number that is not in the table. */
export function driveWidthUm(drive: Drive): number | null {
  switch (drive.form) {
    case 'hexagonSocket':
      return Math.round(drive.acrossFlatsUm * 1.1547);
    case 'hexalobular':
      return HEXALOBULAR_UM[drive.number] ?? null;
    default:
      return drive.sizeUm;
  }
}

/** A drive seen end on, its middle at `x`, `y`; a broken ring with a question where nobody has stated it. */
export function driveMark(
  drive: Drive | null,
  x: number,
  y: number,
  headUm: number,
  line: LineClass = 'outline',
  fill: FillClass = 'void',
): Shape[] {
  const width = drive === null ? null : Math.min(driveWidthUm(drive) ?? headUm * 0.5, headUm * 0.92);
  if (drive === null || width === null) {
    return [circle(x, y, headUm * 0.22, 'notStated'), words(x, y, '?', headUm * 0.26, 'notStated')];
  }
  const half = width / 2;
  switch (drive.form) {
    case 'hexagonSocket':
      return [
        polyline(
          around(6, 0, (angle) => at(x, y, half, angle)),
          line,
          fill,
          true,
        ),
      ];
    case 'square':
      return [
        polyline(
          around(4, 45, (angle) => at(x, y, half * Math.SQRT2, angle)),
          line,
          fill,
          true,
        ),
      ];
    case 'singleSlot':
      return [slot(x, y, half, headUm, line, fill, false)];
    case 'crossSlot':
      return [cross(x, y, half, Math.max(half * 0.28, headUm * 0.06), line, fill)];
    case 'hexalobular':
      return [lobes(x, y, half, line, fill)];
    default:
      return never(drive);
  }
}

function at(x: number, y: number, radius: number, degrees: number): [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

function around<T>(count: number, from: number, make: (degrees: number) => T): T[] {
  return Array.from({ length: count }, (_, index) => make(from + (360 / count) * index));
}

function slot(
  x: number,
  y: number,
  half: number,
  headUm: number,
  line: LineClass,
  fill: FillClass,
  upright: boolean,
): Shape {
  const thick = headUm * 0.07;
  const [w, h] = upright ? [thick, half] : [half, thick];
  return polyline(
    [
      [x - w, y - h],
      [x + w, y - h],
      [x + w, y + h],
      [x - w, y + h],
    ],
    line,
    fill,
    true,
  );
}

function cross(x: number, y: number, half: number, thick: number, line: LineClass, fill: FillClass): Shape {
  const t = thick / 2;
  const corners = [
    [-t, -half],
    [t, -half],
    [t, -t],
    [half, -t],
    [half, t],
    [t, t],
    [t, half],
    [-t, half],
    [-t, t],
    [-half, t],
    [-half, -t],
    [-t, -t],
  ];
  return polyline(
    corners.map(([dx = 0, dy = 0]) => [x + dx, y + dy] as const),
    line,
    fill,
    true,
  );
}

/** Six lobes: outward arcs at the points, inward arcs between them. */
function lobes(x: number, y: number, half: number, line: LineClass, fill: FillClass): Shape {
  const outer = half * 0.92;
  const start = at(x, y, outer, -12);
  const pen = trace(start[0], start[1]);
  for (const degrees of around(6, 0, (angle) => angle)) {
    const tip = at(x, y, outer, degrees + 12);
    const next = at(x, y, outer, degrees + 48);
    pen.arc(tip[0], tip[1], half * 0.22, true).arc(next[0], next[1], half * 0.4, false);
  }
  return drawn(pen.close(), line, fill);
}
