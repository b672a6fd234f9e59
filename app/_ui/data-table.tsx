// biome-ignore-all lint/a11y/noRedundantRoles: the card layout takes `display: table` away, and with it the native roles
'use client';

import {
  type ColumnDef,
  flexRender,
  getCoreRowModel,
  getPaginationRowModel,
  getSortedRowModel,
  type Row as TableRow,
  useReactTable,
} from '@tanstack/react-table';
import Link from 'next/link';
import { type ReactNode, useMemo } from 'react';
import { classNames } from './class-names';
import styles from './data-table.module.css';
import { type CellValue, type Column, compareCells, isUnknown } from './data-table-columns';
import { useTableState } from './data-table-state';
import { DataTableTools } from './data-table-tools';
import { NotStated } from './not-stated';
import { Pager } from './pager';
import { ScrollRegion } from './scroll-region';

export type { Column } from './data-table-columns';

/**
 * A table of like things: sorting, column choice, paging past `pageSize` rows, a link per row.
 *
 * Columns carry functions, so use it from a client component and pass rows to that from the server.
 *
 * @param caption  names the table; shown unless `hideCaption`
 * @param rowKey   a stable key per row
 * @param rowHref  makes the first column a link that covers the row
 * @param rowTone  a tone bar at the row's start; the word must also be in a cell
 * @param urlKey   keeps sort, columns and page in the address as `KEY-sort`, `KEY-columns`, `KEY-page`
 * @param sort     the order at first: `code` or `-code` for descending
 * @param phone    `cards` (default): each row becomes a card below 640 px; `scroll`: stays a table and scrolls
 * @param wide     more columns than fit a desk: scrolls both ways in a region of its own, head and first column stuck
 * @param aligned  columns are as wide as their `width` says, so that tables below one another line up (from 1360 px)
 * @param tools    `false` hides the column choice
 * @param served   the rows are one page of `total`, searched, sorted and cut on the server (`served-rows`), which follows the address
 */
export function DataTable<Row>({
  caption,
  hideCaption = false,
  columns,
  rows,
  rowKey,
  rowHref,
  rowTone,
  urlKey,
  sort = '',
  phone = 'cards',
  wide = false,
  dense = false,
  aligned = false,
  tools = true,
  pageSize = 100,
  served,
  empty = 'Nothing to show.',
}: {
  caption: string;
  hideCaption?: boolean;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  rowHref?: (row: Row) => string | null;
  rowTone?: (row: Row) => 'good' | 'attention' | 'stop' | 'unknown' | 'neutral' | null;
  urlKey?: string;
  sort?: string;
  phone?: 'cards' | 'scroll';
  wide?: boolean;
  dense?: boolean;
  aligned?: boolean;
  tools?: boolean;
  pageSize?: number;
  served?: { total: number };
  empty?: ReactNode;
}) {
  const state = useTableState({ urlKey, columns, sort });
  const definitions = useMemo(() => columns.map((column) => definition(column)), [columns]);
  const data = rows as Row[]; // the table never writes to its rows; its type only lacks `readonly`
  const table = useReactTable<Row>({
    data,
    columns: definitions,
    getRowId: rowKey,
    state: {
      sorting: state.sorting,
      columnVisibility: state.visibility,
      pagination: { pageIndex: state.pageIndex, pageSize },
    },
    manualSorting: served !== undefined,
    manualPagination: served !== undefined,
    ...(served === undefined ? {} : { rowCount: served.total }),
    onSortingChange: state.onSortingChange,
    enableSortingRemoval: true,
    enableMultiSort: false,
    autoResetPageIndex: false,
    getCoreRowModel: getCoreRowModel(),
    getSortedRowModel: getSortedRowModel(),
    getPaginationRowModel: getPaginationRowModel(),
  });
  const total = served?.total ?? rows.length;
  const byId = new Map(columns.map((column) => [column.id, column]));
  const visible = table.getVisibleLeafColumns();
  const lastPage = Math.max(0, table.getPageCount() - 1);
  // A filter may leave fewer pages than the address names: show the last one, not an empty one.
  const pageIndex = Math.min(state.pageIndex, lastPage);
  if (pageIndex !== state.pageIndex)
    table.setOptions((options) => ({
      ...options,
      state: { ...options.state, pagination: { pageIndex, pageSize } },
    }));
  const shown = table.getRowModel().rows;

  return (
    <div
      className={classNames(
        styles.wrap,
        dense && styles.dense,
        aligned && styles.aligned,
        wide && styles.wide,
        phone === 'cards' && !wide && styles.cards,
      )}
    >
      {rows.length > 0 ? (
        <DataTableTools
          columns={columns}
          state={state}
          choice={tools}
          phoneSort={phone === 'cards' && !wide}
          onCaptionLine={!hideCaption}
        />
      ) : null}
      <ScrollRegion label={caption} tall={wide} className={styles.region}>
        <table className={styles.table} role="table">
          <caption className={hideCaption ? styles.captionHidden : styles.caption}>{caption}</caption>
          <thead role="rowgroup">
            <tr role="row">
              {table.getFlatHeaders().map((header) => {
                const column = byId.get(header.column.id);
                if (!column) return null;
                const direction = header.column.getIsSorted();
                return (
                  <th
                    key={header.id}
                    scope="col"
                    role="columnheader"
                    className={classNames(column.align === 'end' && styles.end, widthOf(column))}
                    aria-sort={
                      direction === 'asc' ? 'ascending' : direction === 'desc' ? 'descending' : undefined
                    }
                  >
                    {header.column.getCanSort() ? (
                      <button
                        type="button"
                        className={styles.sort}
                        onClick={header.column.getToggleSortingHandler()}
                        data-direction={direction || undefined}
                      >
                        <HeaderText column={column} />
                        <SortMark />
                      </button>
                    ) : (
                      <span className={styles.plainHead}>
                        <HeaderText column={column} />
                      </span>
                    )}
                  </th>
                );
              })}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {shown.length === 0 ? (
              <tr role="row" className={styles.emptyRow}>
                <td role="cell" colSpan={visible.length}>
                  {empty}
                </td>
              </tr>
            ) : (
              shown.map((row) => (
                <BodyRow
                  key={row.id}
                  row={row}
                  columns={byId}
                  href={rowHref?.(row.original) ?? null}
                  tone={rowTone?.(row.original) ?? null}
                />
              ))
            )}
          </tbody>
        </table>
      </ScrollRegion>
      {total > pageSize ? (
        <Pager
          label={caption}
          pageIndex={pageIndex}
          pageSize={pageSize}
          total={total}
          onPage={state.setPageIndex}
        />
      ) : null}
    </div>
  );
}

