import type { SetOnFile } from '@/db/queries/sets';
import type { Item } from '@/lib/catalogue/item';
import type { Thumb } from '@/lib/documents/drawing/condense';
import type { ItemId } from '@/lib/identity/ids';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { ForeignPiece } from '@/lib/sets/countDraft';
import { layoutOf } from '@/lib/sets/layout';
import { familyWords } from '@/lib/wording/screw-families';
import { thumbOf } from '../../_parts/line-cells';

/** A line as the counter sees it. What was found before is not among it: nobody counts towards a figure. */
export interface CountLine {
  id: string;
  layer: number;
  row: number;
  slot: number;
  name: string;
  code: string;
  expected: number;
  minimum: number;
  mustHaveClass: MustHaveClass;
  partsPerPiece: number;
  thumb: Thumb | null;
}

export interface CountRack {
  id: string;
  name: string;
  lengthsUm: number[];
  rows: { family: string; cells: (string | null)[] }[];
}

export interface CountSubject {
  set: { id: string; code: string; revision: number };
  lines: CountLine[];
  layers: { layer: number; name: string; racks: CountRack[]; loose: string[] }[];
  foreign: ForeignPiece[];
  /** What a foreign piece may be: every item of the catalogue, withdrawn ones too. */
  items: { value: string; label: string; note: string }[];
}

/** Everything the counting screen needs, as plain JSON. */
export function countSubject(
  set: SetOnFile,
  layers: readonly { layer: number; name: string }[],
  catalogue: readonly Item[],
): CountSubject {
  const items = new Map<ItemId, Item>(catalogue.map((item) => [item.id, item]));
  const familyName = familyWords(catalogue);
  const layout = layoutOf(layers, set.lines, items);
  const loose = new Set(layout.flatMap((layer) => layer.loose.map(({ id }) => id)));
  return {
    set: { id: set.id, code: set.code, revision: set.revision },
    lines: set.lines.map((line): CountLine => {
      const item = items.get(line.itemId);
      return {
        id: line.id,
        layer: line.layer,
        row: line.row,
        slot: line.slot,
        name: item?.name ?? line.itemId,
        code: item?.code ?? '',
        expected: line.expected,
        minimum: line.minimum,
        mustHaveClass: line.mustHaveClass,
        partsPerPiece: item?.partsPerPiece ?? 1,
        thumb: item && loose.has(line.id) ? thumbOf(item) : null,
      };
    }),
    layers: layout
      .filter((layer) => layer.loose.length + layer.racks.length > 0)
      .map(({ layer, name, racks, loose: own }) => ({
        layer,
        name,
        loose: own.map(({ id }) => id),
        racks: racks.map((grid) => ({
          id: grid.rackItemId,
          name: items.get(grid.rackItemId)?.name ?? 'Screw rack',
          lengthsUm: grid.lengthsUm,
          rows: grid.rows.map(({ family, cells }) => ({
            family: familyName(family),
            cells: cells.map((line) => line?.id ?? null),
          })),
        })),
      })),
    foreign: set.foreign,
    items: catalogue.map(({ id, name, code }) => ({ value: id, label: name, note: code })),
  };
}
