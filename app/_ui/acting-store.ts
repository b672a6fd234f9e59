/** Who acts in this page now, and by what its entries are marked. */
export interface Acting {
  person: { id: string; name: string; role: string };
  sessionId: string;
  /** Goes with every entry made now, beside the session's id; it says whose the entry is and opens nothing. */
  ticket: string;
}

let present: Acting | null = null;
const listeners = new Set<() => void>();

/** Who acts at this very moment, for code that is no component: a scan is marked as it is heard. */
export const actingNow = (): Acting | null => present;

export function setActing(next: Acting | null): void {
  if (next?.sessionId === present?.sessionId) return;
  present = next;
  for (const listener of listeners) listener();
}

export function onActing(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
