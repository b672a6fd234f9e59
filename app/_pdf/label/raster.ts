import type { Label } from '@/lib/documents/label';
import type { DataMatrix } from '../dataMatrix';
import { outlinesOf, type Point } from './outlines';

/** Dots of a label, row by row from the top; 1 is black. What a thermal head burns. */
export interface Raster {
  width: number;
  height: number;
  dots: Uint8Array;
}

/** The label as the dots its printer burns: nothing is scaled, every module is the same number of dots. */
export function rasterise(label: Label, symbol: DataMatrix): Raster {
  const raster: Raster = {
    width: label.width,
    height: label.height,
    dots: new Uint8Array(label.width * label.height),
  };
  for (const { x, y, width, height } of label.boxes) fillBox(raster, x, y, width, height);
  for (const { text, weight, em, x, y, colour } of label.texts)
    for (const glyph of outlinesOf(text, weight, em, x, y))
      fillGlyph(raster, glyph, colour === 'black' ? 1 : 0);
  const { x, y, moduleDots, quietModules } = label.symbol;
  for (let row = 0; row < symbol.rows; row += 1)
    for (let column = 0; column < symbol.columns; column += 1)
      if (symbol.modules[row * symbol.columns + column] === 1)
        fillBox(
          raster,
          x + (quietModules + column) * moduleDots,
          y + (quietModules + row) * moduleDots,
          moduleDots,
          moduleDots,
        );
  return raster;
}

function fillBox(
  { dots, width: across, height: down }: Raster,
  x: number,
  y: number,
  w: number,
  h: number,
): void {
  for (let row = Math.max(0, y); row < Math.min(down, y + h); row += 1)
    dots.fill(1, row * across + Math.max(0, x), row * across + Math.min(across, x + w));
}

/** Lines a row is sampled on. */
const SAMPLES = 4;

/** Fills a glyph by the non-zero rule; a dot is set where at least half of it is covered. */
function fillGlyph({ dots, width, height }: Raster, polygons: readonly Point[][], value: 0 | 1): void {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (const polygon of polygons)
    for (const [x, y] of polygon) {
      left = Math.min(left, Math.floor(x));
      right = Math.max(right, Math.ceil(x));
      top = Math.min(top, Math.floor(y));
      bottom = Math.max(bottom, Math.ceil(y));
    }
  [left, right] = [Math.max(0, left), Math.min(width, right)];
  if (right <= left) return;
  const covered = new Float32Array(right - left);
  for (let row = Math.max(0, top); row < Math.min(height, bottom); row += 1) {
    covered.fill(0);
    for (let sample = 0; sample < SAMPLES; sample += 1)
      cover(covered, polygons, left, row + (sample + 0.5) / SAMPLES);
    for (const [at, share] of covered.entries())
      if (share >= SAMPLES / 2) dots[row * width + left + at] = value;
  }
}

/** Adds to each dot of a row how much of it lies within the outlines on one line across. */
function cover(covered: Float32Array, polygons: readonly Point[][], left: number, y: number): void {
  const crossings: { x: number; turn: number }[] = [];
  for (const polygon of polygons) {
    for (const [at, [x1, y1]] of polygon.entries()) {
      const [x2, y2] = polygon[(at + 1) % polygon.length] as Point;
      if (y1 <= y === y2 <= y) continue;
      crossings.push({ x: x1 - left + ((y - y1) / (y2 - y1)) * (x2 - x1), turn: y2 > y1 ? 1 : -1 });
    }
  }
  crossings.sort((a, b) => a.x - b.x);
  let winding = 0;
  for (const [at, { x, turn }] of crossings.entries()) {
    winding += turn;
    const next = crossings[at + 1];
    if (winding !== 0 && next) span(covered, x, next.x);
  }
}

function span(covered: Float32Array, from: number, to: number): void {
  const end = Math.min(to, covered.length);
  for (let column = Math.max(0, Math.floor(from)); column < end; column += 1)
    covered[column] = (covered[column] ?? 0) + Math.min(to, column + 1) - Math.max(from, column);
}
