import type { Hole } from '../../catalogue/hole';
import type { Plate } from '../../catalogue/item';
import { type Corner, flatten, mapPath, point, roundedPolygon, stadium, trace } from './path';
import type { Path } from './scene';

/**
 * A plate's outline from its shape, length, width and head width; how far the head reaches down the plate, and to
 * which side it leans, follow from its head holes. In the drawing's frame: x is along the plate from its shaft end,
 * y is minus across, so that the plate's left is up. Micrometres.
 */
export interface PlateOutline {
  path: Path;
  lengthUm: number;
  widthUm: number;
  /** `null` where the plate has no head. */
  headWidthUm: number | null;
  /** Where the head begins along the plate; `null` where there is none. */
  headFromUm: number | null;
  /** Dimensions the outline rests on that nobody has stated: it is then a stand-in, drawn dashed. */
  missing: ('length' | 'width' | 'headWidth')[];
}

type OutlinedPlate = Pick<Plate, 'shape' | 'lengthUm' | 'widthUm' | 'headWidthUm' | 'side' | 'holes'>;

/** Shapes that have a head even where no hole of theirs says so. */
const HEADED: ReadonlySet<Plate['shape']> = new Set(['tRightAngled', 'tOblique', 'lShaped', 'cloverleaf']);

export function plateOutline(plate: OutlinedPlate): PlateOutline {
  const headHoles = plate.holes.filter((hole) => hole.segment === 'head');
  const hasHead = HEADED.has(plate.shape) || plate.headWidthUm !== null || headHoles.length > 0;
  const lengthUm = plate.lengthUm ?? standInLength(plate.holes);
  const widthUm = plate.widthUm ?? standInWidth(plate.holes);
  const headWidthUm = hasHead ? (plate.headWidthUm ?? standInHeadWidth(headHoles, widthUm)) : null;
  const missing: PlateOutline['missing'] = [];
  if (plate.lengthUm === null) missing.push('length');
  if (plate.widthUm === null) missing.push('width');
  if (hasHead && plate.headWidthUm === null) missing.push('headWidth');
  const sizes = { lengthUm, widthUm };
  if (headWidthUm === null) {
    const path =
      plate.shape === 'reconstruction' ? waisted(plate.holes, sizes) : straight(plate.shape, sizes);
    return { path, ...sizes, headWidthUm, headFromUm: null, missing };
  }
  const head = headOf(plate, headHoles, lengthUm, widthUm, headWidthUm);
  return { path: headed(plate.shape, head, sizes), ...sizes, headWidthUm, headFromUm: head.from, missing };
}

/** Half of what a hole takes up across its middle; a stand-in where nothing is stated. */
export function holeHalfUm(hole: Pick<Hole, 'seatUm' | 'openingUm'>): number {
  return (hole.seatUm ?? hole.openingUm ?? 4_000) / 2;
}

function standInLength(holes: readonly Hole[]): number {
  if (holes.length === 0) return 60_000;
  const along = holes.map((hole) => hole.alongUm);
  return Math.max(...along) + Math.max(4_000, Math.min(...along));
}

function standInWidth(holes: readonly Hole[]): number {
  const widest = Math.max(0, ...holes.filter((hole) => hole.segment === 'shaft').map(holeHalfUm));
  return widest === 0 ? 10_000 : Math.round(widest * 3);
}

function standInHeadWidth(headHoles: readonly Hole[], widthUm: number): number {
  const reach = Math.max(0, ...headHoles.map((hole) => Math.abs(hole.acrossUm) + holeHalfUm(hole)));
  return Math.round(Math.max(widthUm * 1.2, reach * 2 + widthUm * 0.3));
}

function straight(shape: Plate['shape'], { lengthUm, widthUm }: { lengthUm: number; widthUm: number }): Path {
  if (shape === 'straightBroad' || shape === 'buttress') {
    const radiusUm = widthUm * 0.38;
    const half = widthUm / 2;
    return roundedPolygon([
      { xUm: 0, yUm: -half, radiusUm },
      { xUm: lengthUm, yUm: -half, radiusUm },
      { xUm: lengthUm, yUm: half, radiusUm },
      { xUm: 0, yUm: half, radiusUm },
    ]);
  }
  return stadium(lengthUm / 2, 0, lengthUm, Math.min(widthUm, lengthUm));
}

