'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import {
  beginCount,
  type CountDraft,
  type ForeignPiece,
  type LineDraft,
  NOTHING_ENTERED,
} from '@/lib/sets/countDraft';
import { pieceCondition } from '@/lib/sets/setState';

/** Kept by set and by person: a second check must not see the first one's figures. */
const keyOf = (setId: string, personId: string) => `count:${setId}:${personId}`;

/** A new id without `randomUUID`, which browsers keep from pages served over plain HTTP in a hospital's own network. */
export function newCountId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return `count_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

/**
 * The count in the making. Every stroke is kept in this browser under the set, with the revision it began from, so that
 * a reload or an empty battery in mid-work loses nothing; `kept` says that it was taken up again.
 */
export function useCount(
  setId: string,
  personId: string,
  revision: number,
  foreign: readonly ForeignPiece[],
  lineIds: readonly string[],
) {
  const [draft, setDraft] = useState<CountDraft>(() => beginCount('', revision, foreign));
  const [kept, setKept] = useState(false);
  const [ready, setReady] = useState(false);
  const saved = useRef(false);
  const first = useRef({ revision, foreign, lineIds });

  useEffect(() => {
    const { revision: base, foreign: known, lineIds: lines } = first.current;
    const before = readDraft(setId, personId, new Set(lines));
    setKept(before !== null);
    setDraft(before ?? beginCount(newCountId(), base, known));
    setReady(true);
  }, [setId, personId]);

  useEffect(() => {
    if (!ready || saved.current) return;
    if (isEmpty(draft, first.current.foreign)) forget(setId, personId);
    else remember(setId, personId, draft);
  }, [draft, ready, setId, personId]);

  const enter = useCallback((lineId: string, change: Partial<LineDraft>) => {
    setDraft((now) => ({
      ...now,
      lines: { ...now.lines, [lineId]: { ...(now.lines[lineId] ?? NOTHING_ENTERED), ...change } },
    }));
  }, []);

  const setForeign = useCallback(
    (pieces: ForeignPiece[]) => setDraft((now) => ({ ...now, foreign: pieces })),
    [],
  );

  const discard = useCallback(() => {
    forget(setId, personId);
    setKept(false);
    setDraft(beginCount(newCountId(), first.current.revision, first.current.foreign));
  }, [setId, personId]);

  /** Called once the server has it: nothing is kept any more. */
  const done = useCallback(() => {
    saved.current = true;
    forget(setId, personId);
  }, [setId, personId]);

  return { draft, ready, kept, enter, setForeign, setDraft, discard, done };
}

function isEmpty(draft: CountDraft, known: readonly ForeignPiece[]): boolean {
  const entered = Object.values(draft.lines).some(
    ({ found, unsound, condition }) => found !== '' || unsound !== '' || condition !== 'sound',
  );
  return !entered && JSON.stringify(draft.foreign) === JSON.stringify(known);
}

/** What was kept, without lines the set no longer has; `null` when there is none or it can't be read. */
function readDraft(setId: string, personId: string, lines: ReadonlySet<string>): CountDraft | null {
  try {
    const text = localStorage.getItem(keyOf(setId, personId));
    if (text === null) return null;
    const { id, baseRevision, lines: entered, foreign } = JSON.parse(text) as CountDraft;
    if (typeof id !== 'string' || typeof baseRevision !== 'number' || !Array.isArray(foreign)) return null;
    const own = Object.entries(entered).filter(
      ([line, value]) =>
        lines.has(line) &&
        typeof value.found === 'string' &&
        typeof value.unsound === 'string' &&
        pieceCondition.safeParse(value.condition).success,
    );
    return { id, baseRevision, foreign, lines: Object.fromEntries(own) };
  } catch {
    return null;
  }
}

function remember(setId: string, personId: string, draft: CountDraft): void {
  try {
    localStorage.setItem(keyOf(setId, personId), JSON.stringify(draft));
  } catch {
    // full or forbidden: the count goes on, only a reload would lose it
  }
}

function forget(setId: string, personId: string): void {
  try {
    localStorage.removeItem(keyOf(setId, personId));
  } catch {
    // nothing was kept
  }
}
