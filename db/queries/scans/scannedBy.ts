import { type Outcome, refused } from '@/lib/identity/refusal';
import { scanWords as words } from '@/lib/wording/scans';
import type { Database } from '../../client';
import type { ScannedBy } from '../../operations/scans/record-scans';
import { sessionOfTicket } from '../peopleSessions';

/** How far a browser's clock may be off before a scan counts as made after its session had ended. */
const CLOCKS_DIFFER_MS = 5 * 60_000;

/**
 * Who made a scan, by the ticket of the session at its moment, which may be over by now: a scan sent late keeps its
 * person. A session that was idle is good for it, since nothing is heard from a browser without network.
 */
export async function scannedBy(
  db: Pick<Database, 'read'>,
  session: { id: string; ticket: string },
  doneAt: string,
): Promise<Outcome<ScannedBy, never>> {
  mayRead(db, 'recordScan');
  const found = await sessionOfTicket(db, session.id, session.ticket);
  if (!found) return refused('notPermitted', words.notThisSession);
  const { beganAt, endsAt, endedAt } = found.times;
  const at = Date.parse(doneAt);
  const over = Date.parse(endedAt ?? endsAt) + CLOCKS_DIFFER_MS;
  if (at > over || at < Date.parse(beganAt) - CLOCKS_DIFFER_MS)
    return refused('notPermitted', words.outsideSession);
  return {
    ok: true,
    value: { person: found.person, sessionId: found.id, workstationId: found.workstation?.id ?? null },
  };
}
