import { z } from 'zod';
import { type SentEntry, sentEntry } from '@/lib/bench/act';
import type { Delivered, WaitingRoom } from '@/lib/bench/outbox';

/** An entry on its way, with the session it was made in: a late one keeps its person. */
export interface WaitingEntry {
  id: string;
  entry: SentEntry;
  session: { id: string; ticket: string };
}

const waiting = z.object({
  id: z.string(),
  entry: sentEntry,
  session: z.object({ id: z.string(), ticket: z.string() }),
});

const keyOf = (countId: string) => `kitwright.bench.${countId}.`;

/** Entries not acknowledged yet, kept in this browser under a key each: they survive a reload, and two tabs share them. */
export function waitingRoom(countId: string): WaitingRoom<WaitingEntry> {
  const prefix = keyOf(countId);
  return {
    all() {
      try {
        const keys = Array.from({ length: localStorage.length }, (_, at) => localStorage.key(at) ?? '');
        return keys
          .filter((key) => key.startsWith(prefix))
          .flatMap((key) => {
            const parsed = waiting.safeParse(parsedJson(localStorage.getItem(key)));
            return parsed.success ? [parsed.data as WaitingEntry] : [];
          });
      } catch {
        return [];
      }
    },
    put(one) {
      try {
        localStorage.setItem(prefix + one.id, JSON.stringify(one));
      } catch {
        // full or forbidden: it is sent all the same, and only a reload before that would lose it
      }
    },
    remove(id) {
      try {
        localStorage.removeItem(prefix + id);
      } catch {
        // nothing was kept
      }
    },
  };
}

function parsedJson(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}

/** A request that takes longer is given up and sent again. */
const PATIENCE_MS = 8_000;

/** Sends entries of a count; throws where nothing is known of what arrived. */
export async function sendEntries(
  countId: string,
  items: readonly WaitingEntry[],
  origin = '',
): Promise<readonly Delivered[]> {
  const answer = await fetch(`${origin}/api/v1/bench/${countId}/entries`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries: items.map(({ entry, session }) => ({ entry, session })) }),
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return ((await answer.json()) as { delivered: Delivered[] }).delivered;
}

/** A new id without `randomUUID`, which browsers keep from pages served over plain HTTP in a hospital's own network. */
export function newEntryId<P extends 'entry' | 'count'>(prefix: P): `${P}_${string}` {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return `${prefix}_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
