import { type Outcome, refused } from '@/lib/identity/refusal';
import { entryInSession } from '@/lib/people/ticket';
import { scanWords as words } from '@/lib/wording/scans';
import type { ScannedBy } from '../../operations/scans/record-scans';
import { mayRead, type Reading } from '../../reader';
import { sessionOfTicket } from '../peopleSessions';

/**
 * Who made a scan, by the ticket of the session at its moment, which may be over by now: a scan sent late keeps its
 * person. A session that was idle is good for it, since nothing is heard from a browser without network.
 */
export async function scannedBy(
  db: Reading,
  session: { id: string; ticket: string },
  doneAt: string,
  now: string,
): Promise<Outcome<ScannedBy, never>> {
  mayRead(db, 'recordScan');
  const found = await sessionOfTicket(db, session.id, session.ticket);
  if (!found) return refused('notPermitted', words.notThisSession);
  if (entryInSession(found.times, doneAt, now) !== 'good')
    return refused('notPermitted', words.outsideSession);
  return {
    ok: true,
    value: { person: found.person, sessionId: found.id, workstationId: found.workstation?.id ?? null },
  };
}
