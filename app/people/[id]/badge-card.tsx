'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import styles from '../people.module.css';

/** A badge to print and cut out. The code is in the picture alone, is asked for once, and goes with the page. */
export function BadgeCard({ name, role, code }: { name: string; role: string; code: string }) {
  const [symbol, setSymbol] = useState<{ size: number; path: string } | null>(null);
  useEffect(() => {
    let here = true;
    import('bwip-js/browser').then(({ default: bwip }) => {
      const [raw] = bwip.raw({ bcid: 'datamatrix', text: code }) as unknown as {
        pixs: ArrayLike<number>;
        pixx: number;
      }[];
      if (!raw || !here) return;
      const dark = Array.from(raw.pixs).flatMap((module, at) =>
        module === 1 ? [`M${at % raw.pixx} ${Math.floor(at / raw.pixx)}h1v1h-1z`] : [],
      );
      setSymbol({ size: raw.pixx, path: dark.join('') });
    });
    return () => {
      here = false;
    };
  }, [code]);
  return (
    <div role="status" className={styles.once}>
      <h2 data-print="no">The badge, shown this once</h2>
      <div className={styles.card}>
        {symbol ? (
          <svg
            role="img"
            aria-label={`Badge of ${name}`}
            viewBox={`-1 -1 ${symbol.size + 2} ${symbol.size + 2}`}
            shapeRendering="crispEdges"
            className={styles.code}
          >
            <path d={symbol.path} fill="#000" />
          </svg>
        ) : null}
        <div>
          <p className={styles.bearer}>{name}</p>
          <p>{role}</p>
        </div>
      </div>
      <div data-print="no">
        <Button kind="primary" onClick={() => print()}>
          Print the card
        </Button>
      </div>
      <p data-print="no">It works with a PIN that its bearer chooses in their account.</p>
    </div>
  );
}
