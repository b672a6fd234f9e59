'use client';

import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { OfferedStart } from './planner';
import styles from './planner.module.css';

/** An empty plan: begin with a plate, or from one of one's own starts, or one that the case's preference card names. */
export function StartChoice({
  starts,
  onStart,
  onPlate,
}: {
  starts: readonly OfferedStart[];
  onStart: (start: OfferedStart) => void;
  onPlate: () => void;
}) {
  return (
    <section className={styles.begin} aria-label="Begin the plan">
      <Button kind="primary" size="bench" onClick={onPlate}>
        Choose a plate
      </Button>
      {starts.length > 0 ? <p>or begin from a saved start:</p> : <p>You have no saved starts yet.</p>}
      {starts.map((start) => (
        <Button key={start.id} size="bench" onClick={() => onStart(start)}>
          {start.name}
          {start.gone.length > 0 ? <Status tone="stop">{start.gone.join('; ')}</Status> : null}
        </Button>
      ))}
    </section>
  );
}
