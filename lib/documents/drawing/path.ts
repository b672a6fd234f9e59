import type { Path, Point, Segment } from './scene';

/** Paths, all in micrometres: how they are made, measured, moved and written. */

export function point(xUm: number, yUm: number): Point {
  return { xUm, yUm };
}

/** Steps of a pen: `trace(0, 0).to(10, 0).arc(10, 10, 5).close()`. */
export function trace(xUm: number, yUm: number) {
  const segments: Segment[] = [];
  const pen = {
    to(x: number, y: number) {
      segments.push({ kind: 'line', xUm: x, yUm: y });
      return pen;
    },
    /** Clockwise on the page unless told otherwise. */
    arc(x: number, y: number, radiusUm: number, clockwise = true, large = false) {
      segments.push({ kind: 'arc', xUm: x, yUm: y, radiusUm, clockwise, large });
      return pen;
    },
    curve(c1x: number, c1y: number, c2x: number, c2y: number, x: number, y: number) {
      segments.push({ kind: 'curve', control1: point(c1x, c1y), control2: point(c2x, c2y), xUm: x, yUm: y });
      return pen;
    },
    open: (): Path => ({ from: point(xUm, yUm), segments, closed: false }),
    close: (): Path => ({ from: point(xUm, yUm), segments, closed: true }),
  };
  return pen;
}

export interface Corner {
  xUm: number;
  yUm: number;
  radiusUm: number;
}

/**
 * A closed polygon whose corners are rounded by tangent arcs. A radius that the neighbouring edges have
 * no room for is made as large as half the shorter of them allows.
 */
export function roundedPolygon(corners: readonly Corner[]): Path {
  const count = corners.length;
  const rounds = corners.map((corner, index) => {
    const before = corners[(index + count - 1) % count] ?? corner;
    const after = corners[(index + 1) % count] ?? corner;
    return roundCorner(before, corner, after);
  });
  const first = rounds[0];
  if (!first) throw new Error('a polygon without corners');
  const pen = trace(first.end.xUm, first.end.yUm);
  for (const round of [...rounds.slice(1), first]) {
    pen.to(round.start.xUm, round.start.yUm);
    if (round.radiusUm > 0) pen.arc(round.end.xUm, round.end.yUm, round.radiusUm, round.clockwise);
  }
  return pen.close();
}

function roundCorner(before: Point, corner: Corner, after: Point) {
  const inX = before.xUm - corner.xUm;
  const inY = before.yUm - corner.yUm;
  const outX = after.xUm - corner.xUm;
  const outY = after.yUm - corner.yUm;
  const inLength = Math.hypot(inX, inY);
  const outLength = Math.hypot(outX, outY);
  const cross = inX * outY - inY * outX;
  const sharp = { start: corner, end: corner, radiusUm: 0, clockwise: true };
  if (inLength === 0 || outLength === 0) return sharp;
  const cosine = (inX * outX + inY * outY) / (inLength * outLength);
  const half = Math.acos(Math.min(1, Math.max(-1, cosine))) / 2;
  const tangent = Math.tan(half);
  if (corner.radiusUm <= 0 || tangent === 0 || Math.abs(half - Math.PI / 2) < 1e-6) return sharp;
  const reach = Math.min(corner.radiusUm / tangent, inLength / 2, outLength / 2);
  return {
    start: point(corner.xUm + (inX / inLength) * reach, corner.yUm + (inY / inLength) * reach),
    end: point(corner.xUm + (outX / outLength) * reach, corner.yUm + (outY / outLength) * reach),
    radiusUm: reach * tangent,
    clockwise: cross < 0,
  };
}

/** A slot with round ends, lying along x, its middle at `xUm`, `yUm`. A length below the width makes a circle. */
export function stadium(xUm: number, yUm: number, lengthUm: number, widthUm: number): Path {
  const radius = widthUm / 2;
  const reach = Math.max(0, lengthUm / 2 - radius);
  return trace(xUm - reach, yUm - radius)
    .to(xUm + reach, yUm - radius)
    .arc(xUm + reach, yUm + radius, radius)
    .to(xUm - reach, yUm + radius)
    .arc(xUm - reach, yUm - radius, radius)
    .close();
}

/** Every point mapped; arcs stay arcs, so `map` must keep distances. Mirroring turns their sense. */
export function mapPath(path: Path, map: (p: Point) => Point, mirrored = false): Path {
  return {
    closed: path.closed,
    from: map(path.from),
    segments: path.segments.map((segment): Segment => {
      const to = map(segment);
      if (segment.kind === 'line') return { ...segment, ...to };
      if (segment.kind === 'curve') {
        return { ...segment, ...to, control1: map(segment.control1), control2: map(segment.control2) };
      }
      return { ...segment, ...to, clockwise: mirrored ? !segment.clockwise : segment.clockwise };
    }),
  };
}

