import type { DelayAct, PieceAct, UseEntry, UseOutcome } from '@/lib/usage/act';

let made = 0;

/** An entry about a piece of a slot or of a pick, each a moment after the one before. */
export function piece(
  source: { setId: string; lineId: string } | { pickId: string; returnId?: string | null },
  outcome: UseOutcome,
  more: Partial<PieceAct> = {},
): UseEntry {
  made += 1;
  const slot = 'setId' in source;
  return {
    id: `entry_t${made}`,
    doneAt: new Date(Date.UTC(2026, 0, 14, 8, 0, made)).toISOString(),
    act: {
      kind: 'piece',
      source: slot
        ? { kind: 'slot', ...source }
        : { kind: 'pack', pickId: source.pickId, returnId: source.returnId ?? null },
      itemId: 'item_a',
      quantity: 1,
      outcome,
      lostAt: outcome === 'notFound' ? 'during' : null,
      place: null,
      lot: slot ? { kind: 'setAndLoad' } : { kind: 'asIssued' },
      despite: [],
      note: null,
      because: null,
      ...more,
    } as PieceAct,
  };
}

export function takenBack(entry: UseEntry): UseEntry {
  made += 1;
  return {
    id: `entry_t${made}`,
    doneAt: new Date(Date.UTC(2026, 0, 14, 8, 0, made)).toISOString(),
    act: { kind: 'takenBack', entryId: entry.id as never, because: null },
  };
}

/** Names why what an entry says was wasted; `null`: not stated after all. */
export function reasonFor(entry: UseEntry, reasonId: string | null): UseEntry {
  made += 1;
  return {
    id: `entry_t${made}`,
    doneAt: new Date(Date.UTC(2026, 0, 14, 8, 0, made)).toISOString(),
    act: { kind: 'reason', entryId: entry.id as never, reasonId: reasonId as never, because: null },
  };
}

/** A delay, of which nothing is known but what is told. */
export function delay(more: Partial<DelayAct> = {}): UseEntry {
  made += 1;
  return {
    id: `entry_t${made}`,
    doneAt: new Date(Date.UTC(2026, 0, 14, 8, 0, made)).toISOString(),
    act: {
      kind: 'delay',
      minutes: null,
      reasonId: null,
      step: null,
      about: null,
      note: null,
      because: null,
      ...more,
    },
  };
}