/** A reconstruction plate: its edges drawn in between one hole and the next, so that it bends in all directions. */
function waisted(holes: readonly Hole[], { lengthUm, widthUm }: { lengthUm: number; widthUm: number }): Path {
  const along = [...new Set(holes.map((hole) => hole.alongUm))].sort((a, b) => a - b);
  const half = widthUm / 2;
  const waists = along.slice(1).map((at, index) => {
    const before = along[index] ?? at;
    return { at: (before + at) / 2, reach: Math.min((at - before) * 0.24, widthUm * 0.35) };
  });
  const depth = (reach: number) => Math.min(widthUm * 0.14, reach * 0.8);
  const radius = (reach: number) => (reach * reach + depth(reach) ** 2) / (2 * depth(reach));
  const pen = trace(half, -half);
  for (const { at, reach } of waists) pen.to(at - reach, -half).arc(at + reach, -half, radius(reach), false);
  pen.to(lengthUm - half, -half).arc(lengthUm - half, half, half);
  for (const { at, reach } of waists.reverse())
    pen.to(at + reach, half).arc(at - reach, half, radius(reach), false);
  return pen.to(half, half).arc(half, -half, half).close();
}

interface Head {
  from: number;
  to: number;
  /** Edges across, in the plate's own sense (positive is left). */
  low: number;
  high: number;
  /** How much further along the head lies for each unit across; 0 but for an oblique head. */
  slope: number;
  /** Room around the head's holes. */
  margin: number;
  holes: readonly Hole[];
}

function headOf(
  plate: OutlinedPlate,
  holes: readonly Hole[],
  length: number,
  width: number,
  headWidth: number,
): Head {
  const margin = Math.max(0, ...holes.map(holeHalfUm)) + width * 0.14 || width * 0.45;
  const across = holes.map((hole) => hole.acrossUm);
  const middle = holes.length === 0 ? 0 : (Math.min(...across) + Math.max(...across)) / 2;
  const lean = Math.sign(Math.abs(middle) > headWidth * 0.04 ? middle : plate.side === 'right' ? -1 : 1);
  const slope = plate.shape === 'tOblique' ? (slopeOf(holes) ?? lean * 0.27) : 0;
  const first =
    holes.length === 0 ? length - width * 0.9 : Math.min(...holes.map((hole) => hole.alongUm)) - margin;
  const from = Math.max(length * 0.25, Math.min(first, length - width * 0.5));
  if (plate.shape === 'lShaped') {
    const outer = headWidth - width / 2;
    return {
      from,
      to: length,
      low: lean > 0 ? -width / 2 : -outer,
      high: lean > 0 ? outer : width / 2,
      slope,
      margin,
      holes,
    };
  }
  const room = Math.max(0, headWidth / 2 - width / 2);
  const shift = Math.abs(middle) < headWidth * 0.04 ? 0 : Math.max(-room, Math.min(room, middle));
  return { from, to: length, low: shift - headWidth / 2, high: shift + headWidth / 2, slope, margin, holes };
}

/** How the row of head holes lies, by least squares; `null` where they do not say. */
function slopeOf(holes: readonly Hole[]): number | null {
  const count = holes.length;
  if (count < 2) return null;
  const meanAcross = holes.reduce((sum, hole) => sum + hole.acrossUm, 0) / count;
  const meanAlong = holes.reduce((sum, hole) => sum + hole.alongUm, 0) / count;
  const spread = holes.reduce((sum, hole) => sum + (hole.acrossUm - meanAcross) ** 2, 0);
  if (spread === 0) return null;
  const shared = holes.reduce(
    (sum, hole) => sum + (hole.acrossUm - meanAcross) * (hole.alongUm - meanAlong),
    0,
  );
  return Math.max(-1, Math.min(1, shared / spread));
}

function headed(shape: Plate['shape'], head: Head, sizes: { lengthUm: number; widthUm: number }): Path {
  if (shape === 'cloverleaf') return cloverleaf(head, sizes);
  if (shape === 'buttress' || shape === 'anatomic' || shape === 'reconstruction' || !HEADED.has(shape)) {
    return flared(head, sizes);
  }
  const bar = barred(head, sizes);
  // rounding takes the tip off an oblique bar: it is drawn that much further, so that the whole is as long as stated
  const short = head.to - Math.max(...flatten(bar).map(({ xUm }) => xUm));
  return short > 1 ? barred({ ...head, to: head.to + short }, sizes) : bar;
}