/** The path as points close enough together to measure by: arcs and curves in steps of a few degrees. */
export function flatten(path: Path): Point[] {
  const points: Point[] = [path.from];
  let at = path.from;
  for (const segment of path.segments) {
    if (segment.kind === 'arc') points.push(...arcPoints(at, segment));
    if (segment.kind === 'curve') points.push(...curvePoints(at, segment));
    at = point(segment.xUm, segment.yUm);
    points.push(at);
  }
  return points;
}

const STEPS = 24;

function arcPoints(from: Point, arc: Extract<Segment, { kind: 'arc' }>): Point[] {
  const centre = arcCentre(from, arc);
  const radius = Math.hypot(from.xUm - centre.xUm, from.yUm - centre.yUm);
  const begin = Math.atan2(from.yUm - centre.yUm, from.xUm - centre.xUm);
  const end = Math.atan2(arc.yUm - centre.yUm, arc.xUm - centre.xUm);
  const turn = Math.PI * 2;
  // y runs down, so a growing angle is clockwise on the page
  const sweep = arc.clockwise ? (end - begin + turn) % turn : -((begin - end + turn) % turn);
  return Array.from({ length: STEPS - 1 }, (_, index) => {
    const angle = begin + (sweep * (index + 1)) / STEPS;
    return point(centre.xUm + radius * Math.cos(angle), centre.yUm + radius * Math.sin(angle));
  });
}

function arcCentre(from: Point, arc: Extract<Segment, { kind: 'arc' }>): Point {
  const chordX = arc.xUm - from.xUm;
  const chordY = arc.yUm - from.yUm;
  const chord = Math.hypot(chordX, chordY);
  const radius = Math.max(arc.radiusUm, chord / 2);
  const height = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  const way = arc.clockwise === arc.large ? 1 : -1;
  const middleX = (from.xUm + arc.xUm) / 2;
  const middleY = (from.yUm + arc.yUm) / 2;
  if (chord === 0) return from;
  return point(middleX + (way * height * chordY) / chord, middleY - (way * height * chordX) / chord);
}

function curvePoints(from: Point, curve: Extract<Segment, { kind: 'curve' }>): Point[] {
  return Array.from({ length: STEPS - 1 }, (_, index) => {
    const t = (index + 1) / STEPS;
    const u = 1 - t;
    const at = (a: number, b: number, c: number, d: number) =>
      u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
    return point(
      at(from.xUm, curve.control1.xUm, curve.control2.xUm, curve.xUm),
      at(from.yUm, curve.control1.yUm, curve.control2.yUm, curve.yUm),
    );
  });
}

/** Whether a point lies inside a closed path, given flattened: many points are asked of one path. */
export function contains(points: readonly Point[], { xUm, yUm }: Point): boolean {
  let inside = false;
  for (let index = 0, last = points.length - 1; index < points.length; last = index, index += 1) {
    const a = points[index];
    const b = points[last];
    if (!a || !b || a.yUm > yUm === b.yUm > yUm) continue;
    const crossing = ((b.xUm - a.xUm) * (yUm - a.yUm)) / (b.yUm - a.yUm) + a.xUm;
    if (xUm < crossing) inside = !inside;
  }
  return inside;
}

/** The path as SVG path data, which the PDF painter reads as well; `unitUm` is the size of one unit of the page. */
export function pathData(path: Path, unitUm = 1): string {
  const n = (um: number) => String(Math.round((um / unitUm) * 1000) / 1000);
  const steps = path.segments.map((segment) => {
    if (segment.kind === 'line') return `L${n(segment.xUm)} ${n(segment.yUm)}`;
    if (segment.kind === 'curve') {
      const { control1: a, control2: b } = segment;
      return `C${n(a.xUm)} ${n(a.yUm)} ${n(b.xUm)} ${n(b.yUm)} ${n(segment.xUm)} ${n(segment.yUm)}`;
    }
    const flags = `${segment.large ? 1 : 0} ${segment.clockwise ? 1 : 0}`;
    return `A${n(segment.radiusUm)} ${n(segment.radiusUm)} 0 ${flags} ${n(segment.xUm)} ${n(segment.yUm)}`;
  });
  return `M${n(path.from.xUm)} ${n(path.from.yUm)}${steps.join('')}${path.closed ? 'Z' : ''}`;
}
