'use client';

import { useCallback, useEffect, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import type { ReceivedItem } from '@/db/queries/shelf/receiving';
import { type Draft, type DraftLine, keptDraft, usualPlace } from './draft';

/** What a scan or a choice says of a line. */
export interface SaidOfLine {
  lot: string | null;
  useBy: string | null;
  pieces: number | null;
  scanId: string | null;
}

const begin = (today: string): Draft => ({
  id: newClientId('delivery'),
  supplier: '',
  reference: '',
  arrivedOn: today,
  owner: 'ours',
  lenderId: '',
  placeId: '',
  lines: [],
});

/**
 * The delivery being entered: every change is kept in this browser as it is typed, so that a reload or a closed tablet loses
 * nothing. Each person has their own.
 */
export function useDraft(personId: string, today: string) {
  const key = `kitwright.delivery.${personId}`;
  const [draft, setDraft] = useState<Draft | null>(null);

  useEffect(() => {
    setDraft(readKept(key) ?? begin(today));
  }, [key, today]);
  useEffect(() => {
    if (draft) keep(key, draft);
  }, [key, draft]);

  const change = useCallback(
    (part: Partial<Draft>) => setDraft((before) => before && { ...before, ...part }),
    [],
  );
  const changeLine = useCallback(
    (id: string, part: Partial<DraftLine>) =>
      setDraft(
        (before) =>
          before && {
            ...before,
            lines: before.lines.map((line) => (line.id === id ? { ...line, ...part } : line)),
          },
      ),
    [],
  );
  const removeLine = useCallback(
    (id: string) =>
      setDraft((before) => before && { ...before, lines: before.lines.filter((line) => line.id !== id) }),
    [],
  );
  /** The same lot and use-by again is more of the line that is there; anything else is a line of its own. */
  const addItem = useCallback((item: ReceivedItem, said: SaidOfLine) => {
    setDraft((before) => before && { ...before, lines: withItem(before, item, said) });
  }, []);
  const clear = useCallback(() => setDraft(begin(today)), [today]);
  return { draft, change, changeLine, removeLine, addItem, clear };
}

function withItem(draft: Draft, item: ReceivedItem, said: SaidOfLine): DraftLine[] {
  const same = draft.lines.find(
    (line) =>
      said.scanId !== null &&
      line.item.itemId === item.itemId &&
      line.unit === 'pieces' &&
      said.lot !== null &&
      line.lot === said.lot &&
      line.useBy === (said.useBy ?? line.useBy),
  );
  if (same)
    return draft.lines.map((line) =>
      line === same ? { ...line, count: String((Number(line.count) || 0) + (said.pieces ?? 1)) } : line,
    );
  const sterile = item.suppliedSterile;
  const form = sterile === null ? null : sterile ? 'sterilePacked' : 'unsterile';
  const own: DraftLine = {
    id: newClientId('deliveryLine'),
    item,
    form,
    lot: said.lot ?? '',
    noLot: false,
    useBy: said.useBy ?? '',
    // what is not sterile carries no use-by as a rule; it can be entered all the same
    noUseBy: sterile === false && said.useBy === null,
    count: said.scanId === null ? '' : String(said.pieces ?? 1),
    unit: said.scanId === null && item.packMultiple > 1 ? 'packs' : 'pieces',
    placeId: draft.placeId === '' ? usualPlace(item, form) : draft.placeId,
    held: '',
    useByReadAgain: false,
    orderLineId: '',
    scanId: said.scanId,
  };
  return [...draft.lines, own];
}

function readKept(key: string): Draft | null {
  try {
    const parsed = keptDraft.safeParse(JSON.parse(localStorage.getItem(key) ?? 'null'));
    return parsed.success ? (parsed.data as unknown as Draft) : null;
  } catch {
    return null;
  }
}

function keep(key: string, draft: Draft): void {
  try {
    if (draft.lines.length === 0 && draft.supplier === '' && draft.reference === '')
      localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(draft));
  } catch {
    // full or forbidden: it stands on the screen all the same, and only a reload would lose it
  }
}
