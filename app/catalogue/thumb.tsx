'use client';

import { useEffect, useState } from 'react';
import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import type { Thumb as Condensed } from '@/lib/documents/drawing/condense';
import styles from './catalogue.module.css';

/** Drawings fetched so far, by item and revision; those of one paint are asked for together. */
const fetched = new Map<string, Condensed | null>();
const waiting = new Map<string, { id: string; tell: Set<() => void> }>();
let asking: ReturnType<typeof setTimeout> | undefined;

/** Only once the typing rests are drawings asked for: they never hold up a search. */
const REST_MS = 180;

function want(id: string, key: string, tell: () => void): () => void {
  const entry = waiting.get(key) ?? { id, tell: new Set() };
  entry.tell.add(tell);
  waiting.set(key, entry);
  clearTimeout(asking);
  asking = setTimeout(ask, REST_MS);
  return () => entry.tell.delete(tell);
}

async function ask(): Promise<void> {
  asking = undefined;
  const batch = [...waiting].slice(0, 100);
  for (const [key] of batch) waiting.delete(key);
  if (waiting.size > 0) asking = setTimeout(ask, 0);
  // a row that scrolled or typed away before its turn is not asked for
  const wanted = batch.filter(([, { tell }]) => tell.size > 0);
  if (wanted.length === 0) return;
  try {
    const ids = wanted.map(([, { id }]) => id).join(',');
    const response = await fetch(`/api/v1/catalogue/thumbs?ids=${encodeURIComponent(ids)}`);
    const { thumbs } = (await response.json()) as { thumbs: Record<string, Condensed> };
    for (const [key, { id }] of wanted) fetched.set(key, thumbs[id] ?? null);
  } catch {
    return; // the row says in words what the drawing would show
  }
  for (const [, { tell }] of wanted) for (const one of tell) one();
}

/** The drawing of one row, in room that is kept for it. */
export function Thumb({ id, revision }: { id: string; revision: number }) {
  const key = `${id}:${revision}`;
  const [, redraw] = useState(0);
  const thumb = fetched.get(key);

  useEffect(() => {
    if (fetched.has(key)) return;
    return want(id, key, () => redraw((count) => count + 1));
  }, [id, key]);

  return <span className={styles.thumb}>{thumb ? <ThumbDrawing thumb={thumb} /> : null}</span>;
}
