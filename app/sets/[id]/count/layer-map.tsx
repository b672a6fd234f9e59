'use client';

import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import styles from './bench.module.css';
import type { BenchLayer, BenchRack } from './bench-subject';
import { CellName, type CellView, LineCell } from './line-cell';

type View = (lineId: string) => CellView | null;

/** One layer as it lies on the bench: its racks as length grids, then every other line in its row with its drawing. */
export function LayerMap({ layer, view }: { layer: BenchLayer; view: View }) {
  return (
    <div className={styles.layer}>
      {layer.racks.map((rack) => (
        <RackGrid key={rack.id} rack={rack} view={view} />
      ))}
      {layer.rows.length > 0 ? (
        <ul className={styles.map}>
          {layer.rows.map((row, at) => (
            <li key={row[0] ?? at} className={styles.mapRow}>
              {row.map((lineId) => {
                const cell = view(lineId);
                return cell ? (
                  <LineCell key={lineId} view={cell}>
                    <CellName line={cell.line}>
                      <span className={styles.thumb}>
                        {cell.line.thumb ? <ThumbDrawing thumb={cell.line.thumb} /> : null}
                      </span>
                    </CellName>
                  </LineCell>
                ) : null;
              })}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

function RackGrid({ rack, view }: { rack: BenchRack; view: View }) {
  return (
    <ScrollRegion label={`${rack.name}, by screw family and length`}>
      <table className={styles.rack}>
        <caption>
          {rack.name} <span className={styles.soft}>length in mm</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Screw family</th>
            {rack.lengthsMm.map((length) => (
              <th key={length} scope="col">
                {length}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rack.rows.map(({ family, cells }) => (
            <tr key={family}>
              <th scope="row">{family}</th>
              {cells.map((lineId, at) => {
                const cell = lineId === null ? null : view(lineId);
                return <td key={rack.lengthsMm[at]}>{cell ? <LineCell view={cell} rack /> : null}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

/** The cells of a layer by row, for the arrow keys, and in the order they are counted. */
export function rowsOf(layer: BenchLayer): (string | null)[][] {
  return [...layer.racks.flatMap(({ rows }) => rows.map(({ cells }) => cells)), ...layer.rows];
}
