import type { SetOnFile } from '@/db/queries/sets';
import type { AsideRoute } from '@/lib/bench/act';
import { lookAlikesOf } from '@/lib/bench/lookAlikes';
import { routesFor } from '@/lib/bench/routes';
import type { Item } from '@/lib/catalogue/item';
import type { Thumb } from '@/lib/documents/drawing/condense';
import type { ItemId } from '@/lib/identity/ids';
import { writeMm } from '@/lib/quantities/length';
import type { MustHaveClass } from '@/lib/sets/configuration';
import { layoutOf } from '@/lib/sets/layout';
import { LIKENESS_WORDS } from '@/lib/wording/bench';
import { familyWords } from '@/lib/wording/screw-families';
import { thumbOf } from '../../_parts/line-cells';

/** A line as the counter sees it. What anybody found before is not among it: nobody counts towards a figure. */
export interface BenchLine {
  id: string;
  itemId: string;
  layer: number;
  place: string;
  name: string;
  code: string;
  /** In a rack: the length alone, as its column says it. */
  lengthMm: string | null;
  expected: number;
  mustHaveClass: MustHaveClass;
  partsPerPiece: number;
  thumb: Thumb | null;
  routes: readonly AsideRoute[];
  /** Items a piece of it is easily taken for; a refill then needs two people. */
  lookAlikes: string[];
}

export interface BenchRack {
  id: string;
  name: string;
  lengthsMm: string[];
  rows: { family: string; cells: (string | null)[] }[];
}

export interface BenchLayer {
  layer: number;
  name: string;
  racks: BenchRack[];
  /** Lines in no rack, by row of the layer. */
  rows: string[][];
}

export interface BenchSubject {
  set: { id: string; code: string };
  lines: BenchLine[];
  layers: BenchLayer[];
  /** What a foreign piece may be: every item of the catalogue, withdrawn ones too. */
  items: { value: string; label: string; note: string }[];
}

const MOST_NAMED = 4;

/**
 * Everything the bench needs, as plain JSON.
 *
 * @param only the lines a settling is about; `null` for all
 */
export function benchSubject(
  set: SetOnFile,
  layers: readonly { layer: number; name: string }[],
  catalogue: readonly Item[],
  only: ReadonlySet<string> | null,
): BenchSubject {
  const items = new Map<ItemId, Item>(catalogue.map((item) => [item.id, item]));
  const familyName = familyWords(catalogue);
  const lines = set.lines.filter(({ id }) => only === null || only.has(id));
  const layout = layoutOf(layers, lines, items);
  const loose = new Set(layout.flatMap((layer) => layer.loose.map(({ id }) => id)));
  return {
    set: { id: set.id, code: set.code },
    lines: lines.map((line): BenchLine => {
      const item = items.get(line.itemId);
      const likes = item ? lookAlikesOf(item, catalogue) : [];
      return {
        id: line.id,
        itemId: line.itemId,
        layer: line.layer,
        place: `row ${line.row}, slot ${line.slot}`,
        name: item?.name ?? line.itemId,
        code: item?.code ?? '',
        lengthMm:
          item?.kind === 'screw' && item.lengthUm !== null && !loose.has(line.id)
            ? writeMm(item.lengthUm)
            : null,
        expected: line.expected,
        mustHaveClass: line.mustHaveClass,
        partsPerPiece: item?.partsPerPiece ?? 1,
        thumb: item ? thumbOf(item) : null,
        routes: item ? routesFor(item) : ['repair', 'discard'],
        lookAlikes: likes
          .slice(0, MOST_NAMED)
          .map(({ item: other, because }) => `${other.code} (${LIKENESS_WORDS[because]})`),
      };
    }),
    layers: layout
      .filter((layer) => layer.loose.length + layer.racks.length > 0)
      .map(({ layer, name, racks, loose: own }) => ({
        layer,
        name,
        rows: [...new Set(own.map(({ row }) => row))].map((row) =>
          own.filter((line) => line.row === row).map(({ id }) => id),
        ),
        racks: racks.map((grid) => ({
          id: grid.rackItemId,
          name: items.get(grid.rackItemId)?.name ?? 'Screw rack',
          lengthsMm: grid.lengthsUm.map(writeMm),
          rows: grid.rows.map(({ family, cells }) => ({
            family: familyName(family),
            cells: cells.map((line) => line?.id ?? null),
          })),
        })),
      })),
    items: catalogue.map(({ id, name, code }) => ({ value: id, label: name, note: code })),
  };
}
