'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { ProcedureOnFile } from '@/db/queries/cards/procedures';
import styles from '../plans.module.css';
import { ProcedureForm } from './procedure-form';

/** One procedure of the list, and its form where it may be changed. */
export function ProcedureLine({
  procedure,
  region,
  mayKeep,
}: {
  procedure: ProcedureOnFile;
  region: string;
  mayKeep: boolean;
}) {
  const [changing, setChanging] = useState(false);
  const { name, cards, inUse } = procedure;
  return (
    <li>
      <p>
        <strong>{name}</strong> {inUse ? null : <Status tone="neutral">Not for new cards</Status>}
      </p>
      <p className={styles.soft}>{`${region} · ${cards === 1 ? '1 card' : `${cards} cards`}`}</p>
      {changing ? <ProcedureForm procedure={procedure} onDone={() => setChanging(false)} /> : null}
      {mayKeep && !changing ? (
        <Button size="small" onClick={() => setChanging(true)} aria-label={`Change ${name}`}>
          Change
        </Button>
      ) : null}
    </li>
  );
}
