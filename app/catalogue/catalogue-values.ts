import type { CatalogueRow } from '@/db/queries/catalogueSearch';
import { KIND_FIELDS } from '@/lib/catalogue/form/fields';
import type { ItemKind } from '@/lib/catalogue/item';
import type { Material, Side } from '@/lib/catalogue/measures';
import { SEARCH_NAMES } from '@/lib/catalogue/search';
import { mmFromMicrons } from '@/lib/quantities/length';
import { KIND_WORDS, MATERIAL_WORDS, SIDE_WORDS } from '@/lib/wording/catalogue';

/** What of the address the list is served by. */
export const CATALOGUE_NAMES = [...SEARCH_NAMES, 'list-sort', 'list-page'] as const;

/** As many rows as one page of the list holds. */
export const ITEMS_A_PAGE = 30;

/** Kinds that have such a dimension at all; the others show a dash, which is not the same as not stated. */
const NONE = '–';
const HAS_DIAMETER: ReadonlySet<string> = new Set<ItemKind>([
  'screw',
  'tap',
  'drillBit',
  'guideWire',
  'drillSleeve',
]);
const HAS_LENGTH: ReadonlySet<string> = new Set(
  Object.entries(KIND_FIELDS).flatMap(([kind, fields]) =>
    fields.some(({ key }) => key === 'lengthUm') ? [kind] : [],
  ),
);

/** What each column of the list is sorted by, here and on the server. */
export const CATALOGUE_VALUES = {
  code: (row: CatalogueRow) => row.code,
  name: (row: CatalogueRow) => row.name,
  kind: (row: CatalogueRow) => KIND_WORDS[row.kind as ItemKind],
  maker: (row: CatalogueRow) => row.maker,
  diameter: (row: CatalogueRow) => (HAS_DIAMETER.has(row.kind) ? inMm(row.diameterUm) : NONE),
  length: (row: CatalogueRow) => (HAS_LENGTH.has(row.kind) ? inMm(row.lengthUm) : NONE),
  side: (row: CatalogueRow) => (row.side === null ? null : SIDE_WORDS[row.side as Side]),
  material: (row: CatalogueRow) => (row.material === null ? null : MATERIAL_WORDS[row.material as Material]),
  sterile: (row: CatalogueRow) => (row.suppliedSterile === null ? null : row.suppliedSterile ? 'yes' : 'no'),
  mass: (row: CatalogueRow) => row.massGrams,
  cost: (row: CatalogueRow) => (row.unitCostPence === null ? null : row.unitCostPence / 100),
  gtin: (row: CatalogueRow) => row.gtin,
  missing: (row: CatalogueRow) => row.missing,
  status: (row: CatalogueRow) => row.status,
};

function inMm(um: number | null): number | null {
  return um === null ? null : mmFromMicrons(um);
}
