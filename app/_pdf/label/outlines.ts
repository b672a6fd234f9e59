import type { Weight } from '@/lib/documents/label';
import { type FontName, readFont } from '../fonts';

/** One step of a glyph's outline, in units of the font. */
interface Command {
  command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  args: number[];
}

/** What is used here of a font as the PDF library has read it. */
interface ReadFontFile {
  unitsPerEm: number;
  layout(text: string): {
    advanceWidth: number;
    glyphs: { path: { commands: Command[] } }[];
    positions: { xAdvance: number; xOffset: number; yOffset: number }[];
  };
}

export const FONT_OF: Record<Weight, FontName> = { regular: 'regular', bold: 'bold' };

const fontFile = (weight: Weight): ReadFontFile => readFont(FONT_OF[weight]) as unknown as ReadFontFile;

type Run = ReturnType<ReadFontFile['layout']>;

/** Words are shaped once: the same ones stand on most labels, and shaping takes longer than drawing. */
const shaped = new Map<string, Run>();
const MOST_SHAPED = 5_000;

function shape(text: string, weight: Weight): Run {
  const key = `${weight} ${text}`;
  const known = shaped.get(key);
  if (known) return known;
  if (shaped.size >= MOST_SHAPED) shaped.clear();
  const run = fontFile(weight).layout(text);
  shaped.set(key, run);
  return run;
}

/** Width of words as a share of the type size. */
export function measureText(text: string, weight: Weight): number {
  return shape(text, weight).advanceWidth / fontFile(weight).unitsPerEm;
}

export type Point = [x: number, y: number];

/** Straight pieces of a curve: at label sizes no glyph needs more. */
const PIECES = 6;

/** The outlines of words, glyph by glyph, as closed polygons in dots, with the baseline's left end at `x`, `y`. */
export function outlinesOf(text: string, weight: Weight, em: number, x: number, y: number): Point[][][] {
  const font = fontFile(weight);
  const scale = em / font.unitsPerEm;
  const run = shape(text, weight);
  const glyphs: Point[][][] = [];
  let at = 0;
  for (const [index, glyph] of run.glyphs.entries()) {
    const place = run.positions[index];
    if (!place) continue;
    const toDots = (px: number, py: number): Point => [
      x + (at + place.xOffset + px) * scale,
      y - (place.yOffset + py) * scale,
    ];
    glyphs.push(polygonsOf(glyph.path.commands, toDots));
    at += place.xAdvance;
  }
  return glyphs;
}

function polygonsOf(commands: readonly Command[], toDots: (x: number, y: number) => Point): Point[][] {
  const polygons: Point[][] = [];
  let polygon: Point[] = [];
  let [cx, cy] = [0, 0];
  for (const { command, args } of commands) {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
    if (command === 'closePath') {
      if (polygon.length > 2) polygons.push(polygon);
      polygon = [];
    } else if (command === 'moveTo') {
      if (polygon.length > 2) polygons.push(polygon);
      polygon = [toDots(a, b)];
      [cx, cy] = [a, b];
    } else if (command === 'lineTo') {
      polygon.push(toDots(a, b));
      [cx, cy] = [a, b];
    } else {
      const curve = command === 'quadraticCurveTo';
      for (let piece = 1; piece <= PIECES; piece += 1) {
        const t = piece / PIECES;
        const u = 1 - t;
        const px = curve
          ? u * u * cx + 2 * u * t * a + t * t * c
          : u ** 3 * cx + 3 * u * u * t * a + 3 * u * t * t * c + t ** 3 * e;
        const py = curve
          ? u * u * cy + 2 * u * t * b + t * t * d
          : u ** 3 * cy + 3 * u * u * t * b + 3 * u * t * t * d + t ** 3 * f;
        polygon.push(toDots(px, py));
      }
      [cx, cy] = curve ? [c, d] : [e, f];
    }
  }
  if (polygon.length > 2) polygons.push(polygon);
  return polygons;
}
