'use client';

import { useEffect, useState } from 'react';
import type { BuildToday } from '@/lib/plans/buildToday';

/** Requests at a time: the kits are worked out by one processor. */
const AT_A_TIME = 2;

/** What can be built of these saved starts today, filled in one by one after the list is on screen. What is not known yet is not there. */
export function useBuildsToday(ids: readonly string[]): ReadonlyMap<string, BuildToday> {
  const [known, setKnown] = useState<ReadonlyMap<string, BuildToday>>(new Map());
  const key = [...new Set(ids)].join(' ');

  useEffect(() => {
    const waiting = key.split(' ').filter(Boolean);
    const stop = new AbortController();
    async function work() {
      for (let id = waiting.shift(); id && !stop.signal.aborted; id = waiting.shift()) {
        const [mine, found] = [id, await todayOf(id, stop.signal)];
        if (found && !stop.signal.aborted) setKnown((before) => new Map(before).set(mine, found));
      }
    }
    for (let worker = 0; worker < AT_A_TIME; worker += 1) void work();
    return () => stop.abort();
  }, [key]);
  return known;
}

async function todayOf(id: string, signal: AbortSignal): Promise<BuildToday | null> {
  try {
    const answer = await fetch(`/api/v1/plans/starts/${id}/today`, { signal });
    return answer.ok ? ((await answer.json()) as { today: BuildToday }).today : null;
  } catch {
    return null;
  }
}
