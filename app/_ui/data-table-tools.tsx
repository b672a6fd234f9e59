'use client';

import { useCallback, useId, useRef, useState } from 'react';
import { Button } from './button';
import { classNames } from './class-names';
import type { Column } from './data-table-columns';
import type { TableState } from './data-table-state';
import styles from './data-table-tools.module.css';
import fieldStyles from './field.module.css';
import { useDismiss } from './use-dismiss';

/** Above a table: which columns to show, and, where heads are gone (cards on a phone), what to sort by. */
export function DataTableTools<Row>({
  columns,
  state,
  choice,
  phoneSort,
  onCaptionLine,
}: {
  columns: readonly Column<Row>[];
  state: TableState;
  choice: boolean;
  phoneSort: boolean;
  onCaptionLine: boolean;
}) {
  const sortId = useId();
  const listId = useId();
  const [open, setOpen] = useState(false);
  const panel = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const close = useCallback((byEscape: boolean) => {
    setOpen(false);
    if (byEscape) opener.current?.focus();
  }, []);
  useDismiss(open, panel, close);
  const hideable = columns.filter((column, index) => index > 0 && column.hideable !== false);
  const sortable = columns.filter((column) => column.sortable !== false);
  const offersChoice = choice && hideable.length > 1;
  if (!offersChoice && !phoneSort) return null;
  return (
    <div className={classNames(styles.tools, onCaptionLine && styles.onCaptionLine)} data-print="no">
      {phoneSort && sortable.length > 0 ? (
        <div className={styles.phoneSort}>
          <label htmlFor={sortId}>Sort by</label>
          <div className={fieldStyles.selectFrame}>
            <select
              id={sortId}
              className={`${fieldStyles.control} ${fieldStyles.select}`}
              value={state.sortText}
              onChange={(event) => state.setSortText(event.target.value)}
            >
              <option value="">As listed</option>
              {sortable.flatMap((column) => [
                <option key={column.id} value={column.id}>
                  {column.header}, ascending
                </option>,
                <option key={`-${column.id}`} value={`-${column.id}`}>
                  {column.header}, descending
                </option>,
              ])}
            </select>
          </div>
        </div>
      ) : null}
      {offersChoice ? (
        <div ref={panel} className={styles.columns}>
          <button
            ref={opener}
            type="button"
            className={styles.columnsOpener}
            aria-expanded={open}
            aria-controls={listId}
            onClick={() => setOpen(!open)}
          >
            Columns
          </button>
          <fieldset id={listId} hidden={!open} className={styles.columnList}>
            <legend>Show these columns</legend>
            {hideable.map((column) => (
              <label key={column.id} className={styles.columnChoice}>
                <input
                  type="checkbox"
                  checked={state.visibility[column.id] !== false}
                  onChange={(event) => state.setVisible(column.id, event.target.checked)}
                />
                {column.header}
              </label>
            ))}
            {state.columnsChosen ? (
              <Button size="small" kind="quiet" onClick={state.resetColumns}>
                Back to the usual columns
              </Button>
            ) : null}
          </fieldset>
        </div>
      ) : null}
    </div>
  );
}
