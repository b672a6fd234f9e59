import { z } from 'zod';
import { noteBuild } from '@/app/_ui/newest-build';
import type { Delivered, WaitingRoom } from '@/lib/bench/outbox';

/** An entry on its way, with the session it was made in: a late one keeps its person. */
export interface Kept<E> {
  id: string;
  entry: E;
  session: { id: string; ticket: string };
}

const kept = z.object({
  id: z.string(),
  entry: z.looseObject({ id: z.string(), doneAt: z.string() }),
  session: z.object({ id: z.string(), ticket: z.string() }),
});

/** Entries not acknowledged yet, kept in this browser under a key each: they survive a reload, and two tabs share them. */
export function roomOf<E>(name: string): WaitingRoom<Kept<E>> {
  const prefix = `kitwright.${name}.`;
  return {
    all() {
      try {
        const keys = Array.from({ length: localStorage.length }, (_, at) => localStorage.key(at) ?? '');
        return keys
          .filter((key) => key.startsWith(prefix))
          .flatMap((key) => {
            const parsed = kept.safeParse(parsedJson(localStorage.getItem(key)));
            return parsed.success ? [parsed.data as Kept<E>] : [];
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

/** Sends kept entries to their address; throws where nothing is known of what arrived. */
export async function sendKept<E>(address: string, items: readonly Kept<E>[]): Promise<readonly Delivered[]> {
  const answer = await fetch(address, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries: items.map(({ entry, session }) => ({ entry, session })) }),
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  noteBuild(answer);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return ((await answer.json()) as { delivered: Delivered[] }).delivered;
}
