'use client';

import { useEffect, useState } from 'react';
import type { ComboOption } from '@/app/_ui/combo-field';

/** Every set in service to choose from, asked for once somebody wants to choose; `null` until it is here. */
export function useSetChoices(wanted: boolean): readonly ComboOption[] | null {
  const [sets, setSets] = useState<readonly ComboOption[] | null>(null);
  const missing = wanted && sets === null;
  useEffect(() => {
    if (!missing) return;
    const stop = new AbortController();
    fetch('/api/v1/theatre-list/sets', { signal: stop.signal })
      .then((answer) => (answer.ok ? answer.json() : null))
      .then((body: { sets: ComboOption[] } | null) => {
        if (body) setSets(body.sets);
      })
      // not reached: it is asked for again as the dialog opens again
      .catch(() => {});
    return () => stop.abort();
  }, [missing]);
  return sets;
}
