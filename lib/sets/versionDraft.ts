import type { Item } from '../catalogue/item';
import type { ItemId, LineId } from '../identity/ids';
import type { Construct } from '../plans/plan';
import type { ConfigurationLine, ConfigurationVersion, MustHaveClass } from './configuration';

/** A line as the editor holds it: numbers as they were typed, so that nothing is rounded or cleared behind the back. */
export interface LineText {
  id: string;
  itemId: ItemId;
  rackItemId: ItemId | null;
  layer: number;
  row: string;
  slot: string;
  expected: string;
  minimum: string;
  mustHaveClass: MustHaveClass;
  substitutes: ItemId[];
}

/** A draft as the editor holds it. */
export interface VersionText {
  layers: { layer: number; name: string }[];
  lines: LineText[];
  promises: { name: string; construct: Construct }[];
  basketItemId: ItemId | null;
  containerItemId: ItemId | null;
  note: string;
}

export function textOf(version: ConfigurationVersion, note: string | null): VersionText {
  return {
    layers: version.layers,
    lines: version.lines.map((line) => ({
      ...line,
      row: String(line.row),
      slot: String(line.slot),
      expected: String(line.expected),
      minimum: String(line.minimum),
    })),
    promises: version.promises,
    basketItemId: version.basketItemId,
    containerItemId: version.containerItemId,
    note: note ?? '',
  };
}

/** The draft as it is sent: what is no whole number goes as it is, and is refused with its path. */
export function entryOf({ lines, note, ...rest }: VersionText) {
  return {
    ...rest,
    note: note.trim() === '' ? null : note,
    lines: lines.map((line) => ({
      ...line,
      row: whole(line.row),
      slot: whole(line.slot),
      expected: whole(line.expected),
      minimum: whole(line.minimum),
    })),
  };
}

const whole = (text: string): number | string => (/^\d{1,4}$/.test(text.trim()) ? Number(text) : text);

/** A new line at the end of a layer, in a row of its own. A person says how many and how much it matters. */
export function newLine(id: string, itemId: ItemId, layer: number, lines: readonly LineText[]): LineText {
  return {
    id,
    itemId,
    rackItemId: null,
    layer,
    row: String(nextRow(layer, lines)),
    slot: '1',
    expected: '1',
    minimum: '0',
    mustHaveClass: 3,
    substitutes: [],
  };
}

/** One row of a rack: a cell for each current length of a screw family that the rack does not have yet. */
export function familyCells(
  family: string,
  rackItemId: ItemId,
  layer: number,
  draft: Pick<VersionText, 'lines'>,
  screws: readonly Item[],
  newId: () => string,
): LineText[] {
  const inRack = draft.lines.filter((line) => line.layer === layer && line.rackItemId === rackItemId);
  const own = screws
    .filter((item) => item.kind === 'screw' && item.screwFamily === family && item.status === 'current')
    .sort((a, b) => lengthOf(a) - lengthOf(b));
  const known = new Set(inRack.map(({ itemId }) => itemId));
  const sameRow = inRack.find(({ itemId }) => own.some((item) => item.id === itemId));
  const row = sameRow?.row ?? String(nextRow(layer, draft.lines));
  const taken = draft.lines
    .filter((line) => line.layer === layer && line.row === row)
    .map(({ slot }) => Number(slot));
  let slot = Math.max(0, ...taken);
  return own
    .filter(({ id }) => !known.has(id))
    .map((item) => {
      slot += 1;
      return {
        ...newLine(newId(), item.id, layer, draft.lines),
        rackItemId,
        row,
        slot: String(slot),
      };
    });
}

const lengthOf = (item: Item): number => (item.kind === 'screw' ? (item.lengthUm ?? 0) : 0);

function nextRow(layer: number, lines: readonly LineText[]): number {
  return Math.max(0, ...lines.filter((line) => line.layer === layer).map(({ row }) => Number(row) || 0)) + 1;
}

/** Lines whose numbers can be read, as the layout and the comparison need them. */
export function readableLines(lines: readonly LineText[]): ConfigurationLine[] {
  return lines.map((line) => ({
    ...line,
    id: line.id as LineId,
    row: Number(line.row) || 0,
    slot: Number(line.slot) || 0,
    expected: Number(line.expected) || 0,
    minimum: Number(line.minimum) || 0,
  }));
}
