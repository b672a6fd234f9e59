import type { Hole } from '../../catalogue/hole';
import { never } from '../../identity/result';
import { arrowHead, circle, drawn, line } from './marks';
import { mapPath, point, stadium, trace } from './path';
import type { Path, Shape } from './scene';

/**
 * A hole as it is seen from above the plate. Each class is told apart by geometry alone: an internal thread by a
 * three-quarter circle outside its core circle (as ISO 6410 shows it), a compression slot by the ramp at one end,
 * a seat by the second edge inside the first.
 */
export interface DrawnHole {
  shapes: Shape[];
  outline: Path;
  widthUm: number;
  heightUm: number;
}

interface Sizes {
  /** Widest diameter of the seat or of the thread. */
  seat: number;
  /** Clear diameter. */
  opening: number;
  /** Length over all, along the plate. */
  slot: number;
  stated: boolean;
}

/** Sizes with stand-ins in proportion where a dimension is not stated. */
function sizesOf(hole: Hole, takesThreadUm: number | null): Sizes {
  const guess = (takesThreadUm ?? 3_500) * (hole.holeClass === 'wireHole' ? 0.5 : 1.15);
  const opening = hole.openingUm ?? (hole.seatUm === null ? guess : hole.seatUm * 0.68);
  const seat = Math.max(opening, hole.seatUm ?? (hole.holeClass === 'wireHole' ? opening : opening * 1.45));
  const factor = { compressionSlot: 1.3, elongatedSlot: 2, twoZone: 1.75 } as Record<string, number>;
  const slot = Math.max(seat, hole.slotUm ?? seat * (factor[hole.holeClass] ?? 1));
  const needsSlot = hole.holeClass in factor;
  // no catalogue states the size of a threaded zone: it is drawn in proportion to the screws the plate is made for
  const threaded = hole.holeClass === 'threaded' || hole.holeClass === 'polyaxialThreaded';
  const stated = threaded
    ? hole.openingUm !== null || takesThreadUm !== null
    : hole.openingUm !== null &&
      (!needsSlot || hole.slotUm !== null) &&
      (hole.seatUm !== null || !seatMatters(hole));
  return { seat, opening, slot, stated };
}

function seatMatters(hole: Hole): boolean {
  return (
    hole.holeClass === 'round' ||
    hole.holeClass === 'compressionSlot' ||
    hole.holeClass === 'elongatedSlot' ||
    hole.holeClass === 'twoZone'
  );
}

/**
 * Draws one hole with its centre at 0, 0 and x along the plate. `outward` says which way the nearer end of the plate
 * lies; the ramp of a compression slot and the plain zone of a two-zone hole are drawn on that side.
 */
export function drawHole(
  hole: Hole,
  { outward, takesThreadUm }: { outward: 1 | -1; takesThreadUm: number | null },
): DrawnHole {
  const sizes = sizesOf(hole, takesThreadUm);
  const edge = sizes.stated ? 'outline' : 'notStated';
  const { seat, opening, slot } = sizes;
  switch (hole.holeClass) {
    case 'round':
      return round(seat, [
        circle(0, 0, seat / 2, edge, 'void'),
        ...seatMark(hole, seat, opening),
        circle(0, 0, opening / 2, 'fine'),
      ]);
    case 'wireHole':
      return round(opening, [
        circle(0, 0, opening / 2, edge, 'void'),
        line(-opening * 0.95, 0, opening * 0.95, 0, 'fine'),
        line(0, -opening * 0.95, 0, opening * 0.95, 'fine'),
      ]);
    case 'threaded':
      return round(seat, [circle(0, 0, seat / 2, null, 'void'), ...threadedZone(0, seat, edge)]);
    case 'polyaxialThreaded':
      return round(seat, [circle(0, 0, seat / 2, null, 'void'), ...polyaxialZone(seat, edge)]);
    case 'elongatedSlot':
      return slotted(slot, seat, [
        drawn(stadium(0, 0, slot, seat), edge, 'void'),
        drawn(stadium(0, 0, slot - (seat - opening), opening), 'fine'),
      ]);
    case 'compressionSlot':
      return slotted(slot, seat, compressionSlot(sizes, outward, edge));
    case 'twoZone':
      return twoZone(sizes, outward, edge);
    default:
      return never(hole.holeClass);
  }
}

function round(diameter: number, shapes: Shape[]): DrawnHole {
  return { shapes, outline: stadium(0, 0, diameter, diameter), widthUm: diameter, heightUm: diameter };
}

function slotted(slot: number, width: number, shapes: Shape[]): DrawnHole {
  return { shapes, outline: stadium(0, 0, slot, width), widthUm: slot, heightUm: width };
}

/** A conical seat shows its straight wall as short generators; a spherical one as a further ring. */
function seatMark(hole: Hole, seat: number, opening: number): Shape[] {
  if (hole.plainSeat === null || seat <= opening) return [];
  if (hole.plainSeat === 'spherical') return [circle(0, 0, (seat * 0.62 + opening * 0.38) / 2, 'fine')];
  return [45, 135, 225, 315].map((degrees) => {
    const [c, s] = turn(degrees);
    return line((c * opening) / 2, (s * opening) / 2, (c * seat) / 2, (s * seat) / 2, 'fine');
  });
}

