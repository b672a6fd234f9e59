'use client';

import { useEffect, useState } from 'react';
import type { Tone } from '@/app/_ui/tone';

export interface Readiness {
  tone: Tone;
  word: string;
}

/** Requests at a time: the kits are worked out by one processor. */
const AT_A_TIME = 2;

/**
 * How the kits of these cases stand, filled in one by one after the list is on screen, in the order given.
 * `undefined` is not known yet, `null` is nothing planned.
 */
export function useReadiness(ids: readonly string[]): ReadonlyMap<string, Readiness | null> {
  const [known, setKnown] = useState<ReadonlyMap<string, Readiness | null>>(new Map());
  const key = ids.join(' ');

  useEffect(() => {
    const waiting = key.split(' ').filter(Boolean);
    const stop = new AbortController();
    async function work() {
      for (let id = waiting.shift(); id && !stop.signal.aborted; id = waiting.shift()) {
        const answer = await readinessOf(id, stop.signal);
        if (stop.signal.aborted || answer === undefined) continue;
        const [mine, found] = [id, answer];
        setKnown((before) => new Map(before).set(mine, found));
      }
    }
    for (let worker = 0; worker < AT_A_TIME; worker += 1) void work();
    return () => stop.abort();
  }, [key]);
  return known;
}

async function readinessOf(id: string, signal: AbortSignal): Promise<Readiness | null | undefined> {
  try {
    const answer = await fetch(`/api/v1/cases/${id}/readiness`, { signal });
    if (!answer.ok) return undefined;
    return ((await answer.json()) as { readiness: Readiness | null }).readiness;
  } catch {
    return undefined;
  }
}
