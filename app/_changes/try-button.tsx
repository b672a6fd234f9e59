'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { linesOf } from '@/app/_ui/json-lines';
import type { TrialSubject } from '@/db/queries/changes/trials';
import styles from './changes.module.css';

type Line = { done: number; of: number; label: string } | { trialId: string } | { problem: string };

/** Tries a change against the whole catalogue and all plans, with its progress; the page then shows what it found. */
export function TryButton({ subject, again }: { subject: TrialSubject; again: boolean }) {
  const router = useRouter();
  const [progress, setProgress] = useState<{ done: number; of: number; label: string } | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const stop = useRef<AbortController | null>(null);
  useEffect(() => () => stop.current?.abort(), []);

  async function run() {
    stop.current?.abort();
    stop.current = new AbortController();
    setWrong(null);
    setProgress({ done: 0, of: 1, label: 'the catalogue' });
    try {
      const response = await fetch('/api/v1/changes/trials', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(subject),
        signal: stop.current.signal,
      });
      if (!response.ok || !response.body) {
        const answer = (await response.json().catch(() => null)) as { detail?: string } | null;
        setWrong(answer?.detail ?? `The server answered ${response.status}.`);
        return;
      }
      let ended = false;
      for await (const line of linesOf<Line>(response.body)) {
        if ('done' in line) setProgress(line);
        else if ('problem' in line) setWrong(line.problem);
        ended ||= !('done' in line);
      }
      if (!ended) setWrong('It was not tried to the end. Try it again.');
      else router.refresh();
    } catch {
      setWrong('The server can’t be reached; nothing was tried.');
    } finally {
      setProgress(null);
    }
  }

  const percent = progress ? Math.round((progress.done / Math.max(1, progress.of)) * 100) : 0;
  return (
    <div className={styles.tryRow}>
      <Button kind={again ? 'plain' : 'primary'} pending={progress !== null} onClick={run}>
        {again ? 'Try it again' : 'Try it against the catalogue and all plans'}
      </Button>
      {progress ? (
        <span className={styles.progress}>
          <progress value={percent} max={100} aria-label="How far the trial is" />
          <span className={styles.small}>{progress.label}</span>
        </span>
      ) : null}
      <span role="status">{wrong ? <span className={styles.wrong}>{wrong}</span> : null}</span>
    </div>
  );
}