function turn(degrees: number): [number, number] {
  return [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
}

function arcOf(x: number, radius: number, fromDegrees: number, toDegrees: number): Path {
  const [c1, s1] = turn(fromDegrees);
  const [c2, s2] = turn(toDegrees);
  return trace(x + c1 * radius, s1 * radius)
    .arc(x + c2 * radius, s2 * radius, radius, true, toDegrees - fromDegrees > 180)
    .open();
}

/** An internal thread seen end on: the full circle is its core, the three-quarter circle its outer diameter. */
function threadedZone(x: number, outer: number, edge: 'outline' | 'notStated'): Shape[] {
  return [circle(x, 0, (outer * 0.8) / 2, edge, 'void'), drawn(arcOf(x, outer / 2, -80, 190), 'thread')];
}

/** Threads in four fields, so that a screw may lean: four arcs in place of the three-quarter circle. */
function polyaxialZone(outer: number, edge: 'outline' | 'notStated'): Shape[] {
  const fields = [20, 110, 200, 290].flatMap((from) => [
    drawn(arcOf(0, outer / 2, from, from + 50), 'thread'),
    drawn(arcOf(0, outer * 0.45, from, from + 50), 'thread'),
  ]);
  return [circle(0, 0, (outer * 0.76) / 2, edge, 'void'), ...fields];
}

function compressionSlot(
  { seat, opening, slot }: Sizes,
  outward: 1 | -1,
  edge: 'outline' | 'notStated',
): Shape[] {
  const inner = Math.max(opening, slot - (seat - opening) * 1.4);
  const end = (outward * slot) / 2;
  // the ramp runs from the outer end down to the opening: three lines, closer together where it is steeper
  const ramp = [0.16, 0.3, 0.4].map((part) => {
    const x = end - outward * seat * part;
    const half = Math.sqrt(Math.max(0, (seat / 2) ** 2 - (seat / 2 - seat * part) ** 2)) * 0.92;
    return line(x, -half, x, half, 'fine');
  });
  return [
    drawn(stadium(0, 0, slot, seat), edge, 'void'),
    ...ramp,
    drawn(stadium(-outward * (slot - inner) * 0.22, 0, inner, opening), 'fine', 'void'),
  ];
}

/** Two circles that run into each other: the plain zone towards the plate's end, the threaded one beside it. */
function twoZone({ seat, opening, slot }: Sizes, outward: 1 | -1, edge: 'outline' | 'notStated'): DrawnHole {
  const plainX = (outward * (slot - seat)) / 2;
  const thread = Math.min(seat, Math.max(opening, slot * 0.55));
  const threadX = (-outward * (slot - thread)) / 2;
  const outline = stadiumOfTwo(plainX, seat / 2, threadX, thread / 2);
  return {
    shapes: [
      drawn(outline, edge, 'void'),
      circle(plainX, 0, opening / 2, 'fine'),
      line(plainX + outward * seat * 0.28, -seat * 0.34, plainX + outward * seat * 0.28, seat * 0.34, 'fine'),
      circle(threadX, 0, (thread * 0.78) / 2, 'outline', 'void'),
      drawn(arcOf(threadX, thread * 0.45, outward > 0 ? 45 : -135, outward > 0 ? 315 : 135), 'thread'),
    ],
    outline,
    widthUm: slot,
    heightUm: seat,
  };
}

/** The outer edge of two overlapping circles whose middles lie on the x axis. */
function stadiumOfTwo(firstX: number, firstR: number, secondX: number, secondR: number): Path {
  const [leftX, leftR, rightX, rightR] =
    firstX < secondX ? [firstX, firstR, secondX, secondR] : [secondX, secondR, firstX, firstR];
  const distance = rightX - leftX;
  if (distance <= Math.abs(leftR - rightR)) {
    const big = leftR > rightR ? leftX : rightX;
    return mapPath(stadium(0, 0, 2 * Math.max(leftR, rightR), 2 * Math.max(leftR, rightR)), (p) =>
      point(p.xUm + big, p.yUm),
    );
  }
  const meet = Math.min(leftR, Math.max(-leftR, (distance ** 2 + leftR ** 2 - rightR ** 2) / (2 * distance)));
  const height = Math.sqrt(Math.max(0, leftR ** 2 - meet ** 2));
  const x = leftX + meet;
  return trace(x, -height)
    .arc(x, height, rightR, true, x < rightX)
    .arc(x, -height, leftR, true, x > leftX)
    .close();
}

/** An arrow from the hole's centre the way a screw in it would lean; none for an upright hole. */
export function tiltArrow(
  hole: Pick<Hole, 'tiltAlongDegrees' | 'tiltAcrossDegrees'>,
  reachUm: number,
): Shape[] {
  const dx = Math.tan((hole.tiltAlongDegrees * Math.PI) / 180);
  const dy = -Math.tan((hole.tiltAcrossDegrees * Math.PI) / 180);
  const lean = Math.hypot(dx, dy);
  if (lean === 0) return [];
  const length = reachUm * (0.75 + Math.min(1, lean));
  const x = (dx / lean) * length;
  const y = (dy / lean) * length;
  return [
    line(0, 0, x, y, 'fine'),
    circle(0, 0, reachUm * 0.07, null, 'ink'),
    arrowHead(x, y, dx, dy, reachUm * 0.34),
  ];
}
