'use client';

import { useEffect, useRef, useState } from 'react';
import type { CatalogueRow } from '@/db/queries/catalogueSearch';
import { queryOf } from '@/lib/catalogue/search';

/**
 * The rows for what is typed and chosen now. A newer question cancels the one before. `first` answers `firstQuery`: on the
 * way back from an item the page may be an older one than its address.
 */
export function useRows(
  values: Record<string, string>,
  first: CatalogueRow[],
  firstQuery: string,
): { rows: CatalogueRow[]; failed: boolean } {
  const query = queryOf((name) => values[name]);
  const [answer, setAnswer] = useState({ rows: first, failed: false });
  const answered = useRef(firstQuery);

  useEffect(() => {
    if (answered.current === query) return;
    const asked = new AbortController();
    fetch(`/api/catalogue/search?${query}`, { signal: asked.signal })
      .then(async (response) => {
        if (!response.ok) throw new Error(String(response.status));
        const { rows } = (await response.json()) as { rows: CatalogueRow[] };
        answered.current = query;
        setAnswer({ rows, failed: false });
      })
      .catch(() => {
        if (!asked.signal.aborted) setAnswer((before) => ({ ...before, failed: true }));
      });
    return () => asked.abort();
  }, [query]);

  return answer;
}
