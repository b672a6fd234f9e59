/** Who acts in this page now, and by what its entries are marked. */
export interface Acting {
  person: { id: string; name: string; role: string };
  sessionId: string;
  /** Goes with every entry made now, as `X-Session-Ticket: SESSION:TICKET`; kept in memory only. */
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

/** The header that marks an entry with the session it was made in. */
export const ticketHeader = ({ sessionId, ticket }: Acting) => ({
  'X-Session-Ticket': `${sessionId}:${ticket}`,
});
