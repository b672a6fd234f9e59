'use client';

import Link from 'next/link';
import { useEffect, useState } from 'react';
import { Status } from '@/app/_ui/status';
import type { KitSummary } from '@/lib/kits/summary';
import type { Construct } from '@/lib/plans/plan';
import styles from './planner.module.css';

const QUIET_MS = 450;

/** Whether the kit for the plan as it stands is there, asked again after each change. */
export function KitLine({
  caseId,
  construct,
  begun,
}: {
  caseId: string;
  construct: Construct;
  begun: boolean;
}) {
  const [kit, setKit] = useState<KitSummary | 'asking' | 'unreachable'>('asking');
  const { note: _note, ...asked } = construct;
  const body = JSON.stringify({ ...asked, note: null });
  const empty = construct.plates.length === 0 && construct.freeScrews.length === 0;

  useEffect(() => {
    if (empty) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      try {
        const answer = await fetch(`/api/v1/cases/${caseId}/kit-preview`, {
          method: 'POST',
          headers: { 'Content-Type': 'application/json' },
          body,
          signal: stop.signal,
        });
        setKit(answer.ok ? ((await answer.json()) as KitSummary) : 'unreachable');
      } catch {
        if (!stop.signal.aborted) setKit('unreachable');
      }
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [caseId, body, empty]);

  return (
    <p className={styles.kitLine} role="status">
      <strong>Kit now</strong>
      {empty ? (
        <span>nothing is planned yet</span>
      ) : kit === 'asking' ? (
        <span>working it out …</span>
      ) : kit === 'unreachable' ? (
        <Status tone="unknown">Not established: the server did not answer</Status>
      ) : (
        <>
          <Status tone={kit.tone}>{kit.word}</Status>
          <span className={styles.kitSentence}>{kit.sentence}</span>
          {begun ? <Link href={`/cases/${caseId}/kit`}>Kit</Link> : null}
        </>
      )}
    </p>
  );
}
