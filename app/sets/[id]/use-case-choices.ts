'use client';

import { useEffect, useState } from 'react';
import type { ComboOption } from '@/app/_ui/combo-field';

/** Every case a set could be sent to, asked for once somebody wants to choose; `null` until it is here. */
export function useCaseChoices(wanted: boolean): readonly ComboOption[] | null {
  const [cases, setCases] = useState<readonly ComboOption[] | null>(null);
  const missing = wanted && cases === null;
  useEffect(() => {
    if (!missing) return;
    const stop = new AbortController();
    fetch('/api/v1/theatre-list/cases', { signal: stop.signal })
      .then((answer) => (answer.ok ? answer.json() : null))
      .then((body: { cases: ComboOption[] } | null) => {
        if (body) setCases(body.cases);
      })
      // not reached: it is asked for again as the dialog opens again
      .catch(() => {});
    return () => stop.abort();
  }, [missing]);
  return cases;
}
