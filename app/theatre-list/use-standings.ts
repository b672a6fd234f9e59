'use client';

import { useCallback, useEffect, useState } from 'react';
import type { Tone } from '@/app/_ui/tone';

export interface Standing {
  tone: Tone;
  word: string;
  sentence: string;
}

const NOT_TO_BE_HAD: Standing = {
  tone: 'unknown',
  word: 'Not known',
  sentence: 'How it stands could not be worked out. Load the page again to ask once more.',
};

/**
 * How the cases stand by the plan; asked for after the list is on screen, and again whenever it changes. `undefined` is not
 * known yet, `null` is not planned for: over, begun, or beyond the horizon.
 */
export function useStandings(lines: readonly object[]): (id: string) => Standing | null | undefined {
  const [known, setKnown] = useState<Record<string, Standing> | 'notToBeHad' | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    // the lines are what the answer rests on, though none of them is sent
    void lines;
    fetch('/api/v1/theatre-list/standings', { signal: stop.signal })
      .then(async (answer) => {
        if (!answer.ok) throw new Error(answer.statusText);
        setKnown(((await answer.json()) as { standings: Record<string, Standing> }).standings);
      })
      .catch(() => {
        if (!stop.signal.aborted) setKnown('notToBeHad');
      });
    return () => stop.abort();
  }, [lines]);
  return useCallback(
    (id) => {
      if (known === null) return undefined;
      return known === 'notToBeHad' ? NOT_TO_BE_HAD : (known[id] ?? null);
    },
    [known],
  );
}
