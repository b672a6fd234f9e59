/** Who acts in this page now, and by what its entries are marked. */
export interface Acting {
  person: { id: string; name: string; role: string };
  sessionId: string;
  /** Goes with every entry made now, beside the session's id; it says whose the entry is and opens nothing. */
  ticket: string;
}

let present: Acting | null = null;
/** Sessions that the server said are over: a page it drew before, and that comes in only now, brings none of them back. */
const over = new Set<string>();
const listeners = new Set<() => void>();

/** Who acts at this very moment, for code that is no component: a scan is marked as it is heard. */
export const actingNow = (): Acting | null => present;

export function setActing(next: Acting | null): void {
  if (next !== null && over.has(next.sessionId)) return;
  if (next?.sessionId === present?.sessionId) return;
  present = next;
  for (const listener of listeners) listener();
}

/** The server knows this session no more. */
export function endActing({ sessionId }: Acting): void {
  over.add(sessionId);
  if (present?.sessionId === sessionId) setActing(null);
}

export function onActing(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
