'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { actingNow } from '@/app/_ui/acting-store';
import type { BenchAct, BenchEntry, SentEntry } from '@/lib/bench/act';
import { Outbox, type OutboxState } from '@/lib/bench/outbox';
import { type CountState, inOrder, stateOf } from '@/lib/bench/state';
import { newEntryId, sendEntries, type WaitingEntry, waitingRoom } from './waiting-room';

export interface Bench {
  state: CountState;
  /** Every entry made, durable or not, in order. */
  entries: readonly BenchEntry[];
  pending: ReadonlySet<string>;
  /** Lines whose last figure is not durable yet. */
  pendingLines: ReadonlySet<string>;
  outbox: OutboxState<WaitingEntry>;
  /** Makes an entry. It is kept in this browser before anything else happens; answers its id. */
  enter: (act: BenchAct, scanId?: string) => string | null;
  /** Takes up an entry that the server has acknowledged already. */
  takeUp: (entry: BenchEntry) => void;
  makeEntry: (act: BenchAct) => SentEntry;
  dismiss: (id: string) => void;
  flush: () => void;
}

const NOTHING_SENT: OutboxState<WaitingEntry> = { pending: [], refused: [], cutOff: false };

/** The entries of one count: what the server has, and what this browser still keeps for it. */
export function useBench(countId: string, recorded: readonly BenchEntry[]): Bench {
  const [known, setKnown] = useState<readonly BenchEntry[]>(recorded);
  const [outbox, setOutbox] = useState(NOTHING_SENT);
  const box = useRef<Outbox<WaitingEntry> | null>(null);
  const last = useRef(recorded.at(-1)?.doneAt ?? '');

  useEffect(() => {
    const own = new Outbox<WaitingEntry>({
      room: waitingRoom(countId),
      send: (items) => sendEntries(countId, items),
      wait: (ms) => new Promise((done) => setTimeout(done, ms)),
      onChange: setOutbox,
      onStored: ({ entry }) => setKnown((now) => withEntry(now, entry as BenchEntry)),
      order: (a, b) => (a.entry.doneAt < b.entry.doneAt ? -1 : 1),
    });
    box.current = own;
    setOutbox(own.state);
    for (const { entry } of own.state.pending) last.current = later(last.current, entry.doneAt);
    void own.flush();
    const online = () => void own.flush();
    window.addEventListener('online', online);
    return () => {
      own.stop();
      window.removeEventListener('online', online);
    };
  }, [countId]);

  /** Each entry is later than the one before by this clock, whatever the clock did meanwhile. */
  const makeEntry = useCallback((act: BenchAct): SentEntry => {
    const now = Date.now();
    const before = last.current === '' ? 0 : Date.parse(last.current);
    const doneAt = new Date(Math.max(now, before + 1)).toISOString();
    last.current = doneAt;
    return { id: newEntryId('entry') as SentEntry['id'], act, doneAt };
  }, []);

  const enter = useCallback(
    (act: BenchAct, scanId?: string): string | null => {
      const acting = actingNow();
      if (!acting || !box.current) return null;
      const entry = { ...makeEntry(act), ...(scanId ? { scanId: scanId as SentEntry['scanId'] } : {}) };
      box.current.add({
        id: entry.id,
        entry,
        session: { id: acting.sessionId, ticket: acting.ticket },
      });
      return entry.id;
    },
    [makeEntry],
  );

  const entries = useMemo(
    () => inOrder([...known, ...outbox.pending.map(({ entry }) => entry as BenchEntry)]),
    [known, outbox.pending],
  );
  const state = useMemo(() => stateOf(entries), [entries]);
  const pending = useMemo(() => new Set(outbox.pending.map(({ id }) => id)), [outbox.pending]);
  const pendingLines = useMemo(
    () => new Set([...state.lines].flatMap(([id, line]) => (pending.has(line.lastEntryId) ? [id] : []))),
    [state, pending],
  );
  return {
    state,
    entries,
    pending,
    pendingLines,
    outbox,
    enter,
    takeUp: useCallback((entry: BenchEntry) => setKnown((now) => withEntry(now, entry)), []),
    makeEntry,
    dismiss: useCallback((id: string) => box.current?.dismiss(id), []),
    flush: useCallback(() => void box.current?.flush(), []),
  };
}

const withEntry = (known: readonly BenchEntry[], entry: BenchEntry) =>
  known.some(({ id }) => id === entry.id) ? known : [...known, entry];

const later = (a: string, b: string) => (a > b ? a : b);
