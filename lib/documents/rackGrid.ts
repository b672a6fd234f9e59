import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import { groupBy } from '../lists/groupBy';
import { writeMm } from '../quantities/length';
import type { ConfigurationLine } from '../sets/configuration';
import { countSheetWords as words } from '../wording/paper';
import { mustHaveMark } from './mustHaveMark';
import type { RackCell, RackGrid, RackRow } from './sheet';

/**
 * The cells of one screw rack as a grid: a row for each row of the rack, a column for each of its slots, headed by the
 * length where every screw in that column has the same.
 */
export function rackGrid(
  name: string,
  cells: readonly ConfigurationLine[],
  items: ReadonlyMap<ItemId, Item>,
): RackGrid {
  const slots = [...new Set(cells.map(({ slot }) => slot))].sort((a, b) => a - b);
  const inRows = groupBy(cells, ({ row }) => row);
  const rows = [...new Set(cells.map(({ row }) => row))].sort((a, b) => a - b);
  const heads = slots.map((slot) =>
    commonLength(
      cells.filter((cell) => cell.slot === slot),
      items,
    ),
  );
  const allByLength = heads.every((head) => head !== null);
  return {
    kind: 'rack',
    caption: words.rackCaption(name),
    columnsAre: allByLength ? 'mm' : 'slot',
    columns: slots.map((slot, at) => (allByLength ? (heads[at] ?? '') : String(slot))),
    rows: rows.map((row): RackRow => {
      const mine = inRows.get(row) ?? [];
      const classes = new Set(mine.map(({ mustHaveClass }) => mustHaveClass));
      const common = classes.size === 1 ? mine[0]?.mustHaveClass : undefined;
      return {
        label: rowLabel(mine, items),
        mark: common ? mustHaveMark(common) : null,
        cells: slots.map((slot): RackCell | null => {
          const line = mine.find((one) => one.slot === slot);
          if (!line) return null;
          return {
            expected: line.expected,
            minimum: line.minimum,
            label: allByLength ? null : cellLabel(items.get(line.itemId), line.itemId),
            mark: common ? null : mustHaveMark(line.mustHaveClass),
          };
        }),
      };
    }),
    writeIn: [words.columns.before, words.columns.added, words.columns.after],
  };
}

/** `16`, where all these screws are 16 mm long; `null` where they differ or one has no length. */
function commonLength(cells: readonly ConfigurationLine[], items: ReadonlyMap<ItemId, Item>): string | null {
  const lengths = new Set(cells.map(({ itemId }) => lengthOf(items.get(itemId))));
  const [only] = lengths;
  return lengths.size === 1 && only !== undefined && only !== null ? writeMm(only) : null;
}

function lengthOf(item: Item | undefined): number | null {
  return item?.kind === 'screw' || item?.kind === 'guideWire' ? item.lengthUm : null;
}

function cellLabel(item: Item | undefined, id: ItemId): string {
  const length = lengthOf(item);
  return length === null ? (item?.code ?? id) : `${writeMm(length)} mm`;
}

/** The screw family where the whole row is of one; else what lies there, by name. */
function rowLabel(cells: readonly ConfigurationLine[], items: ReadonlyMap<ItemId, Item>): string {
  const names = cells.map(({ itemId }) => {
    const item = items.get(itemId);
    return item?.kind === 'screw' ? item.screwFamily : (item?.name ?? itemId);
  });
  return [...new Set(names)].join(', ');
}
