'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { actingNow } from '@/app/_ui/acting-store';
import { Outbox, type OutboxState } from '@/lib/bench/outbox';
import { type Kept, roomOf, sendKept } from './kept-here';

export interface KeptEntries<E> {
  outbox: OutboxState<Kept<E>>;
  /** Keeps an entry in this browser before anything else happens, and sends it; `false` where nobody is signed in. */
  add: (entry: E) => boolean;
  /** A moment for the next entry: later than the one before by this clock, whatever the clock did meanwhile. */
  doneAt: () => string;
  dismiss: (id: string) => void;
  flush: () => void;
}

const NOTHING_SENT = { pending: [], refused: [], cutOff: false };

/**
 * Entries of one piece of work: each kept here under its own id until the server says it is on its disk.
 *
 * @param room    what the work is, by name: a reload finds what waits for it
 * @param address where its entries are sent
 */
export function useOutbox<E extends { id: string; doneAt: string }>({
  room,
  address,
  onStored,
}: {
  room: string;
  address: string;
  onStored: (entry: E) => void;
}): KeptEntries<E> {
  const [outbox, setOutbox] = useState<OutboxState<Kept<E>>>(NOTHING_SENT);
  const box = useRef<Outbox<Kept<E>> | null>(null);
  const last = useRef('');
  const stored = useRef(onStored);
  useEffect(() => {
    stored.current = onStored;
  });

  useEffect(() => {
    const own = new Outbox<Kept<E>>({
      room: roomOf<E>(room),
      send: (items) => sendKept(address, items),
      wait: (ms) => new Promise((done) => setTimeout(done, ms)),
      onChange: setOutbox,
      onStored: ({ entry }) => stored.current(entry),
      order: (a, b) => (a.entry.doneAt < b.entry.doneAt ? -1 : 1),
    });
    box.current = own;
    setOutbox(own.state);
    for (const { entry } of own.state.pending) if (entry.doneAt > last.current) last.current = entry.doneAt;
    void own.flush();
    const online = () => void own.flush();
    window.addEventListener('online', online);
    return () => {
      own.stop();
      window.removeEventListener('online', online);
    };
  }, [room, address]);

  const doneAt = useCallback(() => {
    const before = last.current === '' ? 0 : Date.parse(last.current);
    last.current = new Date(Math.max(Date.now(), before + 1)).toISOString();
    return last.current;
  }, []);

  const add = useCallback((entry: E) => {
    const acting = actingNow();
    if (!acting || !box.current) return false;
    box.current.add({ id: entry.id, entry, session: { id: acting.sessionId, ticket: acting.ticket } });
    return true;
  }, []);

  return {
    outbox,
    add,
    doneAt,
    dismiss: useCallback((id: string) => box.current?.dismiss(id), []),
    flush: useCallback(() => void box.current?.flush(), []),
  };
}
