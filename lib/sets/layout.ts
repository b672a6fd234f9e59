import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { ConfigurationLine } from './configuration';

/** One rack as a length grid: a row for each screw family, a column for each length that any row has. */
export interface RackGrid<L> {
  rackItemId: ItemId;
  lengthsUm: number[];
  rows: { family: string; cells: (L | null)[] }[];
}

export interface LayerLayout<L> {
  layer: number;
  name: string;
  racks: RackGrid<L>[];
  /** Everything that stands in no length grid, by row and slot. */
  loose: L[];
}

/**
 * Lines by layer, those that stand in racks as length grids. A racked line that is no screw of a stated length, or whose
 * cell another line of the same family and length has, stands among the loose lines, so that none is ever hidden.
 */
export function layoutOf<L extends ConfigurationLine>(
  layers: readonly { layer: number; name: string }[],
  lines: readonly L[],
  items: ReadonlyMap<ItemId, Item>,
): LayerLayout<L>[] {
  const named = new Map(layers.map(({ layer, name }) => [layer, name]));
  const numbers = [...new Set([...named.keys(), ...lines.map(({ layer }) => layer)])].sort((a, b) => a - b);
  return numbers.map((layer) => {
    const own = lines.filter((line) => line.layer === layer).sort((a, b) => a.row - b.row || a.slot - b.slot);
    const rackIds = [...new Set(own.flatMap(({ rackItemId }) => rackItemId ?? []))];
    const racks = rackIds.map((id) =>
      gridOf(
        id,
        own.filter(({ rackItemId }) => rackItemId === id),
        items,
      ),
    );
    const gridded = new Set(racks.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells)));
    return {
      layer,
      name: named.get(layer) ?? `Layer ${layer}`,
      racks: racks.filter(({ rows }) => rows.length > 0),
      loose: own.filter((line) => !gridded.has(line)),
    };
  });
}

function gridOf<L extends ConfigurationLine>(
  rackItemId: ItemId,
  lines: readonly L[],
  items: ReadonlyMap<ItemId, Item>,
): RackGrid<L> {
  const families = new Map<string, Map<number, L>>();
  for (const line of lines) {
    const item = items.get(line.itemId);
    if (item?.kind !== 'screw' || item.lengthUm === null) continue;
    const row = families.get(item.screwFamily) ?? new Map<number, L>();
    families.set(item.screwFamily, row);
    if (!row.has(item.lengthUm)) row.set(item.lengthUm, line);
  }
  const lengthsUm = [...new Set([...families.values()].flatMap((row) => [...row.keys()]))].sort(
    (a, b) => a - b,
  );
  return {
    rackItemId,
    lengthsUm,
    rows: [...families].map(([family, row]) => ({
      family,
      cells: lengthsUm.map((length) => row.get(length) ?? null),
    })),
  };
}
