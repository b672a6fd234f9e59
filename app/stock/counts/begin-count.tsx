'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { COUNT_CLASSES, type CountClass } from '@/lib/stock/countClass';
import styles from './counts.module.css';

/** Begins a count at a place: of a class that is due there, or of all that lies there. */
export function BeginCount({
  place,
  due,
  free,
}: {
  place: { id: string; name: string };
  due: Record<CountClass, number>;
  /** Heaps nobody counts now. */
  free: number;
}) {
  const router = useRouter();
  const { act, pending, refusal } = useAct();
  const [countId] = useState(() => newClientId('stockCount'));

  async function begin(countClass: CountClass | 'all') {
    const body = { countId, placeId: place.id, countClass };
    const wrong = await act('/api/v1/stock-counts', body, `${place.name}: count what lies there.`);
    if (wrong === undefined) router.push(`/stock/counts/${countId}`);
  }

  return (
    <div className={styles.acts}>
      {COUNT_CLASSES.filter((countClass) => due[countClass] > 0).map((countClass) => (
        <Button
          key={countClass}
          size="bench"
          kind={countClass === 'A' ? 'primary' : 'plain'}
          pending={pending}
          onClick={() => begin(countClass)}
          aria-label={`Count class ${countClass} in ${place.name}`}
        >
          {`Count ${countClass}`}
        </Button>
      ))}
      {free > 0 ? (
        <Button
          size="bench"
          kind="quiet"
          pending={pending}
          onClick={() => begin('all')}
          aria-label={`Count all in ${place.name}`}
        >
          Count all
        </Button>
      ) : null}
      {refusal ? (
        <p role="alert" className={styles.refusal}>
          {refusal}
        </p>
      ) : null}
    </div>
  );
}
