import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pathOperators } from '@/app/_pdf/pathOperators';
import type { Path } from '@/lib/documents/drawing/scene';

/** The points on the way of path operators (ISO 32000-1, 8.5.2), curves at 20 steps each, in micrometres at scale 1. */
function walk(operators: string): [number, number][] {
  const points: [number, number][] = [];
  const held: number[] = [];
  let at: [number, number] = [0, 0];
  for (const token of operators.trim().split(' ')) {
    if (/^-?[\d.]+$/.test(token)) {
      held.push(Number(token));
      continue;
    }
    const values = held.splice(0) as [number, number, number, number, number, number];
    if (token === 'm' || token === 'l') at = [values[0], values[1]];
    if (token === 'c') {
      const [x1, y1, x2, y2, x, y] = values;
      const [x0, y0] = at;
      for (let step = 1; step <= 20; step += 1) {
        const t = step / 20;
        const u = 1 - t;
        const mix = (a: number, b: number, c: number, d: number) =>
          u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
        points.push([mix(x0, x1, x2, x), mix(y0, y1, y2, y)]);
      }
      at = [x, y];
    }
    points.push(at);
  }
  return points;
}

test('an arc stays at its radius from a centre that lies equally far from both its ends, whatever way it turns', () => {
  const angle = fc.integer({ min: 0, max: 359 });
  fc.assert(
    fc.property(
      angle,
      fc.integer({ min: 1, max: 359 }),
      fc.integer({ min: 500, max: 80_000 }),
      fc.boolean(),
      (from, turn, radiusUm, clockwise) => {
        // drawn about 0, 0: y runs down, so growing angles turn clockwise
        const on = (degrees: number) => ({
          xUm: radiusUm * Math.cos((degrees * Math.PI) / 180),
          yUm: radiusUm * Math.sin((degrees * Math.PI) / 180),
        });
        const to = clockwise ? from + turn : from - turn;
        // at half a turn either centre is right
        fc.pre(turn !== 180);
        const path: Path = {
          from: on(from),
          segments: [{ kind: 'arc', ...on(to), radiusUm, clockwise, large: turn > 180 }],
          closed: false,
        };
        const points = walk(pathOperators({ kind: 'path', ...path, line: 'fine', fill: null }, 1));
        // a quarter turn as one curve is off by at most 0.03 % of the radius (common practice, no source)
        for (const [x, y] of points)
          expect(Math.abs(Math.hypot(x, y) - radiusUm)).toBeLessThan(radiusUm * 4e-4 + 0.5);
        const middle = points[Math.floor(points.length / 2)] as [number, number];
        const halfway = ((from + to) / 2) * (Math.PI / 180);
        expect(middle[0] * Math.cos(halfway) + middle[1] * Math.sin(halfway)).toBeGreaterThan(0);
      },
    ),
  );
});

test('circle and rounded rectangle touch exactly the box they are given', () => {
  const box = (operators: string) => {
    const points = walk(operators);
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(Math.round);
  };
  const circle = pathOperators(
    { kind: 'circle', centre: { xUm: 5_000, yUm: 7_000 }, radiusUm: 3_000, line: 'fine', fill: null },
    1,
  );
  expect(box(circle)).toEqual([2_000, 4_000, 8_000, 10_000]);
  const rect = {
    kind: 'roundedRect' as const,
    xUm: 100,
    yUm: 200,
    widthUm: 4_000,
    heightUm: 2_000,
    line: null,
    fill: null,
  };
  expect(box(pathOperators({ ...rect, radiusUm: 600 }, 1))).toEqual([100, 200, 4_100, 2_200]);
  // a radius larger than the half is no larger than the half
  expect(box(pathOperators({ ...rect, radiusUm: 9_000 }, 1))).toEqual([100, 200, 4_100, 2_200]);
  expect(pathOperators({ ...rect, radiusUm: 0 }, 1)).toBe('100 200 4000 2000 re ');
});
