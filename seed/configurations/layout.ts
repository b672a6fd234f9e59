import type { z } from 'zod';
import type { Construct } from '@/lib/plans/plan';
import type { configurationLine, MustHaveClass } from '@/lib/sets/configuration';
import { idOfCode } from '../catalogue/entry';
import { SCREW_FAMILIES } from '../catalogue/screwFamilies';

export type LineEntry = z.input<typeof configurationLine>;

/** One item in a row of a layer. */
export interface Piece {
  code: string;
  expected: number;
  minimum: number;
  mustHaveClass: MustHaveClass;
  substitutes: string[];
}

/** `stops('CR-B25-110', 2)`: two expected; the step stops without one. */
const pieceOf =
  (mustHaveClass: MustHaveClass) =>
  (
    code: string,
    expected = 1,
    minimum = mustHaveClass <= 2 ? Math.ceil(expected / 2) : 0,
    substitutes: string[] = [],
  ): Piece => ({
    code,
    expected,
    minimum,
    mustHaveClass,
    substitutes,
  });

export const stops = pieceOf(1);
export const backUp = pieceOf(3);
export const handy = pieceOf(4);

/** Stops the step unless one of the named substitutes is there. */
export const orSubstitute = (
  code: string,
  expected: number,
  substitutes: string[],
  minimum = Math.ceil(expected / 2),
): Piece => ({
  code,
  expected,
  minimum,
  mustHaveClass: 2,
  substitutes,
});

/** One row of a screw rack: a screw family, one cell for each length from and to. */
export interface RackRow {
  codeStem: string;
  fromMm: number;
  toMm: number;
  /** Expected in each cell. */
  each: number;
  minimum?: number;
  /** Cells that hold another number than the rest, by length. */
  other?: Record<number, number>;
}

export interface LayerPlan {
  name: string;
  rows: Piece[][];
  rack?: { code: string; rows: RackRow[] };
}

export interface VersionPlan {
  version: number;
  status: 'draft' | 'inForce' | 'superseded';
  layers: LayerPlan[];
  basket: string | null;
  container: string | null;
  promises: { name: string; construct: Construct }[];
  note: string | null;
  /** Days before today from which it was in force. */
  inForceDaysAgo: number | null;
}

export interface ConfigurationPlan {
  /** `SFL`: begins the codes of its sets. */
  code: string;
  name: string;
  versions: VersionPlan[];
}

export const configurationIdOf = (code: string) => `configuration_${code.toLowerCase()}`;
export const versionIdOf = (code: string, version: number) => `version_${code.toLowerCase()}-${version}`;

/** The lines of a version where they lie: rows of pieces first, then the rack and its cells by family and length. */
export function linesOf(code: string, plan: VersionPlan): LineEntry[] {
  return plan.layers.flatMap((layer, layerIndex) => {
    const at = (row: number, slot: number) => ({
      id: `line_${code.toLowerCase()}-${plan.version}-${layerIndex + 1}-${row}-${slot}`,
      layer: layerIndex + 1,
      row,
      slot,
    });
    const pieces = layer.rows.flatMap((row, rowIndex) =>
      row.map(
        ({ code: itemCode, substitutes, ...piece }, slotIndex): LineEntry => ({
          ...at(rowIndex + 1, slotIndex + 1),
          itemId: idOfCode(itemCode),
          rackItemId: null,
          ...piece,
          substitutes: substitutes.map(idOfCode),
        }),
      ),
    );
    if (!layer.rack) return pieces;
    const rackItemId = idOfCode(layer.rack.code);
    const rackRow = layer.rows.length + 1;
    const rack: LineEntry = {
      ...at(rackRow, 1),
      itemId: rackItemId,
      rackItemId: null,
      expected: 1,
      minimum: 0,
      mustHaveClass: 3,
      substitutes: [],
    };
    const columns = rackColumns(layer.rack.rows);
    const cells = layer.rack.rows.flatMap((row, index) =>
      lengthsIn(row).map((lengthMm): LineEntry => {
        const expected = row.other?.[lengthMm] ?? row.each;
        return {
          ...at(rackRow + 1 + index, columns.indexOf(lengthMm) + 1),
          itemId: idOfCode(`${row.codeStem}-${String(lengthMm).padStart(2, '0')}`),
          rackItemId,
          expected,
          minimum: Math.min(row.minimum ?? 1, expected),
          mustHaveClass: 2,
          substitutes: [],
        };
      }),
    );
    return [...pieces, rack, ...cells];
  });
}

/** The lengths of one row that are made and lie in the rack. */
function lengthsIn({ codeStem, fromMm, toMm }: RackRow): number[] {
  const family = SCREW_FAMILIES.find((each) => each.codeStem === codeStem);
  if (!family) throw new Error(`no screw family has the code ${codeStem}`);
  return family.lengthsMm.filter((length) => length >= fromMm && length <= toMm);
}

/** A column for every length in the rack, so that one length stands under another. */
function rackColumns(rows: RackRow[]): number[] {
  return [...new Set(rows.flatMap(lengthsIn))].sort((a, b) => a - b);
}
