import { type Item, item as itemSchema } from '@/lib/catalogue/item';
import { writeMm } from '@/lib/quantities/length';
import type { items } from '../schema';

type ItemRow = typeof items.$inferSelect;
type ItemInsert = typeof items.$inferInsert;

/** A row as a catalogue item, parsed: what the database holds is checked on the way in. */
export function itemFromRow(row: ItemRow): Item {
  const {
    detail,
    searchText: _s,
    diameterUm: _d,
    lengthUm: _l,
    screwFamily: _f,
    revision: _r,
    ...shared
  } = row;
  return itemSchema.parse({ ...(detail as object), ...shared });
}

/** A catalogue item as the row to write, with the text that search reads. */
export function rowFromItem(item: Item, revision: number, makerName: string): ItemInsert {
  const {
    id,
    code,
    kind,
    name,
    nickname,
    makerId,
    side,
    material,
    suppliedSterile,
    use,
    reprocessingLimit,
    massGrams,
    unitCostPence,
    packMultiple,
    gtin,
    partsPerPiece,
    status,
    ...detail
  } = item;
  return {
    id,
    code,
    kind,
    name,
    nickname,
    makerId,
    side,
    material,
    suppliedSterile,
    use,
    reprocessingLimit,
    massGrams,
    unitCostPence,
    packMultiple,
    gtin,
    partsPerPiece,
    status,
    detail,
    searchText: searchTextOf(item, makerName),
    revision,
  };
}

/** Words people type to find an item: its names and numbers, its kind in plain words, its dimensions in millimetres. */
function searchTextOf(item: Item, makerName: string): string {
  const sizes = Object.entries(item)
    .filter((entry): entry is [string, number] => entry[0].endsWith('Um') && typeof entry[1] === 'number')
    .map(([, um]) => writeMm(um));
  const kind = item.kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const bores =
    item.kind === 'drillSleeve' ? item.ends.flatMap((end) => (end.boreUm ? [writeMm(end.boreUm)] : [])) : [];
  const holes = item.kind === 'plate' ? [`${item.holes.length}-hole`] : [];
  const words = [
    item.code,
    item.name,
    item.nickname,
    makerName,
    kind,
    item.gtin,
    item.side,
    ...sizes,
    ...bores,
    ...holes,
  ];
  return words.filter(Boolean).join(' ');
}
