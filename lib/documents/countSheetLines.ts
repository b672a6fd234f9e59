import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { HeldLine } from '../sets/holdings';
import { countSheetWords as words } from '../wording/paper';
import type { CountSheetOf } from './countSheet';
import { emptyTable } from './emptyTable';
import { rowDrawings } from './itemDrawing';
import { itemWarnings } from './itemWarnings';
import { mustHaveMark } from './mustHaveMark';
import { rackGrid } from './rackGrid';
import { type Block, type Cell, type Table, text, textCell } from './sheet';

/** Room for a drawing in a row, in millimetres of paper. */
const DRAWING = { widthMm: 36, heightMm: 11 };

/** One layer of a count sheet: its loose lines as a table, each rack as a grid, with empty cells to write in. */
export function layerBlocks(layer: number, { set, version, items }: CountSheetOf): Block[] {
  const lines = set.lines.filter((line) => line.layer === layer);
  const name = version.layers.find((one) => one.layer === layer)?.name;
  const pieces = lines.reduce((sum, { expected }) => sum + expected, 0);
  const loose = lines.filter(({ rackItemId }) => rackItemId === null);
  const racks = [...new Set(lines.flatMap(({ rackItemId }) => rackItemId ?? []))];
  return [
    {
      kind: 'heading',
      level: 2,
      text: name === undefined ? words.layerUnnamed(layer) : words.layer(layer, name),
      note: words.layerNote(lines.length, pieces),
    },
    ...(loose.length > 0 ? [lineTable(layer, loose, items)] : []),
    ...racks.flatMap((rackItemId): Block[] => [
      { kind: 'heading', level: 3, text: items.get(rackItemId)?.name ?? rackItemId, note: null },
      rackGrid(
        items.get(rackItemId)?.name ?? rackItemId,
        lines.filter((line) => line.rackItemId === rackItemId),
        items,
      ),
      emptyTable(words.rackUnsound, [{ head: words.rackUnsound, widthMm: null }], 1),
    ]),
  ];
}

function lineTable(layer: number, lines: readonly HeldLine[], items: ReadonlyMap<ItemId, Item>): Table {
  const { columns } = words;
  const known = lines.flatMap(({ itemId }) => items.get(itemId) ?? []);
  const drawings = rowDrawings(known, DRAWING);
  const narrow = (head: string, widthMm: number) => ({ head, widthMm, align: 'centre' as const });
  return {
    kind: 'table',
    caption: words.tableCaption(layer),
    columns: [
      narrow(columns.place, 14),
      { head: columns.drawing, widthMm: DRAWING.widthMm + 4, align: 'left' },
      { head: columns.item, widthMm: null, align: 'left' },
      narrow(columns.mustHaveClass, 10),
      narrow(columns.expected, 17),
      narrow(columns.before, 14),
      narrow(columns.added, 14),
      narrow(columns.after, 14),
      { head: columns.unsound, widthMm: 22, align: 'left' },
    ],
    rowHeader: 2,
    rowMm: 10.5,
    rows: lines.map((line): Cell[] => [
      textCell(text(`${line.row} · ${line.slot}`, 'large', true)),
      drawings.get(line.itemId) ?? textCell(text('no drawing', 'small')),
      itemCell(line, items),
      { kind: 'mark', mark: mustHaveMark(line.mustHaveClass) },
      textCell(text(String(line.expected), 'key', true), text(words.minimum(line.minimum), 'small')),
      { kind: 'blank' },
      { kind: 'blank' },
      { kind: 'blank' },
      { kind: 'blank' },
    ]),
  };
}

function itemCell(line: HeldLine, items: ReadonlyMap<ItemId, Item>): Cell {
  const item = items.get(line.itemId);
  const substitutes = line.substitutes.map((id) => items.get(id)?.code ?? id);
  return textCell(
    text(item?.name ?? line.itemId, 'body', true),
    ...(item?.nickname ? [text(`“${item.nickname}”`, 'small')] : []),
    text(item?.code ?? '', 'small'),
    ...itemWarnings(item),
    ...(item && item.partsPerPiece > 1 ? [text(words.parts(item.partsPerPiece), 'small', true)] : []),
    ...(substitutes.length > 0 ? [text(words.substitutes(substitutes.join(', ')), 'small')] : []),
  );
}