function BodyRow<Row>({
  row,
  columns,
  href,
  tone,
}: {
  row: TableRow<Row>;
  columns: ReadonlyMap<string, Column<Row>>;
  href: string | null;
  tone: string | null;
}) {
  return (
    <tr role="row" className={classNames(styles.row, href && styles.linked, tone && styles[`tone-${tone}`])}>
      {row.getVisibleCells().map((cell, index) => {
        const column = columns.get(cell.column.id);
        const content = flexRender(cell.column.columnDef.cell, cell.getContext());
        const attributes = {
          className: classNames(column?.align === 'end' && styles.end, column && widthOf(column)),
          'data-label': column ? column.header + (column.unit ? ` (${column.unit})` : '') : undefined,
        };
        return index === 0 ? (
          <th key={cell.id} scope="row" role="rowheader" {...attributes}>
            {href ? (
              <Link href={href} prefetch={false} className={styles.rowLink}>
                {content}
              </Link>
            ) : (
              content
            )}
          </th>
        ) : (
          <td key={cell.id} role="cell" {...attributes}>
            {/* One child, so that a card's label and value stay two columns whatever the cell holds. */}
            <div>{content}</div>
          </td>
        );
      })}
    </tr>
  );
}

function definition<Row>(column: Column<Row>): ColumnDef<Row, CellValue> {
  return {
    id: column.id,
    header: column.header,
    // TanStack puts `undefined` last in both directions, and only `undefined`: hence null becomes undefined here.
    accessorFn: (row) => column.value(row) ?? undefined,
    sortUndefined: 'last',
    sortingFn: (a, b, id) => compareCells(a.getValue<CellValue>(id), b.getValue<CellValue>(id)),
    sortDescFirst: false,
    enableSorting: column.sortable !== false,
    cell: ({ row }) => (column.cell ? column.cell(row.original) : plainCell(column.value(row.original))),
  };
}

function plainCell(value: CellValue): ReactNode {
  if (isUnknown(value)) return <NotStated />;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return value;
}

function HeaderText<Row>({ column }: { column: Column<Row> }) {
  return (
    <span>
      {column.header}
      {column.unit ? <span className={styles.unit}> {column.unit}</span> : null}
    </span>
  );
}

/** A column of words that says nothing of its width keeps a readable one on a tablet; figures are as wide as they are. */
const widthOf = <Row,>({ width, align }: Column<Row>) =>
  width ? styles[width] : align === 'end' ? undefined : styles.words;

function SortMark() {
  return (
    <svg
      className={styles.sortMark}
      viewBox="0 0 10 14"
      width="10"
      height="14"
      aria-hidden="true"
      focusable="false"
    >
      <path className={styles.up} d="M5 1 9 6H1Z" />
      <path className={styles.down} d="M5 13 1 8h8Z" />
    </svg>
  );
}
