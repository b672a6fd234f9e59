'use client';

import type { OnChangeFn, SortingState, VisibilityState } from '@tanstack/react-table';
import { useMemo } from 'react';
import type { Column } from './data-table-columns';
import { useUrlParam } from './url-state';

export type TableState = {
  sorting: SortingState;
  onSortingChange: OnChangeFn<SortingState>;
  sortText: string;
  setSortText: (text: string) => void;
  visibility: VisibilityState;
  setVisible: (columnId: string, visible: boolean) => void;
  resetColumns: () => void;
  columnsChosen: boolean;
  pageIndex: number;
  setPageIndex: (index: number) => void;
};

/**
 * Sort, columns and page of one table, in the address when `urlKey` is given and in memory otherwise.
 * What the address says is checked against the columns there are; the rest of it is ignored.
 */
export function useTableState<Row>({
  urlKey,
  columns,
  sort,
}: {
  urlKey: string | undefined;
  columns: readonly Column<Row>[];
  sort: string;
}): TableState {
  const key = (name: string) => (urlKey === undefined ? '' : `${urlKey}-${name}`);
  const [sortText, writeSortText] = useUrlParam(key('sort'), sort);
  const [columnText, setColumnText] = useUrlParam(key('columns'), '');
  const [pageText, setPageText] = useUrlParam(key('page'), '1');

  const sorting = useMemo(() => parseSort(sortText, columns), [sortText, columns]);
  const visibility = useMemo(() => parseColumns(columnText, columns), [columnText, columns]);
  const page = Number.parseInt(pageText, 10);

  function setSortText(text: string) {
    writeSortText(text);
    setPageText('1');
  }

  return {
    sorting,
    sortText,
    setSortText,
    onSortingChange: (update) => {
      const [next] = typeof update === 'function' ? update(sorting) : update;
      setSortText(next ? (next.desc ? `-${next.id}` : next.id) : '');
    },
    visibility,
    setVisible: (columnId, visible) => {
      const ids = columns
        .map((column) => column.id)
        .filter((id) => (id === columnId ? visible : visibility[id] !== false));
      setColumnText(ids.join('.'));
    },
    resetColumns: () => setColumnText(''),
    columnsChosen: columnText !== '',
    pageIndex: Number.isFinite(page) && page > 0 ? page - 1 : 0,
    setPageIndex: (index) => setPageText(String(index + 1)),
  };
}

function parseSort<Row>(text: string, columns: readonly Column<Row>[]): SortingState {
  const desc = text.startsWith('-');
  const id = desc ? text.slice(1) : text;
  return columns.some((column) => column.id === id && column.sortable !== false) ? [{ id, desc }] : [];
}

function parseColumns<Row>(text: string, columns: readonly Column<Row>[]): VisibilityState {
  const chosen = text === '' ? null : new Set(text.split('.'));
  return Object.fromEntries(
    columns.map((column, index) => {
      if (index === 0 || column.hideable === false) return [column.id, true];
      return [column.id, chosen ? chosen.has(column.id) : column.hiddenAtFirst !== true];
    }),
  );
}
