import type { Path, Point, Segment, Shape } from '@/lib/documents/drawing/scene';

/**
 * Shapes as path operators of a PDF page (ISO 32000-1, 8.5.2), in points. Written out here rather than through the
 * library one call at a time: a count sheet holds some ten thousand of them.
 */

/** Bézier handle of a quarter circle of radius 1, `4/3 · tan(π/8)`. */
const QUARTER = (4 / 3) * Math.tan(Math.PI / 8);

/** `scale`: points of paper for one micrometre. */
export function pathOperators(shape: Exclude<Shape, { kind: 'text' }>, scale: number): string {
  const n = (um: number) => String(Math.round(um * scale * 1000) / 1000);
  const xy = ({ xUm, yUm }: Point) => `${n(xUm)} ${n(yUm)}`;
  switch (shape.kind) {
    case 'line':
      return `${xy(shape.from)} m ${xy(shape.to)} l `;
    case 'circle':
      return ellipseAt(shape.centre, shape.radiusUm, xy);
    case 'roundedRect':
      return roundedRect(shape, xy, n);
    case 'path':
      return pathOf(shape, xy);
  }
}

type Write = (point: Point) => string;

function pathOf({ from, segments, closed }: Path, xy: Write): string {
  let at: Point = from;
  let operators = `${xy(from)} m `;
  for (const segment of segments) {
    operators += segmentOperators(at, segment, xy);
    at = segment;
  }
  return closed ? `${operators}h ` : operators;
}

function segmentOperators(from: Point, segment: Segment, xy: Write): string {
  if (segment.kind === 'line') return `${xy(segment)} l `;
  if (segment.kind === 'curve') return `${xy(segment.control1)} ${xy(segment.control2)} ${xy(segment)} c `;
  return arc(from, segment, xy);
}

/** A circular arc as curves of at most a quarter turn each. */
function arc(from: Point, to: Extract<Segment, { kind: 'arc' }>, xy: Write): string {
  const [dx, dy] = [to.xUm - from.xUm, to.yUm - from.yUm];
  const chord = Math.hypot(dx, dy);
  if (chord === 0) return '';
  // a radius too small for its ends grows until it reaches both, as in SVG
  const radius = Math.max(to.radiusUm, chord / 2);
  const rise = Math.sqrt(Math.max(radius * radius - (chord * chord) / 4, 0));
  // y runs down, so a clockwise arc has its centre at the right hand of the way from one end to the other
  const side = to.clockwise === to.large ? -1 : 1;
  const centre = {
    xUm: from.xUm + dx / 2 - (side * rise * dy) / chord,
    yUm: from.yUm + dy / 2 + (side * rise * dx) / chord,
  };
  const begin = Math.atan2(from.yUm - centre.yUm, from.xUm - centre.xUm);
  const end = Math.atan2(to.yUm - centre.yUm, to.xUm - centre.xUm);
  let turn = end - begin;
  if (to.clockwise && turn <= 0) turn += 2 * Math.PI;
  if (!to.clockwise && turn >= 0) turn -= 2 * Math.PI;
  const parts = Math.max(1, Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9));
  const step = turn / parts;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (angle: number): Point => ({
    xUm: centre.xUm + radius * Math.cos(angle),
    yUm: centre.yUm + radius * Math.sin(angle),
  });
  const off = (angle: number, along: number): Point => {
    const { xUm, yUm } = on(angle);
    return { xUm: xUm - Math.sin(angle) * along, yUm: yUm + Math.cos(angle) * along };
  };
  let operators = '';
  for (let part = 0; part < parts; part += 1) {
    const [a, b] = [begin + part * step, begin + (part + 1) * step];
    const last = part === parts - 1 ? to : on(b);
    operators += `${xy(off(a, handle))} ${xy(off(b, -handle))} ${xy(last)} c `;
  }
  return operators;
}

function ellipseAt({ xUm, yUm }: Point, radius: number, xy: Write): string {
  const k = radius * QUARTER;
  const at = (dx: number, dy: number) => xy({ xUm: xUm + dx, yUm: yUm + dy });
  return (
    `${at(radius, 0)} m ` +
    `${at(radius, k)} ${at(k, radius)} ${at(0, radius)} c ` +
    `${at(-k, radius)} ${at(-radius, k)} ${at(-radius, 0)} c ` +
    `${at(-radius, -k)} ${at(-k, -radius)} ${at(0, -radius)} c ` +
    `${at(k, -radius)} ${at(radius, -k)} ${at(radius, 0)} c h `
  );
}

function roundedRect(
  { xUm: x, yUm: y, widthUm: w, heightUm: h, radiusUm }: Extract<Shape, { kind: 'roundedRect' }>,
  xy: Write,
  n: (um: number) => string,
): string {
  const r = Math.min(radiusUm, w / 2, h / 2);
  if (r <= 0) return `${n(x)} ${n(y)} ${n(w)} ${n(h)} re `;
  const k = r * (1 - QUARTER);
  const at = (xUm: number, yUm: number) => xy({ xUm, yUm });
  return (
    `${at(x + r, y)} m ${at(x + w - r, y)} l ` +
    `${at(x + w - k, y)} ${at(x + w, y + k)} ${at(x + w, y + r)} c ${at(x + w, y + h - r)} l ` +
    `${at(x + w, y + h - k)} ${at(x + w - k, y + h)} ${at(x + w - r, y + h)} c ${at(x + r, y + h)} l ` +
    `${at(x + k, y + h)} ${at(x, y + h - k)} ${at(x, y + h - r)} c ${at(x, y + r)} l ` +
    `${at(x, y + k)} ${at(x + k, y)} ${at(x + r, y)} c h `
  );
}
