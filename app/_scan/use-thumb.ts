'use client';

import { useEffect, useState } from 'react';
import type { Thumb } from '@/lib/documents/drawing/condense';

/** Drawings seen here before: the second scan of an item shows its picture at once. */
const seen = new Map<string, Thumb | null>();
const MOST = 400;

/** The small drawing of an item; `null` while it comes, where there is none, and where it can’t be fetched. */
export function useThumb(itemId: string | null): Thumb | null {
  const [, redraw] = useState(0);
  useEffect(() => {
    if (itemId === null || seen.has(itemId)) return;
    let gone = false;
    fetch(`/api/v1/catalogue/thumbs?ids=${encodeURIComponent(itemId)}`)
      .then(async (answer) => {
        if (!answer.ok) return;
        const { thumbs } = (await answer.json()) as { thumbs: Record<string, Thumb> };
        if (seen.size >= MOST) seen.clear();
        seen.set(itemId, thumbs[itemId] ?? null);
        if (!gone) redraw((count) => count + 1);
      })
      .catch(() => {}); // the caption says in words what the picture would show
    return () => {
      gone = true;
    };
  }, [itemId]);
  return itemId === null ? null : (seen.get(itemId) ?? null);
}
