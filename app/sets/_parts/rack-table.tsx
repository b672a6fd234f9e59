import type { ReactNode } from 'react';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { writeMm } from '@/lib/quantities/length';
import type { RackGrid } from '@/lib/sets/layout';
import styles from './parts.module.css';

/**
 * A screw rack as it is read on the bench: a row for each screw family, a column for each length in millimetres.
 *
 * @param cell what stands in the cell of a line
 */
export function RackTable<L>({
  grid,
  name,
  familyName,
  cell,
}: {
  grid: RackGrid<L>;
  name: string;
  familyName: (family: string) => string;
  cell: (line: L, family: string, lengthUm: number) => ReactNode;
}) {
  return (
    <ScrollRegion label={`${name}, by screw family and length`}>
      <table className={styles.rack}>
        <caption className={styles.rackCaption}>
          {name} <span className={styles.soft}>length in mm</span>
        </caption>
        <thead>
          <tr>
            <th scope="col" className={styles.corner}>
              Screw family
            </th>
            {grid.lengthsUm.map((length) => (
              <th key={length} scope="col">
                {writeMm(length)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {grid.rows.map(({ family, cells }) => (
            <tr key={family}>
              <th scope="row">{familyName(family)}</th>
              {grid.lengthsUm.map((length, at) => {
                const line = cells[at];
                return (
                  <td key={length} className={line ? undefined : styles.noCell}>
                    {line ? cell(line, family, length) : <span className={styles.hidden}>no cell</span>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
