import type { ReactNode } from 'react';
import { Disclosure } from '@/app/_ui/disclosure';
import { LinkButton } from '@/app/_ui/link-button';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { type FigureTable, shownCell } from '@/lib/documents/figureTable';
import styles from './charts.module.css';

/**
 * A chart with its table beneath and the way to take the figures along. Every chart stands in one, so that none is the only
 * place of what it shows.
 *
 * @param file address of the table as a file, without how: `&as=csv` or `&as=xlsx` is added
 */
export function ChartFigure({
  children,
  table,
  file,
  note,
  withoutTable = false,
}: {
  children: ReactNode;
  table: FigureTable;
  file: string;
  note?: ReactNode;
  /** What it holds is a table already. */
  withoutTable?: boolean;
}) {
  return (
    <figure className={styles.figure}>
      {children}
      {note ? <figcaption className={styles.caption}>{note}</figcaption> : null}
      {withoutTable ? null : (
        <Disclosure summary="As a table" plain>
          <ScrollRegion label={table.caption}>
            <table className={styles.table}>
              <caption>{table.caption}</caption>
              <thead>
                <tr>
                  {table.columns.map(({ header, kind }) => (
                    <th key={header} scope="col" className={kind === 'text' ? undefined : styles.figures}>
                      {header}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {table.rows.map((cells) => (
                  <tr key={cells.join('|')}>
                    {cells.map((cell, at) => {
                      const column = table.columns[at];
                      return at === 0 ? (
                        <th key={column?.header} scope="row">
                          {shownCell('text', cell)}
                        </th>
                      ) : (
                        <td
                          key={column?.header}
                          className={column?.kind === 'text' ? undefined : styles.figures}
                        >
                          {shownCell(column?.kind ?? 'text', cell)}
                        </td>
                      );
                    })}
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
        </Disclosure>
      )}
      <p className={styles.files} data-print="no">
        <LinkButton href={`${file}&as=csv`} size="small" download>
          CSV
        </LinkButton>
        <LinkButton href={`${file}&as=xlsx`} size="small" download>
          Workbook
        </LinkButton>
      </p>
    </figure>
  );
}
