import { eq } from 'drizzle-orm';
import { sentCheckEntry } from '@/lib/caseLife/act';
import type { CheckId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Database } from '../../client';
import { thingOnRecord } from '../../queries/caseLife/thing';
import type { Person } from '../../queries/people';
import { kitCheckEntries } from '../../schema';
import { ownOpenCheck } from './own-check';

interface RecordCheckEntry {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  sessionId: string | null;
  checkId: CheckId;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Makes one entry of a check durable; sent again it is answered as before. Whether it belongs to the kit is not said here:
 * the checker learns that when the check is closed.
 */
export async function recordCheckEntry(
  request: RecordCheckEntry,
): Promise<Outcome<{ id: string; enteredAt: string }, never>> {
  const { db, now, person, sessionId, checkId } = request;
  const parsed = sentCheckEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write.select().from(kitCheckEntries).where(eq(kitCheckEntries.id, entry.id));
    if (before) {
      const same =
        before.checkId === checkId &&
        before.personId === person.id &&
        canonicalJson(before.act) === canonicalJson(entry.act);
      return same
        ? { ok: true, value: { id: entry.id, enteredAt: before.enteredAt } }
        : refused('conflict', words.idTaken);
    }
    if (!may(person, 'checkKit')) return refused('notPermitted', words.mayNot(person.name, 'check kits'));
    const own = await ownOpenCheck(write, checkId, person);
    if (!own.ok) return own;
    if (entry.act.kind === 'seen') {
      const thing = await thingOnRecord(write, entry.act.thing, new Set());
      if (thing.kind === 'unknown' && (thing.why === 'noSuchThing' || thing.why === 'notSterile'))
        return refused('notFound', words.noSuchThing);
    }
    await write.insert(kitCheckEntries).values({
      id: entry.id,
      checkId,
      act: entry.act,
      personId: person.id,
      sessionId,
      scanId: entry.scanId ?? null,
      doneAt: entry.doneAt,
      enteredAt: now,
    });
    return { ok: true, value: { id: entry.id, enteredAt: now } };
  });
}
