import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { recordScans, type ScannedBy } from '@/db/operations/scans/record-scans';
import { lastScans } from '@/db/queries/scans/lastScans';
import { scannedBy } from '@/db/queries/scans/scannedBy';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { incomingScans } from '@/lib/scanning/incoming';
import { tokenWords } from '@/lib/wording/tokens';

/**
 * Stores scans, each for the person who made it, and answers what each means. A scan sent again is answered as before;
 * one that is refused does not hold up the others: `{ answers: [{ id, ok: true, answer } | { id, ok: false, because, says }] }`.
 */
export const POST = endpoint(
  'POST /api/v1/scans',
  { body: incomingScans },
  async ({ db, person, session, token, request }) => {
    const body = await readBody(request, incomingScans);
    if (!body.ok) return body.response;
    const mine: ScannedBy = { person, sessionId: session.id, workstationId: session.workstationId };
    const told = new Map<string, Outcome<ScannedBy, never>>();
    const scans = [];
    for (const scan of body.value.scans) {
      const key = scan.session ? `${scan.session.id} ${scan.session.ticket} ${scan.doneAt.slice(0, 16)}` : '';
      const by =
        told.get(key) ??
        (scan.session && token !== null
          ? refused('notPermitted', tokenWords.noSession)
          : scan.session
            ? await scannedBy(db, scan.session, scan.doneAt, now())
            : ({ ok: true, value: mine } as const));
      told.set(key, by);
      scans.push({ scan, by });
    }
    const outcomes = await recordScans({ db, now: now(), scans });
    const answers = outcomes.map((outcome, at) => {
      const id = body.value.scans[at]?.id;
      return outcome.ok
        ? { id, ok: true, answer: outcome.value }
        : {
            id,
            ok: false,
            because: outcome.refusal.because,
            says: outcome.refusal.problems.map(({ message }) => message).join(' '),
          };
    });
    return jsonAnswer({ answers });
  },
);

/** Your last scans, and what each was taken for. */
export const GET = oneOf('GET /api/v1/scans', { what: 'scan' }, async ({ db, person }) => ({
  scans: await lastScans(db, { personId: person.id }),
}));
