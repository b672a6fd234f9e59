import type { Column } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { CatalogueRow } from '@/db/queries/catalogueSearch';
import { KIND_FIELDS } from '@/lib/catalogue/form/fields';
import type { ItemKind } from '@/lib/catalogue/item';
import type { Material, Side } from '@/lib/catalogue/measures';
import { mmFromMicrons } from '@/lib/quantities/length';
import { KIND_WORDS, MATERIAL_WORDS, SIDE_WORDS } from '@/lib/wording/catalogue';
import styles from './catalogue.module.css';
import { itemStatusTag } from './item-status';
import { Thumb } from './thumb';

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

/** The catalogue list's columns; those less often asked for are hidden at first. */
export const columns: Column<CatalogueRow>[] = [
  { id: 'code', header: 'Code', value: (row) => row.code, width: 'fit' },
  {
    id: 'drawing',
    header: 'Drawing',
    value: () => '',
    cell: (row) => <Thumb id={row.id} revision={row.revision} />,
    sortable: false,
    width: 'fit',
  },
  {
    id: 'name',
    header: 'Name',
    value: (row) => row.name,
    cell: (row) => (
      <>
        {row.name}
        {row.nickname ? <span className={styles.nickname}> “{row.nickname}”</span> : null}
      </>
    ),
    width: 'wide',
  },
  { id: 'kind', header: 'Kind', value: (row) => KIND_WORDS[row.kind as ItemKind] },
  { id: 'maker', header: 'Maker', value: (row) => row.maker },
  {
    id: 'diameter',
    header: 'Diameter',
    unit: 'mm',
    align: 'end',
    value: (row) => (HAS_DIAMETER.has(row.kind) ? inMm(row.diameterUm) : NONE),
  },
  {
    id: 'length',
    header: 'Length',
    unit: 'mm',
    align: 'end',
    value: (row) => (HAS_LENGTH.has(row.kind) ? inMm(row.lengthUm) : NONE),
  },
  {
    id: 'side',
    header: 'Side',
    value: (row) => (row.side === null ? null : SIDE_WORDS[row.side as Side]),
    hiddenAtFirst: true,
  },
  {
    id: 'material',
    header: 'Material',
    value: (row) => (row.material === null ? null : MATERIAL_WORDS[row.material as Material]),
    hiddenAtFirst: true,
  },
  {
    id: 'sterile',
    header: 'Supplied sterile',
    value: (row) => (row.suppliedSterile === null ? null : row.suppliedSterile ? 'yes' : 'no'),
    hiddenAtFirst: true,
  },
  { id: 'mass', header: 'Mass', unit: 'g', align: 'end', value: (row) => row.massGrams, hiddenAtFirst: true },
  {
    id: 'cost',
    header: 'Unit cost',
    unit: '£',
    align: 'end',
    value: (row) => (row.unitCostPence === null ? null : row.unitCostPence / 100),
    cell: (row) => (row.unitCostPence === null ? null : (row.unitCostPence / 100).toFixed(2)),
    hiddenAtFirst: true,
  },
  { id: 'gtin', header: 'GTIN', value: (row) => row.gtin, hiddenAtFirst: true },
  {
    id: 'missing',
    header: 'Not stated',
    value: (row) => row.missing,
    cell: (row) =>
      row.missing === 0 ? (
        'nothing'
      ) : (
        <Status tone="unknown" look="plain">
          {row.missing === 1 ? '1 value' : `${row.missing} values`}
        </Status>
      ),
  },
  { id: 'status', header: 'Status', value: (row) => row.status, cell: (row) => itemStatusTag(row.status) },
];

function inMm(um: number | null): number | null {
  return um === null ? null : mmFromMicrons(um);
}
