import type { Column } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { CatalogueRow } from '@/db/queries/catalogueSearch';
import styles from './catalogue.module.css';
import { CATALOGUE_VALUES } from './catalogue-values';
import { itemStatusTag } from './item-status';
import { Thumb } from './thumb';

/** The catalogue list's columns; those less often asked for are hidden at first. */
export const columns: Column<CatalogueRow>[] = [
  { id: 'code', header: 'Code', value: CATALOGUE_VALUES.code, width: 'fit' },
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
    value: CATALOGUE_VALUES.name,
    cell: (row) => (
      <>
        {row.name}
        {row.nickname ? <span className={styles.nickname}> “{row.nickname}”</span> : null}
      </>
    ),
    width: 'wide',
  },
  { id: 'kind', header: 'Kind', value: CATALOGUE_VALUES.kind },
  { id: 'maker', header: 'Maker', value: CATALOGUE_VALUES.maker },
  {
    id: 'diameter',
    header: 'Diameter',
    unit: 'mm',
    align: 'end',
    value: CATALOGUE_VALUES.diameter,
  },
  {
    id: 'length',
    header: 'Length',
    unit: 'mm',
    align: 'end',
    value: CATALOGUE_VALUES.length,
  },
  {
    id: 'side',
    header: 'Side',
    value: CATALOGUE_VALUES.side,
    hiddenAtFirst: true,
  },
  {
    id: 'material',
    header: 'Material',
    value: CATALOGUE_VALUES.material,
    hiddenAtFirst: true,
  },
  {
    id: 'sterile',
    header: 'Supplied sterile',
    value: CATALOGUE_VALUES.sterile,
    hiddenAtFirst: true,
  },
  { id: 'mass', header: 'Mass', unit: 'g', align: 'end', value: CATALOGUE_VALUES.mass, hiddenAtFirst: true },
  {
    id: 'cost',
    header: 'Unit cost',
    unit: '£',
    align: 'end',
    value: CATALOGUE_VALUES.cost,
    cell: (row) => (row.unitCostPence === null ? null : (row.unitCostPence / 100).toFixed(2)),
    hiddenAtFirst: true,
  },
  { id: 'gtin', header: 'GTIN', value: CATALOGUE_VALUES.gtin, hiddenAtFirst: true },
  {
    id: 'missing',
    header: 'Not stated',
    value: CATALOGUE_VALUES.missing,
    cell: (row) =>
      row.missing === 0 ? (
        'nothing'
      ) : (
        <Status tone="unknown" look="plain">
          {row.missing === 1 ? '1 value' : `${row.missing} values`}
        </Status>
      ),
  },
  {
    id: 'status',
    header: 'Status',
    value: CATALOGUE_VALUES.status,
    cell: (row) => itemStatusTag(row.status),
  },
];
