'use client';

import { useEffect, useRef, useState } from 'react';

/**
 * What the server answers to what is typed and chosen now: lists of thousands are searched, sorted and cut there. A newer
 * question cancels the one before, and its answer stays until there is a newer one. `first` answers `firstQuery`: on the way
 * back from elsewhere the page may be an older one than its address.
 */
export function useServed<Answer>(
  address: string,
  query: string,
  first: Answer,
  firstQuery: string,
): { answer: Answer; failed: boolean } {
  const [state, setState] = useState({ answer: first, failed: false });
  const answered = useRef(firstQuery);

  // the server sent the page again: its rows are newer than any fetched before
  const [given, setGiven] = useState(first);
  if (given !== first) {
    setGiven(first);
    if (query === firstQuery) setState({ answer: first, failed: false });
  }

  useEffect(() => {
    if (answered.current === query) return;
    const asked = new AbortController();
    fetch(`${address}?${query}`, { signal: asked.signal })
      .then(async (response) => {
        if (!response.ok) throw new Error(String(response.status));
        const answer = (await response.json()) as Answer;
        answered.current = query;
        setState({ answer, failed: false });
      })
      .catch(() => {
        if (!asked.signal.aborted) setState((before) => ({ ...before, failed: true }));
      });
    return () => asked.abort();
  }, [address, query]);

  return state;
}
