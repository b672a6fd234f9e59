import { implant, type PlateEntry, um } from './entry';
import type { MakerKey } from './makers';
import type { PlateBody } from './plateShapes';
import { STEEL_PLATES } from './platesSteel';
import { TITANIUM_PLATES } from './platesTitanium';

/** A line of plates alike but for their number of shaft holes and, where sided, their side. */
export interface PlateLine {
  maker: MakerKey;
  codeStem: string;
  name: string;
  shape: PlateEntry['shape'];
  takesUm: number[];
  counts: number[];
  /** A left and a right plate of each; mirror images, and look-alikes. */
  sided?: true;
  /** Where it looks like another line too. */
  look?: string;
  suppliedSterile?: boolean;
  body: (count: number, side: PlateEntry['side']) => PlateBody;
  pence: number;
}

/** Every plate of every line. */
export function plates(): PlateEntry[] {
  return [...STEEL_PLATES, ...TITANIUM_PLATES].flatMap((line) =>
    line.counts.flatMap((count) =>
      (line.sided ? (['left', 'right'] as const) : (['either'] as const)).map((side) =>
        plate(line, count, side),
      ),
    ),
  );
}

function plate(line: PlateLine, count: number, side: 'left' | 'right' | 'either'): PlateEntry {
  const body = line.body(count, side);
  const screwHoles = body.holes.filter((hole) => hole.holeClass !== 'wireHole').length;
  const headHoles = screwHoles - count;
  const holeWords = headHoles > 0 ? `${count} + ${headHoles} holes` : `${count} holes`;
  const code = `${line.codeStem}${side === 'either' ? '' : `-${side === 'left' ? 'L' : 'R'}`}-${String(count).padStart(2, '0')}`;
  return {
    ...implant(line.maker, code, `${line.name}${side === 'either' ? '' : `, ${side}`}, ${holeWords}`, {
      side,
      massGrams: plateGrams(line, body),
      unitCostPence: line.pence + count * 350,
      suppliedSterile: line.suppliedSterile ?? false,
    }),
    kind: 'plate',
    shape: line.shape,
    takesThreadsUm: line.takesUm,
    lengthUm: um(body.lengthMm),
    widthUm: um(body.widthMm),
    headWidthUm: um(body.headWidthMm),
    thicknessUm: um(body.thicknessMm),
    lookAlikeOf: line.look ?? line.name,
    holes: body.holes,
  };
}

/** About four fifths of the solid block (the rest is holes), at 8 g/cm³ for steel and 4.5 for the titanium alloy. */
function plateGrams(line: PlateLine, body: PlateBody): number {
  const headMm3 = body.headWidthMm
    ? 0.5 * (body.headWidthMm - body.widthMm) * body.widthMm * body.thicknessMm
    : 0;
  const mm3 = body.lengthMm * body.widthMm * body.thicknessMm + headMm3;
  return Math.max(1, Math.round((0.8 * mm3 * (line.maker === 'carrowby' ? 8 : 4.5)) / 1000));
}
