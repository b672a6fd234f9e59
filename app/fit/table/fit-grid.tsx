'use client';

import { type KeyboardEvent, type ReactNode, useMemo, useRef, useState } from 'react';
import { FilterBar } from '@/app/_ui/filter-bar';
import { FindingList } from '@/app/_ui/finding';
import { Glyph } from '@/app/_ui/glyph';
import { LinkButton } from '@/app/_ui/link-button';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { SearchField } from '@/app/_ui/search-field';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { useUrlParam } from '@/app/_ui/url-state';
import styles from './fit-grid.module.css';
import type { CellWord, Grid } from './grid-model';

const WORD: Record<CellWord, { tone: Tone; short: string; long: string }> = {
  fits: { tone: 'good', short: 'Fits', long: 'Fits' },
  fitsWithCaution: { tone: 'attention', short: 'Caution', long: 'Fits, with a caution' },
  doesNotFit: { tone: 'stop', short: 'No', long: 'Does not fit' },
  notEstablished: { tone: 'unknown', short: 'Not est.', long: 'Not established' },
};

type Place = { row: number; column: number };

/** The table itself: one tab stop, arrow keys within; the cell you are on is explained above. */
export function FitGrid({ caption, grid, picker }: { caption: string; grid: Grid; picker: ReactNode }) {
  const [rowText, setRowText] = useUrlParam('rows');
  const [columnText, setColumnText] = useUrlParam('columns');
  const rows = useMemo(() => matching(grid.rows, rowText), [grid.rows, rowText]);
  const columns = useMemo(() => matching(grid.columns, columnText), [grid.columns, columnText]);
  const [place, setPlace] = useState<Place>({ row: 0, column: 0 });
  const at: Place = {
    row: Math.min(place.row, rows.length - 1),
    column: Math.min(place.column, columns.length - 1),
  };
  const table = useRef<HTMLTableElement>(null);

  function move(event: KeyboardEvent<HTMLButtonElement>) {
    const next = moved(event, at, rows.length - 1, columns.length - 1);
    if (next === null) return;
    event.preventDefault();
    setPlace(next);
    table.current?.querySelector<HTMLElement>(`[data-at="${next.row} ${next.column}"]`)?.focus();
  }

  return (
    <div className={styles.wrap}>
      <FilterBar label="Narrow the table" summary={`${rows.length} rows × ${columns.length} columns`}>
        {picker}
        <SearchField name="rows" label="Rows" value={rowText} onValue={setRowText} placeholder="All rows" />
        <SearchField
          name="columns"
          label="Columns"
          value={columnText}
          onValue={setColumnText}
          placeholder="All columns"
        />
      </FilterBar>
      <Explained grid={grid} row={rows[at.row]} column={columns[at.column]} />
      {rows.length === 0 || columns.length === 0 ? (
        <p className={styles.none}>Nothing by that name. Shorten what you typed.</p>
      ) : (
        <ScrollRegion label={caption} tall className={styles.scroll}>
          <table ref={table} className={styles.grid}>
            <caption className={styles.caption}>{caption}</caption>
            <thead>
              <tr>
                <td className={styles.corner} />
                {columns.map((index) => (
                  <th key={grid.columns[index]?.key} scope="col" className={styles.columnHead}>
                    <span className={styles.turned}>
                      <span>{grid.columns[index]?.label}</span>
                      <span className={styles.note}>{grid.columns[index]?.note}</span>
                    </span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((rowIndex, row) => (
                <tr key={grid.rows[rowIndex]?.key}>
                  <th scope="row" className={styles.rowHead}>
                    <span>{grid.rows[rowIndex]?.label}</span>
                    <span className={styles.note}>{grid.rows[rowIndex]?.note}</span>
                  </th>
                  {columns.map((columnIndex, column) => {
                    const cell = grid.cells[rowIndex]?.[columnIndex];
                    if (!cell) return null;
                    const { tone, short } = WORD[cell.word];
                    const here = row === at.row && column === at.column;
                    return (
                      <td key={grid.columns[columnIndex]?.key} className={styles[tone]}>
                        <button
                          type="button"
                          tabIndex={here ? 0 : -1}
                          data-at={`${row} ${column}`}
                          aria-pressed={here}
                          className={styles.cell}
                          onFocus={() => setPlace({ row, column })}
                          onClick={(event) => event.currentTarget.focus()}
                          onKeyDown={move}
                        >
                          <Glyph tone={tone} />
                          {short}
                        </button>
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
    </div>
  );
}

/** The cell you are on: what it is, its word, and every reason. Of one height, so the table never jumps. */
function Explained({
  grid,
  row,
  column,
}: {
  grid: Grid;
  row: number | undefined;
  column: number | undefined;
}) {
  const cell = row === undefined || column === undefined ? undefined : grid.cells[row]?.[column];
  return (
    <section className={styles.explained} aria-label="Reasons" aria-live="polite">
      {cell && row !== undefined && column !== undefined ? (
        <>
          <div className={styles.explainedHead}>
            <Status tone={WORD[cell.word].tone}>{WORD[cell.word].long}</Status>
            <strong>
              {grid.rows[row]?.label} · {grid.columns[column]?.label}
            </strong>
            <span className={styles.note}>{cell.pairs.toLocaleString('en-GB')} pairs of items</span>
            <LinkButton href={cell.href} size="small">
              All rules
            </LinkButton>
          </div>
          <ScrollRegion label="Reasons in full" tall>
            <FindingList
              label="Reasons"
              empty="Every rule that governs this pair is met."
              findings={cell.why.flatMap((index) => {
                const reason = grid.reasons[index];
                if (!reason) return [];
                const outcome =
                  reason.answer === 'missing'
                    ? 'notEstablished'
                    : reason.answer === 'notMet'
                      ? 'doesNotFit'
                      : cell.word === 'doesNotFit'
                        ? 'doesNotFit'
                        : 'fits';
                return [
                  {
                    outcome,
                    severity: reason.severity,
                    sentence:
                      reason.answer === 'exception' ? `Named exception: ${reason.sentence}` : reason.sentence,
                  } as const,
                ];
              })}
            />
          </ScrollRegion>
        </>
      ) : null}
    </section>
  );
}

/** Indexes of the heads whose words hold every word typed. */
function matching(heads: Grid['rows'], typed: string): number[] {
  const words = typed.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
  return heads.flatMap(({ label, note }, index) => {
    const text = `${label} ${note}`.toLocaleLowerCase('en-GB');
    return words.every((word) => text.includes(word)) ? [index] : [];
  });
}

function moved(event: KeyboardEvent, at: Place, lastRow: number, lastColumn: number): Place | null {
  const limit = (value: number, last: number) => Math.max(0, Math.min(last, value));
  switch (event.key) {
    case 'ArrowDown':
      return { ...at, row: limit(at.row + 1, lastRow) };
    case 'ArrowUp':
      return { ...at, row: limit(at.row - 1, lastRow) };
    case 'ArrowRight':
      return { ...at, column: limit(at.column + 1, lastColumn) };
    case 'ArrowLeft':
      return { ...at, column: limit(at.column - 1, lastColumn) };
    case 'PageDown':
      return { ...at, row: limit(at.row + 10, lastRow) };
    case 'PageUp':
      return { ...at, row: limit(at.row - 10, lastRow) };
    case 'Home':
      return event.ctrlKey ? { row: 0, column: 0 } : { ...at, column: 0 };
    case 'End':
      return event.ctrlKey ? { row: lastRow, column: lastColumn } : { ...at, column: lastColumn };
    default:
      return null;
  }
}
