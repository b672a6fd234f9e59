'use client';

import { useCallback, useEffect, useState } from 'react';
import type { WayOut } from '@/app/_server/ways-out';

interface WaysOutFound {
  revision: number;
  waysOut: WayOut[];
}

/** `busy` while it is worked out, which may take seconds; `failed` where it could not be. */
type WaysOutState = { kind: 'busy' } | { kind: 'failed' } | { kind: 'found'; found: WaysOutFound };

/** What can be done for a case, asked for as its row is opened, and again when `again` is called. */
export function useWaysOut(caseId: string): { state: WaysOutState; again: () => void } {
  const [asked, setAsked] = useState(0);
  const [state, setState] = useState<WaysOutState>({ kind: 'busy' });
  useEffect(() => {
    const stop = new AbortController();
    // asked anew each time it is called for, of the same address
    void asked;
    setState({ kind: 'busy' });
    fetch(`/api/v1/cases/${caseId}/ways-out`, { signal: stop.signal })
      .then(async (answer) => {
        if (!answer.ok) throw new Error(String(answer.status));
        setState({ kind: 'found', found: (await answer.json()) as WaysOutFound });
      })
      .catch(() => {
        if (!stop.signal.aborted) setState({ kind: 'failed' });
      });
    return () => stop.abort();
  }, [caseId, asked]);
  const again = useCallback(() => setAsked((times) => times + 1), []);
  return { state, again };
}
