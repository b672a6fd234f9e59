'use client';

import { Status } from '@/app/_ui/status';
import type { LayerProgress } from '@/lib/bench/closing';
import styles from './bench.module.css';
import type { BenchLayer } from './bench-subject';

/** The layers of the set from the top, each with how far it is counted. */
export function LayerTabs({
  layers,
  progress,
  current,
  onLayer,
}: {
  layers: readonly BenchLayer[];
  progress: readonly LayerProgress[];
  current: number | null;
  onLayer: (layer: string) => void;
}) {
  return (
    <nav aria-label="Layers" className={styles.layers}>
      {layers.map(({ layer, name }) => {
        const row = progress.find((one) => one.layer === layer);
        const done = row !== undefined && row.counted === row.lines;
        return (
          <button
            key={layer}
            type="button"
            className={styles.layerKey}
            aria-current={layer === current ? 'step' : undefined}
            onClick={() => onLayer(String(layer))}
          >
            <span>{`Layer ${layer}: ${name}`}</span>
            <Status tone={done ? 'good' : row?.counted ? 'attention' : 'unknown'} look="plain">
              {`${row?.counted ?? 0} of ${row?.lines ?? 0} lines`}
            </Status>
          </button>
        );
      })}
    </nav>
  );
}