/** T, oblique T and L: a bar across the shaft's end. */
function barred({ from, to, low, high, slope, margin, holes }: Head, { widthUm }: { widthUm: number }): Path {
  const half = widthUm / 2;
  const end = (across: number) => to - (slope >= 0 ? slope * (high - across) : slope * (low - across));
  // an oblique bar is as deep as its holes need, measured along the plate
  const behind = Math.max(widthUm * 0.3, ...holes.map((hole) => end(hole.acrossUm) - hole.alongUm));
  const depth = slope === 0 ? to - from : Math.min((to - from) * 1.4, behind + margin * Math.hypot(1, slope));
  const start = (across: number) => end(across) - depth;
  const round = Math.min(margin, depth / 2);
  const inner = widthUm * 0.35;
  const corners: (Corner | null)[] = [
    { xUm: 0, yUm: -half, radiusUm: half * 0.96 },
    high > half + 1 ? { xUm: start(half), yUm: -half, radiusUm: inner } : null,
    high > half + 1 ? { xUm: start(high), yUm: -high, radiusUm: round } : null,
    { xUm: end(high), yUm: -high, radiusUm: round },
    { xUm: end(low), yUm: -low, radiusUm: round },
    low < -half - 1 ? { xUm: start(low), yUm: -low, radiusUm: round } : null,
    low < -half - 1 ? { xUm: start(-half), yUm: half, radiusUm: inner } : null,
    { xUm: 0, yUm: half, radiusUm: half * 0.96 },
  ];
  return roundedPolygon(corners.filter((corner): corner is Corner => corner !== null));
}

/** Three lobes: one to each side, one to the end. */
function cloverleaf({ from, to, low, high, margin, holes }: Head, { widthUm }: { widthUm: number }): Path {
  const half = widthUm / 2;
  const lateral = holes
    .filter((hole) => Math.abs(hole.acrossUm) > (high - low) * 0.22)
    .map((hole) => hole.alongUm);
  const shoulder = Math.min(
    to - margin * 0.6,
    Math.max(from + margin, ...lateral.map((along) => along + margin)) || (from + to) / 2,
  );
  const beyond = holes
    .filter((hole) => hole.alongUm > shoulder - margin * 0.4)
    .map((hole) => Math.abs(hole.acrossUm) + margin);
  const lobe = Math.min(high * 0.75, Math.max(half * 0.8, ...beyond));
  const round = Math.min(margin, (shoulder - from) / 2);
  const inner = widthUm * 0.3;
  const upper: Corner[] = [
    { xUm: 0, yUm: -half, radiusUm: half * 0.96 },
    { xUm: from, yUm: -half, radiusUm: inner },
    { xUm: from, yUm: -high, radiusUm: round },
    { xUm: shoulder, yUm: -high, radiusUm: round },
    { xUm: shoulder, yUm: -lobe, radiusUm: inner * 0.8 },
    { xUm: to, yUm: -lobe, radiusUm: Math.min(lobe, (to - shoulder) * 0.9) },
  ];
  const lower = upper
    .map((corner) => ({ ...corner, yUm: corner.yUm === -high ? -low : -corner.yUm }))
    .reverse();
  return roundedPolygon([...upper, ...lower]);
}

/** Buttress and anatomic plates: the shaft widens into the head, more to one side where its holes lean there. */
function flared({ from, to, low, high, margin }: Head, { widthUm }: { widthUm: number }): Path {
  const half = widthUm / 2;
  const neck = Math.max(widthUm * 0.6, from - Math.max(high - half, -low - half, half) * 1.1);
  const soft = (high - low) * 0.9;
  const round = Math.min(margin * 1.1, (to - from) / 2, (high - low) / 2);
  return roundedPolygon([
    { xUm: 0, yUm: -half, radiusUm: half * 0.96 },
    { xUm: neck, yUm: -half, radiusUm: soft },
    { xUm: from, yUm: -high, radiusUm: soft },
    { xUm: to, yUm: -high, radiusUm: round },
    { xUm: to, yUm: -low, radiusUm: round },
    { xUm: from, yUm: -low, radiusUm: soft },
    { xUm: neck, yUm: half, radiusUm: soft },
    { xUm: 0, yUm: half, radiusUm: half * 0.96 },
  ]);
}

/** The path in the plate's own frame (x along, y across), for asking whether a hole lies on it. */
export function inPlateFrame(path: Path): Path {
  return mapPath(path, ({ xUm, yUm }) => point(xUm, -yUm), true);
}
