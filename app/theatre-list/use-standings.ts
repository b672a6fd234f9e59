'use client';

import { useCallback, useEffect, useState } from 'react';
import type { Tone } from '@/app/_ui/tone';

export interface Standing {
  tone: Tone;
  word: string;
  sentence: string;
}

/**
 * How the cases stand by the plan; asked for after the list is on screen, and again whenever it changes. `undefined` is not
 * known yet, `null` is not planned for: over, begun, or beyond the horizon.
 */
export function useStandings(lines: readonly object[]): (id: string) => Standing | null | undefined {
  const [known, setKnown] = useState<Record<string, Standing> | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    // the lines are what the answer rests on, though none of them is sent
    void lines;
    fetch('/api/theatre-list/standings', { signal: stop.signal })
      .then(async (answer) => {
        if (!answer.ok) return;
        setKnown(((await answer.json()) as { standings: Record<string, Standing> }).standings);
      })
      .catch(() => {});
    return () => stop.abort();
  }, [lines]);
  return useCallback((id) => (known === null ? undefined : (known[id] ?? null)), [known]);
}
